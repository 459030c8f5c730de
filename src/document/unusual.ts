import { micrometresPer, millimetresPer, type DocumentUnits } from '../mechanics/units'
import { heatRise } from './heat'
import { withNumbers } from './numbers'
import { valueAt, type Path } from './place'
import { isAgain, isAlong, isReading, type Beyond, type Typed } from './placeKinds'
import { placeOf } from './refusal'
import { signedSaid } from './said'
import type { TrainDocument } from './schema'
import { beyondOthers, valueColumns } from './unusualColumns'

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

/** A value that nobody in the trade would expect. */
export interface Unusual extends Beyond {
  readonly at: string
  /** As the document has it, in its own units. */
  readonly value: number
}

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
  const columns = valueColumns(numbers)
  const typed = numbers.flatMap((number): Unusual[] => {
    const { path, value } = number
    const asked =
      beyondLimit(document, number, strays, units) ?? beyondOthers(columns, number, units)
    return asked ? [{ at: placeOf(path), value, ...asked }] : []
  })
  return [...typed, ...beyondByHeat(document, units)]
}

/** Growth worked out from temperatures: each of its figures may be usual, and what comes of them not. */
function beyondByHeat(document: TrainDocument, units: DocumentUnits): Unusual[] {
  return document.machines.flatMap(({ growth = {} }, m) =>
    Object.entries(growth).flatMap(([state, points]) =>
      points.flatMap(({ heat }, i): Unusual[] => {
        if (!heat) return []
        const rise = heatRise({ ...heat, height: heat.height * millimetresPer[units.length] })
        // in mm, in whichever units the document is
        const value = Number((rise / 1000).toPrecision(6))
        if (!(Math.abs(value) > usual.growth)) return []
        return [
          {
            at: placeOf(['machines', m, 'growth', state, i, 'heat']),
            value,
            said: `${short(value, units)} of growth from temperatures`,
            beyond: `more than ${short(usual.growth, units)}`,
          },
        ]
      }),
    ),
  )
}

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

/** A gap between faces is no travel of a dial: a spacer has its length. */
function isGap(document: TrainDocument, path: Path): boolean {
  const set = path.slice(0, path.indexOf('readings'))
  if (!isAgain(path)) return valueAt(document, [...set, 'kind']) === 'gap'
  const again = valueAt(document, set)
  const coupling = document.couplings.find(({ id }) => id === valueAt(again, ['coupling']))
  const index = valueAt(again, ['set'])
  return typeof index === 'number' && coupling?.found[index]?.kind === 'gap'
}

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

/** What is small, in mm or inches; a limit in inches is said in two digits. */
const short = (mm: number, { fine }: DocumentUnits): string =>
  fine === 'mil' ? `${rounded(mm / 25.4)} in` : `${signedSaid(mm)} mm`
/** What is long, in metres or feet. */
const long = (mm: number, { length }: DocumentUnits): string =>
  length === 'in' ? `${rounded(mm / 304.8)} ft` : `${signedSaid(mm / 1000)} m`

/** Three digits say which inches and feet are meant. */
const rounded = (value: number): string => signedSaid(Number(value.toPrecision(3)))
