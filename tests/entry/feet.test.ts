import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { bodiesAt, nextId } from '../../src/document/edits/bodies'
import { csvText } from '../../src/document/tables/csv'
import { addFoot, addRow, asBefore, filledDown, removeFoot } from '../../src/document/edits/feet'
import { feetTable } from '../../src/document/tables/feetTable'
import { holeRoom, snapped } from '../../src/document/edits/holeRoom'
import { exported, placeRows, readingOf, readRows } from '../../src/document/tables/pasted'
import { switchUnits } from '../../src/document/edits/switchUnits'
import type { TrainDocument } from '../../src/document/schema'

const files = ['bolt-bound-gearbox', 'skid-as-one', 'five-in-a-line', 'pump-and-motor']
const example = (file: string): TrainDocument =>
  JSON.parse(
    readFileSync(new URL(`../../examples/${file}.json`, import.meta.url), 'utf8'),
  ) as TrainDocument
const metric = { length: 'mm', fine: 'um', temperature: 'C' } as const
const inches = { length: 'in', fine: 'mil', temperature: 'F' } as const
const body = (document: TrainDocument, index: number) => {
  const found = bodiesAt(document)[index]
  if (!found) throw new Error('no such body')
  return found
}

describe('feet', () => {
  test('are added in rows like the rows before, and singly', () => {
    const gear = example('bolt-bound-gearbox')
    const { document } = addRow(gear, body(gear, 1), 6000, undefined)
    expect(document.machines[1]?.feet.slice(-2)).toEqual([
      { id: '3 lake', x: 6000, y: 800 },
      { id: '3 workshop', x: 6000, y: -800 },
    ])
    const one = addFoot(document, body(document, 1), 6100).document
    expect(one.machines[1]?.feet.at(-1)).toEqual({ id: '4 workshop', x: 6100 })
    expect(removeFoot(one, body(one, 1), 6).document).toEqual(document)
    expect(nextId([])).toBe('1')
    expect(nextId(['F1', 'F3'])).toBe('F4')
    expect(nextId(['near', 'far'])).toBe('3')
  })

  test('stand about the axis of their own machine where there is no row before', () => {
    const gear = example('bolt-bound-gearbox')
    for (const machine of gear.machines) machine.feet = []
    const rowOf = (index: number) => {
      const { document } = addRow(gear, body(gear, index), 100, 1400)
      return document.machines[index]?.feet.map(({ y }) => y)
    }
    // a shaft 520 mm to the side of the turbine's, and a gear whose two shafts are 520 mm apart
    expect(rowOf(0)).toEqual([700, -700])
    expect(rowOf(3)).toEqual([180, -1220])
    expect(rowOf(2)).toEqual([440, -960])
    const { document } = addRow(gear, body(gear, 3), 100, 1400)
    const again = addRow(document, body(document, 3), 900, undefined).document
    expect(again.machines[3]?.feet.map(({ y }) => y)).toEqual([180, -1220, 180, -1220])
  })

  test('take what is alike from the foot before, and leave what is measured', () => {
    const gear = example('bolt-bound-gearbox')
    const before = gear.machines[2]?.feet
    const after = asBefore(gear, body(gear, 2), 1).document.machines[2]?.feet
    expect(after?.[1]?.pack).toEqual(before?.[0]?.pack)
    expect(after?.[1]?.hole?.y).toBe(before?.[1]?.hole?.y)
    expect(after?.[1]?.x).toBe(before?.[1]?.x)
    const down = filledDown(gear, ['machines', 2, 'feet', 3, 'pack', 'now'])
    expect(down?.document.machines[2]?.feet[3]?.pack?.now).toBe(before?.[2]?.pack?.now)
    expect(filledDown(gear, ['machines', 2, 'feet', 0, 'x'])).toBeUndefined()
    expect(filledDown(gear, ['machines', 2, 'feet', 1, 'id'])).toBeUndefined()
    expect(filledDown(gear, ['machines', 2, 'name'])).toBeUndefined()
  })

  for (const file of files)
    test(`of ${file} come back from CSV as they were, in the same units and in others`, () => {
      const document = example(file)
      const bare: TrainDocument = {
        ...document,
        machines: document.machines.map((machine) => ({ ...machine, feet: [] })),
        ...(document.skids && { skids: document.skids.map((skid) => ({ ...skid, feet: [] })) }),
      }
      const units = { ...document.units, temperature: document.units.temperature ?? 'C' }
      const table = csvText(exported(feetTable, document, units))
      const { data } = Papa.parse<string[]>(table.trimEnd())
      const reading = readingOf(data, feetTable.columns)
      expect(reading.keys).toEqual(feetTable.columns.map(({ key }) => key))
      const back = placeRows(bare, readRows(data, reading, feetTable.columns, units), feetTable.put)
      expect(back.placed.flatMap(({ why }) => why ?? [])).toEqual([])
      expect(bodiesAt(back.document).map(({ feet }) => feet.map(kept))).toEqual(
        bodiesAt(document).map(({ feet }) => feet.map(kept)),
      )
      // the headings name their units, so that a sheet in inches takes them all the same
      const rows = readRows(data, reading, feetTable.columns, inches)
      const there = placeRows(switchUnits(bare, inches), rows, feetTable.put).document
      const want = bodiesAt(switchUnits(document, inches)).flatMap(({ feet }) => feet)
      bodiesAt(there)
        .flatMap(({ feet }) => feet)
        .forEach((foot, i) => {
          expect(foot.x).toBeCloseTo(want[i]?.x ?? NaN, 9)
          expect(foot.pack?.now ?? -1).toBeCloseTo(want[i]?.pack?.now ?? -1, 9)
        })
    })

  test('pasted with a machine nobody knows, or a pack below 0, are refused by row', () => {
    const gear = example('bolt-bound-gearbox')
    const cells = [
      ['machine', 'foot', 'x', 'pack now'],
      ['Crane', '1', '5', ''],
      ['step-up gear', '1 lake', '', '-3'],
      ['step-up gear', 'new', '', '3'],
      ['gear', '1 lake', '', '300'],
    ]
    const rows = readRows(cells, readingOf(cells, feetTable.columns), feetTable.columns, metric)
    const { document, placed } = placeRows(gear, rows, feetTable.put)
    expect(placed.map(({ why }) => why ?? '')).toEqual([
      'no machine or skid is called “Crane”',
      'pack now: -3 is below 0',
      'Step-up gear has no foot new, and a new one needs its x',
      '',
    ])
    expect(document.machines[2]?.feet[0]?.pack?.now).toBe(300)
  })
})

/** What the table holds of a foot. */
const kept = ({ gaps, ...foot }: TrainDocument['machines'][number]['feet'][number]) =>
  Object.fromEntries(
    Object.entries(foot)
      .sort(([a], [b]) => a.localeCompare(b))
      .filter(([, value]) => JSON.stringify(value) !== '{}' || gaps),
  )

describe('room in a hole', () => {
  test('is what a straight move each way leaves before the reserve', () => {
    expect(holeRoom({ clearance: 2, x: 0, y: 0.6 }, 0)).toEqual({
      left: 0.8,
      right: 0.8,
      nine: 1.6,
      three: 0.4,
      over: false,
    })
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (clearance, x, y, reserve) => {
          const room = holeRoom({ clearance, x, y }, reserve)
          const radius = clearance / 2 - reserve
          if (room.over) return
          for (const [dx, dy] of [
            [room.right, 0],
            [-room.left, 0],
            [0, room.three],
            [0, -room.nine],
          ] as const)
            expect(Math.hypot(x + dx, y + dy)).toBeCloseTo(Math.max(radius, 0), 6)
        },
      ),
    )
  })

  test('steps leave no dust', () => {
    expect(snapped(0.30000000000000004, 0.01)).toBe(0.3)
    expect(Object.is(snapped(-0.001, 0.01), 0)).toBe(true)
  })
})
