import { describe, expect, test } from 'vitest'
import { toldDigits } from '../../src/language/amounts'
import { fineSign } from '../../src/mechanics/units'
import { inUnits } from '../../src/json/inUnits'
import { towardSide } from '../../src/language/sides'
import { madeOf } from '../../src/engine/rounding/answer'
import { blocksOf, cardsOf, exampleOf, made, someExamples, type Made } from './sheets'

/** What is worked by: the plan, or what the store's shims make of it. */
const feetOf = ({ answer }: Made) =>
  answer.status === 'planned' ? (madeOf(answer.rounded)?.feet ?? answer.feet) : []

const packsOf = ({ answer }: Made) =>
  answer.status === 'planned' ? madeOf(answer.rounded)?.packs : undefined

function texts({ train }: Made) {
  const { units } = train
  const unit = fineSign[units.fine]
  const digits = (value: number) => toldDigits(Math.abs(value), units)
  return {
    shows: (value: number) => /[1-9]/.test(digits(value)),
    amount: (value: number) => `${digits(value)} ${unit}`,
  }
}

describe.each(someExamples)('feet of %s', (name) => {
  test('every foot that moves has one card, with the numbers and sides of the plan', async () => {
    const sheet = await made(exampleOf(name))
    const { train, answer, paper } = sheet
    const cards = cardsOf(paper)
    const { shows, amount } = texts(sheet)
    expect(new Set(cards.map(({ key }) => key)).size).toBe(cards.length)
    const moving = new Set(
      feetOf(sheet)
        .filter(({ body }) => !answer.held.includes(body))
        .filter(({ shim, side }) => shows(shim) || shows(side))
        .map(({ body }) => body),
    )
    const wanted = feetOf(sheet).filter(({ body }) => moving.has(body))
    if (answer.status === 'planned') expect(wanted.length).toBeGreaterThan(0)
    expect(cards.map(({ key }) => key).sort()).toEqual(
      wanted.map(({ body, foot }) => `${body} ${foot}`).sort(),
    )
    for (const { body, foot, shim, side, packAfter, boltAt } of wanted) {
      const card = cards.find(({ key }) => key === `${body} ${foot}`)
      expect(card?.shim).toBe(
        shows(shim) ? `${shim > 0 ? 'put in' : 'take out'} ${amount(shim)}` : 'pack stays',
      )
      expect(card?.slide).toBe(shows(side) ? `slide ${amount(side)}` : 'no slide')
      expect(card?.toward).toBe(shows(side) ? towardSide(train, side) : '')
      if (packAfter !== undefined) expect(card?.pack).toContain(`then ${amount(packAfter)}`)
      if (boltAt) expect(card?.room).toContain(amount(Math.max(0, boltAt.room)))
    }
  })

  test('plates of a recipe add up to the pack that changes', async () => {
    const sheet = await made(exampleOf(name))
    const { train, paper } = sheet
    const packs = packsOf(sheet)
    const cards = cardsOf(paper)
    const changed = cards.filter(({ shim }) => shim !== 'pack stays')
    if (packs)
      expect(changed.map(({ key }) => key).sort()).toEqual(
        packs.map(({ body, foot }) => `${body} ${foot}`).sort(),
      )
    for (const { body, foot, change, packAfter, use } of packs ?? []) {
      const card = cards.find(({ key }) => key === `${body} ${foot}`)
      // one plate alone, or plates that come out, are said by the amount
      const recipe = card?.recipe ?? card?.shim ?? ''
      const sum = (recipe.replace(/ \(.*/, '').match(/\d+(\.\d+)?/g) ?? []).reduce(
        (all, text) => all + Number(text),
        0,
      )
      const whole = train.plan.shims?.rebuild === true && use.length > 0
      const size = Math.abs(whole ? (packAfter ?? change) : change)
      expect(sum).toBeCloseTo(inUnits(size, 'fine', train.units), 3)
    }
  })
})

test('cards lie as the feet lie: the far side above the map, the left end at the left', async () => {
  const { train, paper } = await made(exampleOf('skid-as-one'))
  const rows = blocksOf(paper).flatMap((block) => (block.kind === 'feet' ? [block.cards] : []))
  // on every page that has cards, their map lies with them
  for (const { blocks } of paper.pages) {
    const kinds = blocks.map(({ kind }) => kind)
    kinds.forEach((kind, i) => {
      if (kind === 'feet') expect([kinds[i - 1], kinds[i + 1]]).toContain('figures')
    })
  }
  const skid = train.bodies.find(({ id }) => id === 'bedplate')
  // seen from the right end, 3 o'clock is beyond the train for whoever has its left end at the left
  const ys = rows.map((cards) =>
    cards.map(({ key }) => skid?.feet.find(({ id }) => key.endsWith(` ${id}`))?.y ?? 0),
  )
  expect(ys).toEqual([
    [45 * 25.4, 45 * 25.4, 45 * 25.4],
    [-45 * 25.4, -45 * 25.4, -45 * 25.4],
  ])
  for (const cards of rows) expect(cards.map(({ column }) => column)).toEqual([0, 1, 2])
})
