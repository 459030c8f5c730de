import { describe, expect, it } from 'vitest'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { withNumbers } from '../../src/document/numbers'
import { withValue, type Path } from '../../src/document/place'
import { numberPlaces, type Quantity } from '../../src/document/quantities'
import { readTrain } from '../../src/document/readTrain'
import { trainDocument, type TrainDocument } from '../../src/document/schema'
import { inEngineUnits } from '../../src/document/unitConverter'
import { sorts, type Sort } from '../second/sorts'
import { everyField } from './everyField'

const places = numberPlaces(trainDocument)
const said = (path: readonly string[]): string => path.join('.')

/** 7 um, mm, kg and degrees Celsius in mils, inches, pounds and degrees Fahrenheit, by hand. */
const seven: Record<Quantity, number> = {
  length: 7 / 25.4,
  fine: 7 / 25.4,
  torque: 7 / (0.3048 * 4.4482216152605),
  mass: 7 / 0.45359237,
  temperature: 44.6,
  expansion: 7 / 1.8,
  slope: 7,
  speed: 7,
  sliding: 7 / 25.4,
  hour: 7,
  time: 7,
  plain: 7,
}

/** What each sort of number of the other tests measures. */
const measuredBy: Record<Sort, readonly Quantity[]> = {
  x: ['length'],
  y: ['length'],
  length: ['length'],
  axial: ['fine'],
  side: ['fine'],
  'axial range': ['fine'],
  'axial length': ['length'],
  'axial length range': ['length'],
  'length range': ['length'],
  'side range': ['fine'],
  fine: ['fine'],
  'fine range': ['fine'],
  'offset y': ['fine'],
  'offset z': ['fine'],
  readings: ['fine'],
  corner: ['fine'],
  'slope y': ['slope'],
  'slope z': ['slope'],
  angle: ['slope'],
  pitch: ['slope'],
  mass: ['mass'],
  torque: ['torque'],
  sliding: ['sliding'],
  degrees: ['temperature', 'expansion'],
  fixed: ['plain', 'speed', 'time'],
}

/** A document with nothing in it but one number. */
const only = (path: readonly string[], value: number): TrainDocument =>
  path.reduceRight<unknown>(
    (inner, key) => (/^(\*|\d)$/.test(key) ? { [key.replace('*', '0')]: inner } : { [key]: inner }),
    value,
  ) as TrainDocument

const numberIn = (node: unknown): number =>
  typeof node === 'number' ? node : numberIn(Object.values(node as object)[0])

describe('every number of the train file', () => {
  it('says in the schema what it measures', () => {
    expect(places.length).toBeGreaterThan(100)
    expect(places.filter(({ quantity }) => !quantity).map(({ path }) => said(path))).toEqual([])
  })

  it('measures what the table of the tests says, which knows nothing of the schema', () => {
    const sortAt = (path: readonly string[]) =>
      [path, path.slice(0, -1), path.slice(0, -2), [...path.slice(0, -1), '*']]
        .map((p) => sorts.get(said(p)))
        .find((sort) => sort !== undefined)
    for (const { path, quantity } of places) {
      const sort = sortAt(path)
      const hour = sort === 'readings' && path.at(-1) === '0'
      const expected = sort && (hour ? ['hour'] : measuredBy[sort])
      expect(expected, `${said(path)} is missing in tests/second/sorts.ts`).toBeDefined()
      expect(expected, said(path)).toContain(quantity)
    }
  })

  it.each(places.map((place) => [said(place.path), place] as const))(
    '%s follows its quantity in the unit switch and on the way into the engine',
    (_, { path, quantity = 'plain', open }) => {
      const metric = { length: 'mm', fine: 'um', temperature: 'C' } as const
      const inches = { length: 'in', fine: 'mil', temperature: 'F' } as const
      const written = switchUnits({ ...only(path, 7), units: metric }, inches)
      expect(numberIn(written)).toBeCloseTo(seven[quantity], 10)
      const inside = inEngineUnits({ ...only(path, seven[quantity]), units: inches }).document
      const stays = open || quantity === 'temperature' || quantity === 'expansion'
      expect(numberIn(inside)).toBeCloseTo(stays ? seven[quantity] : 7, 10)
    },
  )

  it('reaches the engine: no two files that differ in one number are the same train', () => {
    const untold = new Set(places.filter(({ open }) => !open).map(({ path }) => said(path)))
    for (const people of forPeople) untold.delete(people)
    const document = everyField()
    const before = train(document)
    for (const { path, value } of numbersOf(document)) {
      const place = places.find((p) => fits(p.path, path))
      if (!place || !untold.has(said(place.path))) continue
      // a small change, so that limits stay the right way round; a count stays whole
      const next = withValue(
        document,
        path,
        counts.has(place.path.at(-1) ?? '') ? value + 1 : value * 0.999 - 0.001,
      )
      if (train(next) !== before) untold.delete(said(place.path))
    }
    expect([...untold], 'not in everyField.ts, or lost on its way').toEqual([])
  })
})

/** What is counted. */
const counts = new Set(['most', 'draws', 'seed', 'checkEvery'])

/** What a file says to people alone. */
const forPeople = ['couplings.*.speed']

function numbersOf(document: TrainDocument): { path: Path; value: number }[] {
  const found: { path: Path; value: number }[] = []
  withNumbers(document, ({ path, value }) => {
    found.push({ path, value })
    return value
  })
  return found
}

const fits = (pattern: readonly string[], path: Path): boolean =>
  pattern.length === path.length &&
  pattern.every((key, i) => key === '*' || key === String(path[i]))

/** The train of a document as a text. */
function train(document: TrainDocument): string {
  const result = readTrain(document)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refused)}`)
  return JSON.stringify(result.train, (_, value: unknown) =>
    value instanceof Map ? [...value] : value,
  )
}
