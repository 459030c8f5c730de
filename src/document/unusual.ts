import { millimetresPer, type DocumentUnits } from '../mechanics/units'
import { converted } from './converted'
import { heatRise } from './heat'
import { withNumbers } from './numbers'
import { valueAt, type Path } from './place'
import { isAgain, isAlong, isTypedOpen, type Beyond, type Typed } from './placeKinds'
import { placeOf } from './refusal'
import { signedSaid } from './said'
import type { TrainDocument } from './schema'
import { unitSign } from './unitSign'
import { beyondOthers, valueColumns } from './unusualColumns'
import { usualGrowth, usualAt, usualDistance, type Usual } from './usualSizes'

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
    if (!open || isTypedOpen(path)) numbers.push(found)
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
        if (!(Math.abs(value) > usualGrowth.most)) return []
        return [
          {
            at: placeOf(['machines', m, 'growth', state, i, 'heat']),
            value,
            said: `${short(value, units)} of growth from temperatures`,
            beyond: `more than ${short(usualGrowth.most, units)}`,
          },
        ]
      }),
    ),
  )
}

/** The units in which the table of usual sizes is written. */
const metric: DocumentUnits = { length: 'mm', fine: 'mm', temperature: 'C' }

function beyondLimit(
  document: TrainDocument,
  number: Typed,
  strays: ReadonlySet<Typed>,
  units: DocumentUnits,
): Beyond | undefined {
  const { path, value, quantity } = number
  const size = converted(value, quantity, units, metric)
  if (quantity === 'length' && isAlong(path)) {
    if (!strays.has(number)) return undefined
    const than = `more than ${long(usualDistance, units)}`
    return { said: long(size, units), beyond: `${than} from the rest of the train` }
  }
  const usual = usualAt(quantity, path, path.at(-3) === 'readings' && isGap(document, path))
  if (!usual) return undefined
  const { most, least = -most } = usual
  if (size >= least && size <= most) return undefined
  const say = sayer(number, usual, units)
  return {
    said: [say(size, value), usual.what ?? ''].join(' ').trim(),
    beyond: size > most || least === -most ? `more than ${say(most)}` : `less than ${say(least)}`,
  }
}

/** Sizes as they show best what they are: what is long in metres or feet, the rest in the unit that one types in. */
function sayer({ quantity }: Typed, { most }: Usual, units: DocumentUnits) {
  return (size: number, typed?: number): string => {
    if (quantity === 'length' && most >= 1000) return long(size, units)
    if (quantity === 'length' || quantity === 'fine') return short(size, units)
    const limit = () => Number(converted(size, quantity, metric, units).toPrecision(3))
    return `${signedSaid(typed ?? limit())} ${unitSign(quantity, units)}`.trim()
  }
}

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
  const most = usualDistance / millimetresPer[units.length]
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
