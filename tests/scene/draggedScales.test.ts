import { asFound } from '../../src/mechanics/readings/asFound'
import { expect, test } from 'vitest'
import type { DrawnAnswer } from '../../src/scene/drawnAnswer'
import { handAnswer } from '../../src/engine/studies/hand/handAnswer'
import { noMotion } from '../../src/mechanics/motion'
import { answerMotions } from '../../src/scene/axisLines'
import { figuresOf } from '../../src/scene/figures'
import { feetScene } from '../../src/scene/footCards'
import { chartBand, trainScene } from '../../src/scene/sheet'
import { drawExample } from './trains'

const { train, answer, figures } = await drawExample('five-in-a-line.json')
const { scale, above } = trainScene(train, 1200)

/** The first machine carried to a side by so much (um), the rest as planned. */
function carried(by: number) {
  const motions = answerMotions(train, answer) ?? []
  const [first] = train.machines
  if (!first) throw new Error('there are machines')
  const hand = {
    motions: Object.fromEntries(train.bodies.map(({ id }, b) => [id, motions[b] ?? noMotion])),
    touched: [first.id],
  }
  const own = hand.motions[first.id] ?? noMotion
  hand.motions[first.id] = { ...own, ty: own.ty + by }
  return handAnswer(train, train.couplings.map(asFound), hand, answer)
}

test('holes and packs are drawn no larger while something is dragged, and smaller where they must be', () => {
  const before = feetScene(train, answer, scale, above).scales
  const far = feetScene(train, carried(9000), scale, above, before).scales
  expect(far.hole).toBeLessThan(before.hole)
  expect(far).toEqual(feetScene(train, carried(9000), scale, above).scales)
  // back again: as small as it had to be, until the hand lets go
  expect(feetScene(train, answer, scale, above, far).scales).toEqual(far)
  expect(feetScene(train, answer, scale, above).scales).toEqual(before)
})

test('the scale of a chart reaches no less while something is dragged', () => {
  const side = (of: DrawnAnswer, least?: readonly [number, number]) =>
    chartBand(train, of === answer ? figures : figuresOf(train, of), scale, { way: 'side', least })
  const before = side(answer)
  const far = side(carried(9000), before.extent)
  expect(far.extent[1]).toBeGreaterThan(before.extent[1] + 5000)
  expect(far.extent[0]).toBeLessThanOrEqual(before.extent[0])
  expect(side(answer, far.extent)).toMatchObject({ extent: far.extent, ratio: far.ratio })
  expect(side(answer).extent).toEqual(before.extent)
})
