import { describe, expect, it } from 'vitest'
import { holdComparisons } from '../../src/engine/studies/holds/compare'
import { rankHolds } from '../../src/engine/studies/holds/rank'
import type { HoldRow, PlannedRow } from '../../src/engine/studies/holds/row'
import { Random } from '../second/random'
import { example } from './choice'

// turbine (effort 200), low-stage (800), gear (0), high-stage (100), in um
const train = example('bolt-bound-gearbox')

const plan = (held: string, cost: number, more: Partial<PlannedRow> = {}): PlannedRow => ({
  held: held === '' ? [] : held.split(' '),
  disturbed: ['gear'],
  status: 'planned',
  cost,
  costWithEffort: cost,
  floor: 0.6,
  total: { shim: cost / 2, side: cost / 2, axial: 0 },
  worstShare: 0.7,
  ...more,
})
const impossible = (held: string, floor: number): HoldRow => ({
  held: held.split(' '),
  disturbed: [],
  status: 'impossible',
  floor,
})
const order = (rows: readonly HoldRow[]) => rankHolds(train, rows).map(({ held }) => held.join(' '))

describe('the order of choices', () => {
  it('is by cost with effort', () => {
    const a = plan('turbine', 100, { costWithEffort: 900 })
    const b = plan('gear', 500)
    expect(order([a, b])).toEqual(['gear', 'turbine'])
  })

  it('puts fewer disturbed first where that is equal but for the last digits', () => {
    const two = plan('turbine', 100, { costWithEffort: 1000, disturbed: ['gear', 'low-stage'] })
    const one = plan('gear', 1000.0005, { costWithEffort: 1000.0005, disturbed: ['turbine'] })
    expect(order([two, one])).toEqual(['gear', 'turbine'])
    const dearer = plan('gear', 1000.01, { costWithEffort: 1000.01, disturbed: ['turbine'] })
    expect(order([two, dearer])).toEqual(['turbine', 'gear'])
  })

  it('then the lower floor, then more held, then document order', () => {
    const rows = [
      plan('turbine', 100, { floor: 0.6 }),
      plan('low-stage', 100, { floor: 0.5 }),
      plan('low-stage high-stage', 100, { floor: 0.6 }),
      plan('turbine high-stage', 100, { floor: 0.6 + 1e-8 }),
    ]
    expect(order(rows)).toEqual([
      'low-stage',
      'turbine high-stage',
      'low-stage high-stage',
      'turbine',
    ])
  })

  it('puts what is impossible last, the lowest floor first, and what has no answer behind it', () => {
    const rows: HoldRow[] = [
      { held: ['gear'], disturbed: [], status: 'stopped', floor: null, fault: 'no time' },
      impossible('turbine gear', 4),
      impossible('turbine', 3),
      plan('low-stage', 1e6),
    ]
    expect(order(rows)).toEqual(['low-stage', 'turbine', 'turbine gear', 'gear'])
  })

  it('is the same whatever order the rows come in', () => {
    const rows = [
      ...[0, 3e-5, 6e-5, 9e-5, 1.2e-4].map((extra, i) =>
        plan(train.bodies[i % 4]?.id ?? '', 100 + extra, { floor: 0.9 - 0.1 * i }),
      ),
      impossible('turbine gear', 4),
    ]
    const wanted = order(rows)
    const random = new Random(3)
    for (let turn = 0; turn < 50; turn++) {
      const shuffled = rows
        .map((row) => ({ row, at: random.between(0, 1) }))
        .sort((a, b) => a.at - b.at)
        .map(({ row }) => row)
      expect(order(shuffled)).toEqual(wanted)
    }
  })
})

describe('how a choice stands to the others', () => {
  const stand = (rows: readonly HoldRow[]) =>
    holdComparisons(train, rankHolds(train, rows)).map((standing, i) => ({
      held: rankHolds(train, rows)[i]?.held.join(' '),
      ...standing,
    }))

  it('names the better ranked one with the same plan', () => {
    const rows = [plan('turbine', 100), plan('turbine low-stage', 100, { floor: 0.65 })]
    expect(stand(rows)).toEqual([
      { held: 'turbine' },
      { held: 'turbine low-stage', sameAs: ['turbine'] },
    ])
  })

  it('takes rows of the same cost for the same plan only where the moves agree or one holds the other', () => {
    const other = { total: { shim: 100, side: 0, axial: 0 } }
    expect(stand([plan('turbine', 100), plan('low-stage', 100, other)])[1]?.sameAs).toBeUndefined()
    expect(stand([plan('turbine', 100), plan('turbine gear', 100, other)])[1]?.sameAs).toEqual([
      'turbine',
      'gear',
    ])
    const moves = { ...other, disturbed: ['gear', 'turbine'] }
    expect(stand([plan('turbine', 100), plan('turbine gear', 100, moves)])[1]?.sameAs).toBe(
      undefined,
    )
  })

  it('names a choice that is nowhere worse and somewhere better', () => {
    const rows = [plan('turbine', 100), plan('low-stage', 120), plan('gear', 90, { floor: 0.69 })]
    expect(stand(rows)).toEqual([
      { held: 'gear' },
      { held: 'turbine' },
      { held: 'low-stage', beatenBy: ['turbine'] },
    ])
  })

  it.each<[string, Partial<PlannedRow>]>([
    ['a lower floor', { floor: 0.5 }],
    ['less effort', { disturbed: ['gear'], costWithEffort: 120 }],
    ['fewer disturbed', { disturbed: [] }],
  ])('does not call a dearer choice beaten that has %s', (_, better) => {
    const cheap = plan('turbine', 100, { disturbed: ['low-stage'], costWithEffort: 100 + 800 })
    const [row] = stand([cheap, plan('gear', 120, { disturbed: ['low-stage'], ...better })]).filter(
      ({ held }) => held === 'gear',
    )
    expect(row?.beatenBy).toBeUndefined()
  })

  it('names the impossible choice that a larger one contains', () => {
    const rows = [
      impossible('turbine gear', 3),
      impossible('low-stage', 2),
      impossible('turbine low-stage gear', 5),
      plan('turbine', 100),
    ]
    expect(stand(rows)).toEqual([
      { held: 'turbine' },
      { held: 'low-stage' },
      { held: 'turbine gear' },
      { held: 'turbine low-stage gear', impliedBy: ['low-stage'] },
    ])
  })
})
