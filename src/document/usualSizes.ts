import type { Path } from './place'
import type { Quantity } from './quantities'

/** What the trade has at most; beyond it a number is asked about. */
export interface Usual {
  /** mm of what is a length; else the unit of a document in mm and °C. */
  readonly most: number
  /** Where 0 is nothing in particular: the least. */
  readonly least?: number
  /** What stands behind the amount: "at the dial". */
  readonly what?: string
}

/** Between a part of the train and the rest of it, and of every other length (mm). */
export const usualDistance = 50_000

/**
 * Largest ordinary sizes of whatever a cell can hold. Common practice, no source: nothing is refused for them; a slip
 * of the keyboard (ten times, the wrong unit, two numbers in one) is beyond them, and is asked about once. Under a
 * quantity the key of the file, or the last two of them, has its own; `rest` is of all others.
 */
const usual: Readonly<Partial<Record<Quantity, Readonly<Record<string, Usual>>>>> = {
  length: {
    rest: { most: usualDistance },
    ...named('diameter pitch', { most: 5000 }),
    ...named('axial.found axial.want heat.height gaps.gap', { most: 10_000 }),
    ...named('uDiameter uAt axial.u axial.tolerance stretch float centre sure.foot', { most: 100 }),
  },
  fine: {
    rest: { most: 10 },
    ...named('dial shows', { most: 10, what: 'at the dial' }),
    ...named('work.shim', { most: 10, what: 'under the foot' }),
    ...named('work.side work.axial', { most: 10, what: 'of slide' }),
    ...named('sag', { most: 10, what: 'of sag' }),
    ...named('offset.y offset.z', { most: 10, what: 'of offset' }),
    ...named('pack.now pack.min pack.max', { most: 100, what: 'under the foot' }),
    ...named('plates stock step', { most: 100 }),
    ...named('lift soleplate effort points.y points.z', { most: 100 }),
    ...named('restraints.axial restraints.side restraints.rise', { most: 100 }),
    ...named('airGaps.top airGaps.three airGaps.bottom airGaps.nine', { most: 100 }),
    ...named('clearance hole.x hole.y', { most: 50 }),
    ...named('u uSag rim face runOut.limit sure.shim sure.slide', { most: 5 }),
  },
  // half a degree is 9 mrad; teeth of a gear coupling stand 26 mrad at most
  slope: { rest: { most: 50 } },
  // from liquid gas to live steam
  temperature: { rest: { least: -200, most: 600 } },
  // the softest plastics
  expansion: { rest: { most: 120 } },
  mass: { rest: { most: 1e6 } },
  torque: { rest: { most: 1e5 } },
  speed: { rest: { most: 1e5 } },
  sliding: { rest: { most: 1000 } },
  // a week
  time: { rest: { most: 10_080 } },
  // what has no unit has no size in common; the share asked for, a chance and a count of draws have bounds of their own
  plain: {
    ...named('states.tolerance', { most: 10 }),
    ...named('load', { most: 200 }),
    ...named('weight weights.shim weights.side weights.axial', { most: 1000 }),
    ...named('guard', { most: 5 }),
    ...named('shims.most', { most: 20 }),
    ...named('checkEvery', { most: 120 }),
    ...named('stator.limit', { most: 0.25 }),
  },
}

function named(keys: string, one: Usual): Record<string, Usual> {
  return Object.fromEntries(keys.split(' ').map((key) => [key, one]))
}

/** What a dial shows; most have less travel. */
const dial: Usual = { most: 10, what: 'at the dial' }
/** A gap between faces is no travel of a dial: a spacer has its length. */
const gap: Usual = { most: 600, what: 'between the faces' }
export const usualGrowth: Usual = { most: 10, what: 'of growth' }

/** What is usual at a place of the file; undefined where any number is. */
export function usualAt(quantity: Quantity, path: Path, isGap: boolean): Usual | undefined {
  const keys = path.filter((key) => typeof key === 'string')
  const [key = '', above = ''] = keys.slice(-2).reverse()
  if (key === 'readings') return quantity === 'fine' ? (isGap ? gap : dial) : undefined
  const moves = path[2] === 'growth' || path[2] === 'moved'
  if (quantity === 'fine' && moves && key !== 'u') return usualGrowth
  const of = usual[quantity]
  return of?.[`${above}.${key}`] ?? of?.[key] ?? of?.['rest']
}
