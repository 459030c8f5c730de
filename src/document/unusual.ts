import { micrometresPer, millimetresPer, type DocumentUnits } from '../mechanics/units'
import { withNumbers, type NumberFound } from './numbers'
import { valueAt, type Path } from './place'
import { placeOf } from './refusal'
import { digitsSaid } from './said'
import type { TrainDocument } from './schema'
import { unitSign } from './unitSign'

/**
 * Beyond what the trade ever sees, in mm. Common practice, no source: nothing is refused for it, it is asked
 * about once, because a slip of the keyboard (ten times, the wrong unit, two numbers in one) looks like this.
 */
const usual = {
  /** What a dial shows; a dial has 10 mm of travel, and most have less. */
  reading: 10,
  /** Between a part of the train and the rest of it, and of everything else that is a length. */
  distance: 50_000,
  pack: 100,
  growth: 10,
} as const
/** A value this many times the largest of the others of its column, where there are two others or more that are not 0. */
const oddRatio = 100
const fewestOthers = 2

/** A value that nobody in the trade would expect. */
export interface Unusual {
  readonly at: string
  /** As the document has it, in its own units. */
  readonly value: number
  /** With its unit, the one in which it shows best what it is: "12.7 mm at the dial", "600.6 m". */
  readonly said: string
  /** Beyond what: "more than 10 mm". */
  readonly beyond: string
}

type Typed = Pick<NumberFound, 'value' | 'quantity' | 'path'>

/** What of a document, finished or not, is beyond what the trade sees; each place once, in order. */
export function unusualOf(document: TrainDocument): Unusual[] {
  const numbers: Typed[] = []
  withNumbers(document, (found) => {
    const { path, open, value } = found
    if (!open || isAgain(path)) numbers.push(found)
    return value
  })
  const units = { ...document.units, temperature: document.units.temperature ?? 'C' } as const
  const strays = straysOf(numbers, units)
  const columns = columnsOf(numbers)
  return numbers.flatMap((number): Unusual[] => {
    const { path, value } = number
    const asked =
      beyondLimit(document, number, strays, units) ?? beyondOthers(columns, number, units)
    return asked ? [{ at: placeOf(path), value, ...asked }] : []
  })
}

type Beyond = Pick<Unusual, 'said' | 'beyond'>

function beyondLimit(
  document: TrainDocument,
  number: Typed,
  strays: ReadonlySet<Typed>,
  units: DocumentUnits,
): Beyond | undefined {
  const { path, value, quantity } = number
  if (quantity === 'length') {
    const size = value * millimetresPer[units.length]
    const along = isAlong(path)
    if (along ? !strays.has(number) : Math.abs(size) <= usual.distance) return undefined
    const than = `more than ${long(usual.distance, units)}`
    return { said: long(size, units), beyond: along ? `${than} from the rest of the train` : than }
  }
  const limit = quantity === 'fine' ? fineLimit(document, path) : undefined
  if (!limit) return undefined
  const size = (value * micrometresPer[units.fine]) / 1000
  if (Math.abs(size) <= limit.most) return undefined
  return {
    said: `${short(size, units)} ${limit.what}`,
    beyond: `more than ${short(limit.most, units)}`,
  }
}

interface Limit {
  readonly what: string
  /** mm */
  readonly most: number
}

function fineLimit(document: TrainDocument, path: Path): Limit | undefined {
  const [key, above, set] = [path.at(-1), path.at(-2), path.indexOf('found')]
  if (isReading(path)) return isGap(document, path) ? undefined : dial
  if (set >= 0 && key === 'sag') return { what: 'of sag', most: usual.reading }
  if (set >= 0 && above === 'offset') return { what: 'of offset', most: usual.reading }
  if (path.includes('pack')) return { what: 'under the foot', most: usual.pack }
  if (path.includes('growth') && key !== 'u') return { what: 'of growth', most: usual.growth }
  return undefined
}

const dial: Limit = { what: 'at the dial', most: usual.reading }

/** What was read at an hour, when the train was found or again after the work; the hour itself is none. */
export const isReading = (path: Path): boolean =>
  path.at(-3) === 'readings' && path.at(-1) === 1 && (path.includes('found') || isAgain(path))

const isAgain = (path: Path): boolean => path[0] === 'record' && path[1] === 'again'

/** A gap between faces is no travel of a dial: a spacer has its length. */
function isGap(document: TrainDocument, path: Path): boolean {
  const set = path.slice(0, path.indexOf('readings'))
  if (!isAgain(path)) return valueAt(document, [...set, 'kind']) === 'gap'
  const again = valueAt(document, set)
  const coupling = document.couplings.find(({ id }) => id === valueAt(again, ['coupling']))
  const index = valueAt(again, ['set'])
  return typeof index === 'number' && coupling?.found[index]?.kind === 'gap'
}

/** A place along the train, from any origin. */
const isAlong = (path: Path): boolean =>
  ['x', 'at', 'plane'].includes(String(path.at(-1))) && !path.includes('hole')

/** Places along the train that stand apart from the most that stand together; of as many, from those nearest to nought. */
function straysOf(numbers: readonly Typed[], units: DocumentUnits): ReadonlySet<Typed> {
  const along = numbers.filter(({ path, quantity }) => quantity === 'length' && isAlong(path))
  const most = usual.distance / millimetresPer[units.length]
  const flocks: Typed[][] = []
  for (const number of [...along].sort((a, b) => a.value - b.value)) {
    const [flock] = flocks.slice(-1)
    const last = flock?.at(-1)
    if (flock && last && number.value - last.value <= most) flock.push(number)
    else flocks.push([number])
  }
  const near = (flock: readonly Typed[]) => Math.min(...flock.map(({ value }) => Math.abs(value)))
  const [, ...apart] = flocks.sort((a, b) => b.length - a.length || near(a) - near(b))
  return new Set(apart.flat())
}

/** The largest two of the sizes in one column of one table, and how many there are beside 0. */
interface Column {
  readonly first: number
  readonly second: number
  readonly count: number
}

/** Columns by what the places in them share. */
function columnsOf(numbers: readonly Typed[]): ReadonlyMap<string, Column> {
  const columns = new Map<string, Column>()
  for (const number of numbers) {
    const name = columnOf(number)
    const size = Math.abs(number.value)
    if (name === undefined || size === 0) continue
    const { first, second, count } = columns.get(name) ?? { first: 0, second: 0, count: 0 }
    columns.set(name, {
      first: Math.max(first, size),
      second: size > first ? first : Math.max(second, size),
      count: count + 1,
    })
  }
  return columns
}

/** Plates and shims are thin and thick by nature, degrees begin anywhere, and places along the train too. */
function columnOf({ path, quantity }: Typed): string | undefined {
  if (['temperature', 'hour', 'plain'].includes(quantity)) return undefined
  if (path[0] === 'plan' || path.includes('plates')) return undefined
  if (quantity === 'length' && isAlong(path)) return undefined
  // the hours of one set stand together; sets of other dials do not
  const from = isReading(path) ? path.length - 2 : 0
  return placeOf(path.map((key, i) => (i >= from && typeof key === 'number' ? '*' : key)))
}

function beyondOthers(
  columns: ReadonlyMap<string, Column>,
  number: Typed,
  units: DocumentUnits,
): Beyond | undefined {
  const name = columnOf(number)
  const column = name === undefined ? undefined : columns.get(name)
  if (!column || Math.abs(number.value) !== column.first) return undefined
  if (column.count - 1 < fewestOthers || column.first < oddRatio * column.second) return undefined
  const said = (value: number) => `${digits(value)} ${unitSign(number.quantity, units)}`
  return {
    said: said(number.value),
    beyond: `${oddRatio} times the largest of the others here, ${said(column.second)}, or more`,
  }
}

const digits = (value: number): string => (value < 0 ? `-${digitsSaid(value)}` : digitsSaid(value))
/** What is small, in mm or inches; a limit in inches is said in two digits. */
const short = (mm: number, { fine }: DocumentUnits): string =>
  fine === 'mil' ? `${rounded(mm / 25.4)} in` : `${digits(mm)} mm`
/** What is long, in metres or feet. */
const long = (mm: number, { length }: DocumentUnits): string =>
  length === 'in' ? `${rounded(mm / 304.8)} ft` : `${digits(mm / 1000)} m`

/** Three digits say which inches and feet are meant. */
const rounded = (value: number): string => digits(Number(value.toPrecision(3)))
