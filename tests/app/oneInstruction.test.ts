// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { madeOf } from '../../src/engine/rounding/answer'
import { planText } from '../../src/text/planText'
import { exampleNames, exampleOf, made } from '../paper/sheets'
import { solver } from '../engine/pair'
import { shimmed } from '../packs/shimmed'
import { planTrain } from '../planned'
import { randomTrain } from '../second/randomTrain'
import { machineCards, paperFaces, sheetFaces, textOrder, type MachineCard } from './faces'
import { textOf } from './names'
import { settle } from './place'
import { drawn, openSheet, openText, page } from './sheet'
import { answering } from './workers'
import { isWhole, counted, firstOf } from '../counts'

// Sheet, face at the machine, paper and text tell one set of instructions: the same steps by the same numbers, from the
// same end, with the same amounts and the same plates. What they say is read off each face as people see it.

/** The first random trains that have a plan, two of three with a store of shims. */
function planned(count: number): (readonly [string, unknown])[] {
  const out: (readonly [string, unknown])[] = []
  for (let seed = 40_000; out.length < count; seed++) {
    const [kind, made] = seed % 3 === 1 ? ['random', randomTrain] : ['shimmed', shimmed]
    const document = made(seed)
    const answer = planTrain(document, solver, { reasons: false, prices: false })
    if ('status' in answer && answer.status === 'planned') out.push([`${kind} ${seed}`, document])
  }
  return out
}
const trains: readonly (readonly [string, unknown])[] = [
  ...firstOf(
    ['pump-and-motor', ...exampleNames.filter((name) => name !== 'pump-and-motor')],
    0,
    2,
  ).map((name) => [name, exampleOf(name)] as const),
  ...planned(counted(0, 9, 1)),
  ['pump-and-motor with packs made anew', rebuilt()],
]

/** Packs made anew from few plates, so that recipes name whole packs. */
function rebuilt(): unknown {
  const document = structuredClone(exampleOf('pump-and-motor'))
  const shims = { step: 1, stock: [1, 2, 5, 10, 20, 25, 50, 75, 100, 125], most: 6, rebuild: true }
  return { ...document, plan: { ...document.plan, shims } }
}

let [worked, withPlates, fromTheRight] = [0, 0, 0]

test.each(trains)('%s is told alike on every face', async (name, document) => {
  const { train, answer, paper } = await made(document)
  expect(answer.status).toBe(name === 'leave-it-alone' ? 'in-tolerance' : 'planned')
  answering('work')
  await openSheet()
  await openText(`${name}.json`, JSON.stringify(document))
  await expect(page.locator('.train-name')).toHaveText(train.name)
  await drawn()
  if (answer.status !== 'planned') return
  await expect(page.locator('.order:not(.old) .step-list')).toBeShown()
  const sheet = sheetFaces(train)
  const printed = paperFaces(paper)
  const cards = await machineCards()
  const text = textOrder(planText(train, answer))

  // one order, one numbering, one set of sentences
  expect(sheet.steps.length).toBeGreaterThan(0)
  expect(printed.steps).toEqual(sheet.steps)
  let at = -1
  for (const { number, words, cautions, stop } of sheet.steps) {
    const here = text.indexOf(`${number}. ${words}`)
    expect(here, `${number}. ${words}`).toBeGreaterThan(at)
    at = here
    for (const said of [...cautions, ...(stop === '' ? [] : [stop])])
      expect(text.slice(at), said).toContain(said)
  }
  for (const card of cards) {
    const step = sheet.steps.find(({ number }) => number === card.number)
    expect([card.words, card.cautions]).toEqual([step?.words, step?.cautions])
    if (card.stop !== '') expect(card.stop).toBe(step?.stop)
  }
  for (const { number, stop } of sheet.steps)
    if (cards.some((card) => card.number === number))
      expect(cards.filter((card) => card.number === number).at(-1)?.stop).toBe(stop)
  const numbers = cards.map(({ number }) => number)
  expect(numbers).toEqual([...numbers].sort((a, b) => a - b))

  // the end that the step names first is the end at which its cards begin
  for (const { number, words } of sheet.steps) {
    const own = cards.filter((card) => card.number === number && card.feet.length > 0)
    const [first] = own
    if (!first || !/^(Shim|Slide)/.test(words)) continue
    const body = train.bodies.find((one) => one.name === first.name)
    const xOf = (id = '') => body?.feet.find((foot) => foot.id === id)?.x ?? NaN
    const ends = /the (left|right) end(?: first)?, then/i.exec(words)?.[1]
    const xs = own.map(({ feet }) => xOf(feet[0]))
    const named = /(?:foot|feet) (.+?)(?: and | [\d.]+ |, |[;.])/.exec(words)?.[1]
    expect(xOf(named), words).toBeCloseTo(xs[0] ?? NaN, 6)
    expect(xs).toEqual(
      [...xs].sort((a, b) => (ends === 'right' || (xs[0] ?? 0) > (xs.at(-1) ?? 0) ? b - a : a - b)),
    )
    if (ends === 'left') expect(xs[0]).toBeLessThanOrEqual(xs.at(-1) ?? NaN)
    if (ends === 'right') {
      expect(xs[0]).toBeGreaterThanOrEqual(xs.at(-1) ?? NaN)
      fromTheRight++
    }
  }

  // one amount and one recipe a foot
  const recipes = new Map(
    (madeOf(answer.rounded)?.packs ?? []).map(({ body, foot }) => [
      `${train.bodies.find(({ id }) => id === body)?.name ?? ''} ${foot}`,
      true,
    ]),
  )
  for (const foot of sheet.feet) {
    const card = printed.feet.find((one) => one.name === foot.name)
    expect(card, foot.name).toEqual(foot)
    const own = cards.filter(
      (one) => one.feet.some((id) => `${one.name} ${id}` === foot.name) && !isSoft(one),
    )
    const told = [...new Set(own.map(({ number }) => number))]
    expect(foot.steps.match(/\d+/g)?.map(Number) ?? [], foot.name).toEqual(told)
    const lifts = own.filter(({ act }) => /^(put in|take out) /.test(act))
    const [lift] = lifts
    if (lift && lifts.length === 1) {
      expect(lift.act).toBe(foot.shim)
      expect(lift.recipe.toLowerCase()).toBe(foot.recipe)
      const step = text.slice(text.indexOf(`${lift.number}. ${lift.words}`))
      if (foot.recipe !== '') {
        expect(recipes.get(foot.name)).toBe(true)
        expect(step).toContain(`Foot ${lift.feet[0] ?? ''}: ${foot.recipe}.`)
        withPlates++
      }
    }
    worked++
  }

  // cards on paper follow the order of work
  const starts = printed.feet.map(({ steps }) => Number(/\d+/.exec(steps)?.[0] ?? NaN))
  const bodies = [...new Set(printed.feet.map(({ name: foot }) => bodyOf(foot)))]
  const first = bodies.map((body) =>
    Math.min(
      ...starts.filter((start, i) => start > 0 && bodyOf(printed.feet[i]?.name ?? '') === body),
    ),
  )
  expect(first).toEqual([...first].sort((a, b) => a - b))

  function bodyOf(foot: string): string {
    return (
      train.bodies.find((body) => body.feet.some(({ id }) => `${body.name} ${id}` === foot))
        ?.name ?? ''
    )
  }
})

const isSoft = ({ words }: MachineCard): boolean => words.startsWith('Soft foot')

test.runIf(isWhole)(
  'the panel "why this much?" says which plan it speaks of, and beside it what the card says',
  async () => {
    answering('work', 'why')
    await openSheet()
    await expect(page.locator('.order:not(.old) .step-list')).toBeShown()
    const cards = page.locator('.band-feet li.foot').filter({ hasText: 'why this much?' })
    let asked = 0
    for (const card of cards.all()) {
      card.querySelector<HTMLElement>('.why-button')?.click()
      await settle()
      const [shim = '', slide = ''] = [...card.querySelectorAll('.do')].map(textOf)
      const panel = page.locator('.why-foot')
      await expect(panel).toContainText('What holds it there')
      const told = await panel.textContent()
      const sentences = told.match(
        /Before rounding to the shims of the store foot .*?\(after it: .*?\)/g,
      )
      expect(sentences, told).not.toBeNull()
      for (const sentence of sentences ?? [])
        expect([`(after it: ${shim})`, `(after it: ${slide})`]).toContain(
          /\(after it: .*\)/.exec(sentence)?.[0],
        )
      asked++
    }
    expect(asked).toBeGreaterThan(3)
  },
)

test('enough was compared', () => {
  expect(worked).toBeGreaterThan(counted(3, 60, 12))
  expect(withPlates).toBeGreaterThanOrEqual(counted(1, 6, 2))
  expect(fromTheRight).toBeGreaterThanOrEqual(counted(0, 4, 1))
})
