import { expect, test } from 'vitest'
import { sheetScene } from '../../src/scene/sheet'
import { drawExample, exampleFiles } from './trains'

// A card that lies over the next machine is read as that machine's.

const desk = 984
test.each(exampleFiles)('every foot card of %s lies over its own machine', async (file) => {
  const { train, answer, figures } = await drawExample(file)
  const { feet } = sheetScene(train, answer, figures, { room: desk })
  const reach = train.bodies.map(({ feet: own }, b) => {
    const first = train.bodies.slice(0, b).reduce((sum, body) => sum + body.feet.length, 0)
    const at = own.map((_, f) => feet.plan.feet[first + f]?.x ?? NaN)
    return { from: Math.min(...at), to: Math.max(...at) }
  })
  const astray = [...feet.far.levels, ...feet.near.levels].flatMap(({ cards }) =>
    cards.flatMap(({ facts, left, width }) => {
      const own = reach[facts.body] ?? { from: NaN, to: NaN }
      const middle = left + width / 2
      const others = reach.filter(
        ({ from, to }, b) =>
          b !== facts.body && train.bodies[b]?.feet.length && from <= middle && middle <= to,
      )
      const away = Math.max(own.from - middle, middle - own.to, 0)
      return others.length > 0 && away > 0 ? [`${facts.name}: ${Math.round(away)} px away`] : []
    }),
  )
  expect(astray).toEqual([])
})
