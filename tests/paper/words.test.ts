import { describe, expect, test } from 'vitest'
import { toldDigits } from '../../src/language/amounts'
import type { TrainDocument } from '../../src/document/schema'
import { madeOf } from '../../src/engine/rounding/answer'
import { planText } from '../../src/text/planText'
import { example } from '../cli/trains'
import { blocksOf, someExamples, exampleOf, made, wordsOf, type Made } from './sheets'
import { isWhole } from '../counts'

const tablesOf = ({ paper }: Made) =>
  blocksOf(paper).flatMap((block) => (block.kind === 'table' ? [block] : []))
/** The first page, and what of it goes on over the next one. */
const front = ({ paper: { pages } }: Made): string => {
  const over = pages[1]?.section === 'front' ? pages[1].blocks : []
  const end = over.findIndex(({ kind }) => kind === 'title')
  return JSON.stringify([...(pages[0]?.blocks ?? []), ...(end < 0 ? over : over.slice(0, end))])
}

describe('the front page', () => {
  test('asks for the moves that the cards ask for, rounded to the shims of the store', async () => {
    const sheet = await made(exampleOf('piped-compressor'), 'a4', 'office')
    // 50 + 50 + 100 + 100 + 300 + 300 of shim; 623, 411 and 34 of slide
    expect(front(sheet)).toContain('Shim 6 feet of 2 machines, 900 µm in all')
    expect(front(sheet)).toContain('slide 2 machines, 1068 µm over 3 rows of feet')
    expect(front(sheet)).toContain('no plan for these numbers needs less than 1871 µm')
  })

  test.each(someExamples)('of %s ranks its choice as the list of choices does', async (name) => {
    const sheet = await made(exampleOf(name), 'a4', 'office')
    if (sheet.answer.status !== 'planned') return
    const list = tablesOf(sheet).find(({ columns }) => columns[1]?.head === 'choice')
    const place = list?.rows.findIndex(([, choice = '']) => choice.endsWith('(NOW)')) ?? -1
    expect(place).toBeGreaterThanOrEqual(0)
    // what the effort of the machines disturbed adds to the moves, by which the choices stand in their order
    expect(list?.columns[3]?.head).toMatch(/^effort, /)
    const sums = (list?.rows ?? []).flatMap(([, , moves, effort]) => {
      const sum = Number(moves) + Number(effort)
      return Number.isFinite(sum) ? [sum] : []
    })
    expect(sums).toEqual(sums.toSorted((a, b) => a - b))
    expect(front(sheet)).toContain(place === 0 ? 'none needs less' : `it is number ${place + 1}`)
  })

  test('and the plan as text say of which values nobody has said that they are right', async () => {
    const document = exampleOf('pump-and-motor')
    const foot = document.machines[0]?.feet[0]
    if (foot) foot.pack = { now: 6000 }
    const words =
      'Motor, foot 1 road, pack now: 6 in under the foot, more than 3.94 in; nobody has said that this is right'
    for (const print of ['crew', 'office'] as const) {
      const sheet = await made(document, 'a4', print)
      expect(front(sheet)).toContain('LOOK AGAIN BEFORE FOLLOWING THIS')
      expect(front(sheet)).toContain(words)
      expect(planText(sheet.train, sheet.answer).replace(/\s+/g, ' ')).toContain(words)
    }
    expect(front(await made(exampleOf('pump-and-motor')))).not.toContain('LOOK AGAIN')
  })

  test('of a train in tolerance tells what is missing, and asks for no work', async () => {
    const sheet = await made(exampleOf('leave-it-alone'))
    expect(front(sheet)).toContain('NOT ALL IN')
    expect(wordsOf(sheet.paper)).not.toMatch(/NOT READY|Before anything is moved|planned line/)
  })
})

describe.each(someExamples)('the tables of %s', (name) => {
  test('are never empty, and amounts told in lists have their unit', async () => {
    const sheet = await made(exampleOf(name), 'a4', 'office')
    for (const { rows, columns } of [...tablesOf(sheet), ...tablesOf(await made(exampleOf(name)))])
      expect(rows.length, columns.map(({ head }) => head).join()).toBeGreaterThan(0)
    for (const { what, items } of lists(sheet))
      if (what === 'Beaten')
        for (const item of items) expect(item).toMatch(/ fixed, [\d.]+ (µm|mm|mil): /)
  })

  test('send to the store what comes out of the packs', async () => {
    const sheet = await made(exampleOf(name))
    const { train } = sheet
    const rows = tablesOf(sheet)
      .filter(({ columns }) => columns.some(({ head }) => head === 'of what'))
      .flatMap((table) => [...table.rows])
    const out = packsOf(sheet).filter(({ change }) => change < 0)
    if (train.plan.shims?.rebuild !== true)
      expect(rows.map(([, foot, amount]) => `${foot} ${Number(amount)}`)).toEqual(
        out.map(({ foot, change }) => `${foot} ${Number(toldDigits(-change, train.units))}`),
      )
  })
})

const packsOf = ({ answer }: Made) =>
  (answer.status === 'planned' && madeOf(answer.rounded)?.packs) || []

function lists({ paper }: Made): { what: string; items: readonly string[] }[] {
  return paper.pages.flatMap(({ blocks }) =>
    blocks.flatMap((block, i) => {
      const before = blocks[i - 1]
      return block.kind === 'list' && before?.kind === 'heading'
        ? [{ what: before.text, items: block.items }]
        : []
    }),
  )
}

test.runIf(isWhole)('packs made anew send the whole old pack back', async () => {
  const document = example('piped-compressor', ({ plan }) => {
    if (plan?.shims)
      plan.shims = { ...plan.shims, most: 9, rebuild: true, stock: [2000, 1000, 500, 250, 100, 50] }
  })
  const sheet = await made(document)
  const rebuilt = packsOf(sheet).filter(({ use }) => use.length > 0)
  expect(rebuilt.length).toBeGreaterThan(0)
  const out = tablesOf(sheet).find(({ columns }) => columns.some(({ head }) => head === 'of what'))
  expect(out?.rows.map(([, foot, amount, what]) => [foot, Number(amount), what])).toEqual(
    rebuilt.map(({ foot, packAfter = 0, change }) => [foot, packAfter - change, 'the whole pack']),
  )
})

test.runIf(isWhole)(
  'other choices that were not compared are told not to have been',
  async () => {
    const sheet = await made(many(8), 'a4', 'office')
    expect(front(sheet)).toContain(
      'Other choices of fixed machines were not compared on this sheet.',
    )
    expect(wordsOf(sheet.paper)).toContain('NOT COMPARED: 8 machines may each be fixed')
    const seven = await made(many(7), 'a4', 'office')
    expect(wordsOf(seven.paper)).toContain('All 128 choices were solved')
    expect(wordsOf(seven.paper)).not.toContain('NOT COMPARED')
  },
  600_000,
)

/** So many like machines in a row, each off the one before. */
function many(count: number): TrainDocument {
  const machines = Array.from({ length: count }, (_, i) => ({
    id: `m${i}`,
    name: `Machine ${i + 1}`,
    held: i === 0,
    axis: { z: 500 },
    feet: [0, 1000].map((x, f) => ({ id: String(f + 1), x: 2000 * i + x })),
  }))
  const couplings = machines.slice(1).map(({ id }, i) => ({
    id: `c${i}`,
    left: { machine: machines[i]?.id ?? '', plane: 2000 * i + 1400 },
    right: { machine: id, plane: 2000 * i + 1600 },
    tolerance: { flex: 0.5 },
    found: [
      { kind: 'line', at: 2000 * i + 1500, offset: { y: 0, z: 200 }, slope: { y: 0, z: 0.1 } },
    ],
  }))
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'Many',
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'right' },
    machines,
    couplings,
  } as TrainDocument
}

test('the check by hand says which moves and growth it adds up', async () => {
  const words = wordsOf((await made(exampleOf('piped-compressor'), 'a4', 'office')).paper)
  // 150 over 800 mm; growth of 20 over 800 mm, as entered
  expect(words).toContain(
    'The step-up gear is moved: up −50.0 at x 2600 and +100.0 at x 3400, slope +0.1875 mrad',
  )
  expect(words).toContain(
    'The step-up gear grows: up +260.0 at x 2600 and +280.0 at x 3400, slope +0.0250 mrad',
  )
})

test('sides without names are told by their hours alone, on paper and in text', async () => {
  const document = exampleOf('pump-and-motor')
  document.sides = { ...document.sides, three: "toward 3 o'clock", nine: "9 o'clock" }
  const sheet = await made(document)
  const text = planText(sheet.train, sheet.answer).replace(/\s+/g, ' ')
  for (const words of [front(sheet), text]) {
    expect(words).toContain("The sides have no names: 3 and 9 o'clock are as on a clock")
    expect(words).not.toMatch(/[39] o'clock is (toward )?[39] o'clock/)
  }
})

test('what was not entered names each set, once, in the words of the readings', async () => {
  const document = exampleOf('base-bound-motor')
  const { answer } = await made(document)
  const told = answer.notEntered.map(({ what }) => what)
  expect(told.filter((what, i) => told.indexOf(what) < i)).toEqual([])
  expect(told.filter((what) => what.startsWith('sag of'))).toEqual([
    expect.stringContaining('front face of the right shaft'),
    expect.stringContaining('face at the left end of the spacer'),
    expect.stringContaining('face at the right end of the spacer'),
  ])
})

test('the text tells the moves that the sheet and the feet tell: rounded to the shims of the store', async () => {
  const sheet = await made(exampleOf('piped-compressor'))
  const text = planText(sheet.train, sheet.answer).replace(/\s+/g, ' ')
  // 2 times 300, 50 and 100; slides of 34, 623 and 411, a row each
  const moves =
    'Shim 6 feet of 2 machines, 900 µm in all; slide 2 machines, 1068 µm over 3 rows of feet.'
  expect(front(sheet)).toContain(moves)
  expect(text).toContain(moves)
})

test('no print says a word that another face has let go', async () => {
  for (const name of ['pump-and-motor', 'leave-it-alone'])
    for (const print of ['crew', 'office'] as const) {
      const { paper } = await made(exampleOf(name), 'a4', print)
      const words = wordsOf(paper)
      expect(words).not.toMatch(
        /\bclosures?\b|hold point|spool set|waived by|bolt room|share of the tolerance/i,
      )
      expect(words).toMatch(/dial sum check/)
    }
})
