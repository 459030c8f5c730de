import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  addHotCheck,
  addHotCoupling,
  addMoved,
  addMovedPoint,
  addTime,
  removeEntry,
  removeHotCheck,
  removeMovedPoint,
  removeTime,
} from '../../src/document/edits/hotCheckEntry'
import { isUnfinished } from '../../src/document/edits/unfinished'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { hotReadingsTable } from '../../src/document/tables/hotReadingsTable'
import { movedTable } from '../../src/document/tables/movedTable'
import {
  exported,
  placeRows,
  readingOf,
  readRows,
  type PastedValues,
} from '../../src/document/tables/pasted'

const train = JSON.parse(
  readFileSync(new URL('../../examples/hot-check.json', import.meta.url), 'utf8'),
) as TrainDocument
const bare: TrainDocument = { ...train }
delete bare.hotChecks
const machine = train.machines[0]?.id ?? ''

describe('a hot check that is begun', () => {
  const { document: begun, name } = addHotCheck(bare)

  it('is of the last state, counts for nothing, and leaves the train to be planned', () => {
    expect(name).toBe('added a hot check')
    expect(begun.hotChecks).toMatchObject([{ state: train.states?.at(-1)?.id, use: false }])
    expect(readTrain(begun)).toMatchObject({ ok: true })
    expect(addHotCheck({ ...bare, states: [] }).name).toBe('')
  })

  it('asks at a coupling for the minutes and for the dials that were read cold, nothing of them read yet', () => {
    const { document } = addHotCoupling(begun, 0, 1)
    const [time] = document.hotChecks?.[0]?.couplings?.[0]?.times ?? []
    const cold = train.couplings[1]?.found ?? []
    expect(time).not.toHaveProperty('after')
    expect(time?.found.map((set) => ('at' in set ? set.at : undefined))).toEqual(
      cold.map((set) => ('at' in set ? set.at : undefined)),
    )
    expect(JSON.stringify(time?.found)).toContain('[12,null]')
    const read = readTrain(document)
    if (read.ok) throw new Error('it has no readings yet')
    expect(isUnfinished(document, read.refused)).toBe(true)
  })

  it('gets times one by one, and loses them with what they hold', () => {
    const one = addHotCoupling(begun, 0, 1).document
    const two = addTime(one, 0, 0).document
    expect(two.hotChecks?.[0]?.couplings?.[0]?.times).toHaveLength(2)
    expect(removeTime(two, 0, 0, 1).document).toEqual(one)
    expect(removeTime(one, 0, 0, 0).document).toEqual(begun)
    expect(removeEntry(two, 0, 'couplings', 0).document).toEqual(begun)
    expect(removeHotCheck(two, 0).document).toEqual(bare)
  })

  it('gets a machine measured as moved with a place at its first and its last foot', () => {
    const { document } = addMoved(begun, 0, machine)
    const xs = train.machines[0]?.feet.map(({ x }) => x) ?? []
    expect(document.hotChecks?.[0]?.moved).toEqual([
      { machine, points: [{ at: Math.min(...xs) }, { at: Math.max(...xs) }] },
    ])
    const more = addMovedPoint(document, 0, 0).document
    expect(more.hotChecks?.[0]?.moved?.[0]?.points).toHaveLength(3)
    expect(removeMovedPoint(more, 0, 0, 2).document).toEqual(document)
    const less = removeMovedPoint(document, 0, 0, 0).document
    expect(removeMovedPoint(less, 0, 0, 0).document).toEqual(begun)
  })
})

describe('machines measured as moved as a table', () => {
  const { columns, put } = movedTable
  const units = { ...train.units, temperature: train.units.temperature ?? ('C' as const) }
  const [first, second] = train.machines.map(({ id }) => id)
  const moved = [
    {
      machine: first ?? '',
      against: 'pit wall',
      points: [
        { at: 450, rise: 70, side: -6, u: 14 },
        { at: 900, axis: 'left' as const, rise: 0 },
      ],
    },
    { machine: second ?? '', points: [{ at: 2100, side: 12 }] },
  ]
  const measured = { ...train, hotChecks: train.hotChecks?.map((one) => ({ ...one, moved })) }

  it('come back from what was saved, and are changed where they stand', () => {
    const cells = exported(movedTable, measured, units).map((row) =>
      row.map((cell) => String(cell ?? '')),
    )
    const match = readingOf(cells, columns)
    expect(match.keys).toEqual(columns.map(({ key }) => key))
    const { document, placed } = placeRows(bare, readRows(cells, match, columns, units), put)
    expect(placed.flatMap(({ why }) => why ?? [])).toEqual([])
    expect(document.hotChecks?.[0]?.moved).toEqual(moved)
    const placedAgain = put(document, { machine: first ?? '', at: 450, rise: 75 })
    if ('why' in placedAgain) throw new Error(placedAgain.why)
    const changed = JSON.stringify(placedAgain.document.hotChecks)
    expect(changed).toBe(JSON.stringify(document.hotChecks).replace('"rise":70', '"rise":75'))
  })

  it.each<[PastedValues, string]>([
    [{ machine: 'nobody', at: 1, rise: 1 }, 'no machine is called “nobody”'],
    [{ machine: first ?? '', rise: 1 }, 'give its x'],
    [{ machine: first ?? '', at: 1 }, 'neither how much higher'],
    [{ machine: first ?? '', at: 1, rise: 1, axis: 'upper' }, 'neither left nor right'],
    [{ check: 'May', machine: first ?? '', at: 1, rise: 1 }, 'no hot check is called “May”'],
  ])('%o: %s', (values, why) => {
    const placed = put(measured, values)
    expect('why' in placed && placed.why).toContain(why)
  })
})

describe('readings after a stop as a table', () => {
  const { columns, put } = hotReadingsTable
  const units = { ...train.units, temperature: train.units.temperature ?? ('C' as const) }

  it('come back from what was saved', () => {
    const cells = exported(hotReadingsTable, train, units).map((row) =>
      row.map((cell) => (cell === true ? 'yes' : cell === false ? 'no' : String(cell ?? ''))),
    )
    const match = readingOf(cells, columns)
    expect(match.keys).toEqual(columns.map(({ key }) => key))
    const rows = readRows(cells, match, columns, units)
    expect(rows).toHaveLength(16)
    const { document, placed } = placeRows(bare, rows, put)
    expect(placed.flatMap(({ why }) => (why === undefined ? [] : [why]))).toEqual([])
    expect(document.hotChecks?.[0]?.couplings).toEqual(train.hotChecks?.[0]?.couplings)
    expect(document.hotChecks?.[0]).toMatchObject({ name: 'June, full load', use: false })
  })

  it('a number that stands there is changed, and no other', () => {
    const placed = put(train, { coupling: '1', after: 40, set: 2, 'at 6': -480 })
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.does).toBe(
      'changes set 2 of turbine to compressor, 40 min after the stop, June, full load',
    )
    const [before, after] = [train, placed.document].map((one) => JSON.stringify(one.hotChecks))
    expect(after).toBe(before?.replace('[6,-475]', '[6,-480]'))
  })

  it.each<[PastedValues, string]>([
    [{ check: 'May', coupling: '1', after: 5, kind: 'rim' }, 'no hot check is called “May”'],
    [{ coupling: 'x', after: 5, kind: 'rim' }, 'no coupling is called “x”'],
    [{ coupling: '1', kind: 'rim' }, 'how long after the stop it was read is missing'],
    [{ coupling: '1', after: -5, kind: 'rim' }, '-5 min is before it'],
    [{ coupling: '1', after: 40, set: 9, kind: 'rim' }, 'set 9 cannot be entered: there are 2'],
    [{ coupling: '1', after: 5, kind: 'sun' }, '“sun” is no kind of reading'],
  ])('%o: %s', (values, words) => {
    const placed = put(train, values)
    expect('why' in placed ? placed.why : placed.does).toContain(words)
  })

  it('a train without states has nothing to have run in', () => {
    const placed = put({ ...bare, states: [] }, { coupling: '1', after: 5, kind: 'rim' })
    expect('why' in placed ? placed.why : placed.does).toContain('add the state first')
  })
})
