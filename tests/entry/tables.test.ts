import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { growthTarget } from '../../src/document/tables/growthTable'
import {
  exported,
  placeRows,
  readingOf,
  readRows,
  type PasteTarget,
} from '../../src/document/tables/pasted'
import { surveysTable } from '../../src/document/tables/surveysTable'
import { readingsTarget } from '../../src/document/tables/readingsTable'
import type { TrainDocument } from '../../src/document/schema'

const folder = new URL('../../examples/', import.meta.url)
const examples = readdirSync(folder).filter((file) => file.endsWith('.json'))
const load = (file: string) =>
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as TrainDocument

/** A table as it leaves the sheet, put into another document. */
function pasted(target: PasteTarget, from: TrainDocument, into: TrainDocument) {
  const units = { ...from.units, temperature: from.units.temperature ?? ('C' as const) }
  const cells = exported(target, from, units).map((row) =>
    row.map((cell) => (cell === true ? 'yes' : cell === false ? 'no' : String(cell ?? ''))),
  )
  const reading = readingOf(cells, target.columns)
  return placeRows(into, readRows(cells, reading, target.columns, units), target.put)
}

describe('tables of a whole train, saved and pasted again', () => {
  it.each(examples)('%s gets its readings back', (file) => {
    const train = load(file)
    const bare = { ...train, couplings: train.couplings.map((c) => ({ ...c, found: [] })) }
    const { document, placed } = pasted(readingsTarget, train, bare)
    expect(placed.flatMap(({ why }) => (why === undefined ? [] : [why]))).toEqual([])
    expect(placed.length).toBeGreaterThan(0)
    const byHour = (from: TrainDocument) =>
      from.couplings.map(({ found }) =>
        found.map((set) =>
          set.kind === 'line'
            ? set
            : { ...set, readings: [...set.readings].sort(([a], [b]) => (a % 12) - (b % 12)) },
        ),
      )
    expect(byHour(document)).toEqual(byHour(train))
  })

  it.each(examples)('%s gets its growth back', (file) => {
    const train = load(file)
    const bare = {
      ...train,
      machines: train.machines.map((machine) =>
        Object.fromEntries(Object.entries(machine).filter(([key]) => key !== 'growth')),
      ),
    } as TrainDocument
    const { document, placed } = pasted(growthTarget, train, bare)
    expect(placed.flatMap(({ why }) => (why === undefined ? [] : [why]))).toEqual([])
    const growth = (from: TrainDocument) =>
      from.machines.map((machine) =>
        Object.entries(machine.growth ?? {}).filter(([, points]) => points.length > 0),
      )
    const sorted = (from: TrainDocument) =>
      growth(from).map((entries) => entries.sort(([a], [b]) => (a < b ? -1 : 1)))
    expect(sorted(document)).toEqual(sorted(train))
  })
})

it('growth keeps where it comes from, and that it does not count', () => {
  const train = load('pump-and-motor.json')
  const points = [
    { at: 100, rise: 0.1, source: 'given' as const, why: "the maker's table" },
    { at: 100, rise: 0.2, source: 'measured' as const, use: false, when: '3 May', by: 'B. Hill' },
  ]
  const grown = (growth: TrainDocument['machines'][number]['growth']): TrainDocument => ({
    ...train,
    machines: train.machines.map((machine, m) => (m === 0 ? { ...machine, growth } : machine)),
  })
  const { document } = pasted(growthTarget, grown({ winter: points }), grown({}))
  expect(document.machines[0]?.growth?.['winter']).toEqual(points)
})

describe('places of a survey', () => {
  const train = load('piped-compressor.json')
  const [a, b] = train.machines.map(({ id }) => id)
  const points = [
    { machine: a ?? '', x: 200, z: 12, u: 20 },
    { machine: a ?? '', x: 1500, z: -8, y: 30 },
    { machine: b ?? '', x: 2500, y: -5 },
  ]

  it('come back as they were saved, and the same places are changed, not added', () => {
    const surveyed = { ...train, surveys: [{ id: 'level', name: 'Level', points }] }
    const { document, placed } = pasted(surveysTable, surveyed, train)
    expect(placed.flatMap(({ why }) => why ?? [])).toEqual([])
    expect(document.surveys?.[0]).toMatchObject({ name: 'Level', points })
    const again = pasted(surveysTable, surveyed, document).document
    expect(again.surveys).toEqual(document.surveys)
  })

  it.each([
    { method: 'water level', joins: true },
    { method: 'wire', use: false, why: 'the wire was touched' },
  ])('come with what the survey is and whether it counts: %o', (kept) => {
    const surveyed = { ...train, surveys: [{ id: 'level', name: 'Level', ...kept, points }] }
    const { document, placed } = pasted(surveysTable, surveyed, train)
    expect(placed.flatMap(({ why }) => why ?? [])).toEqual([])
    const [{ id: _, ...survey } = { id: '' }] = document.surveys ?? []
    expect(survey).toEqual({ name: 'Level', ...kept, points })
  })

  it.each([
    [{ on: 'nobody', x: 1, z: 1 }, 'no machine or skid is called'],
    [{ on: '1', z: 1 }, 'no machine or skid is called'],
    [{ on: a ?? '', z: 1 }, 'give its x'],
    [{ on: a ?? '', x: 200 }, 'neither a height nor a sideways place'],
    [{ on: a ?? '', x: 200, z: 1, survey: 'Wire' }, 'no survey is called “Wire”'],
  ])('%o: %s', (values, why) => {
    const surveyed = { ...train, surveys: [{ id: 'level', points }] }
    const placed = surveysTable.put(surveyed, values)
    expect('why' in placed && placed.why).toContain(why)
  })
})

describe('rows that cannot be placed', () => {
  const train = load('pump-and-motor.json')
  it.each([
    [{ coupling: 'nobody', set: 1 }, 'no coupling is called “nobody”'],
    [{ coupling: '1', set: 4 }, 'the next is 3'],
    [{ coupling: '1', set: 3, kind: 'laser' }, 'is no kind of reading'],
    [{ coupling: '1', set: 1, shaft: 'upper' }, 'neither left nor right'],
  ])('%o: %s', (values, why) => {
    const placed = readingsTarget.put(train, values)
    expect('why' in placed && placed.why).toContain(why)
  })

  it.each([
    [{ machine: 'nobody', state: 'winter' }, 'no machine'],
    [{ machine: 'Motor', state: 'spring' }, 'no state'],
    [{ machine: 'Motor', state: 'winter', point: 9 }, 'the next is 3'],
    [{ machine: 'Motor', state: 'winter', axis: 'top' }, 'neither left nor right'],
    [{ machine: 'Motor', state: 'winter', source: 'a guess' }, 'neither given nor measured'],
  ])('%o: %s', (values, why) => {
    const placed = growthTarget.put(train, values)
    expect('why' in placed && placed.why).toContain(why)
  })
})
