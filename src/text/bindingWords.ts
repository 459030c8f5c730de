import { tol } from '../mechanics/tolerances'
import { fineSign, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { BindingAnswer, BindingLimit } from '../engine/plan/answer'
import { footLimitWords } from '../language/footLimitWords'
import { limitJson } from '../json/planJson'
import { checkWay, feetInWords } from '../engine/plan/limitWords'
import { costWord } from '../language/costWord'
import { inSentence } from '../language/names'
import { toothPlaceName } from '../language/toothWords'
import { wayInWords } from '../language/sides'

/** Steps of room that people think in, by the unit of the limit. Common practice, no source. */
const steps: Record<string, number> = {
  mm: 0.1,
  in: 0.01,
  mil: 1,
  µm: 10,
  mrad: 0.1,
  'mil/in': 0.1,
}

/**
 * What a limit that binds is worth, as one clause: "each 0.1 mm more room toward the aisle at foot 2
 * of the gearbox saves 0.23 mm of moves, up to 0.4 mm". A price holds to this side only, and so far.
 */
export function bindingSentence(train: Train, binding: BindingAnswer): string {
  const { price, unit, upTo } = limitJson(train, binding)
  const fine = fineSign[train.units.fine]
  const step = stepOf(unit, upTo)
  const room = roomIn(train, binding.limit)
  const saves = (amount: number) => `saves ${digits(price * amount)} ${fine} of ${costWord(train)}`
  if (step === undefined && upTo !== null)
    return `the next ${digits(upTo)} ${unit} ${room} ${saves(upTo)}, further room less`
  const far = upTo === null ? 'without end' : `up to ${digits(upTo)} ${unit}`
  return `each ${digits(step ?? 0)} ${unit} ${room} ${saves(step ?? 0)}, ${far}`
}

/**
 * The usual step in a unit of the document, or a tenth of it where the price ends before; undefined where it ends
 * before that.
 * @param upTo how far the price holds, in that unit; null: without end
 */
export function stepOf(unit: string, upTo: number | null): number | undefined {
  const usual = steps[unit] ?? 0.1
  return [usual, usual / 10].find((step) => upTo === null || step <= upTo * (1 + tol.lastDigits))
}

/** All that a limit's price can save; infinite where it holds without end. */
export const savesAtMost = ({ price, upTo }: BindingAnswer): Micrometres =>
  upTo === null ? Infinity : price * upTo

/** Two digits that say something, without an exponent. */
function digits(value: number): string {
  const short = Number(value.toPrecision(2))
  return short !== 0 && Math.abs(short) < 1e-6 ? short.toFixed(9).replace(/0+$/, '') : String(short)
}

/** What there would be more of, and where: "more room toward the aisle at foot 2 of the gear". */
function roomIn(train: Train, limit: BindingLimit): string {
  if (limit.kind === 'check') {
    const coupling = train.couplings.find(({ id }) => id === limit.coupling)?.name ?? ''
    const state = train.states.find(({ id }) => id === limit.state)?.name ?? ''
    const place = limit.what.endsWith('plane')
      ? `at the ${limit.what} of`
      : `for the ${limit.what} of`
    const way = checkWay(limit.way)
    return `more tolerance ${way === '' ? '' : `${way} `}${place} ${coupling} in ${state}`
  }
  if (limit.kind === 'least') {
    const coupling = train.couplings.find(({ id }) => id === limit.coupling)?.name ?? ''
    const state = train.states.find(({ id }) => id === limit.state)?.name ?? ''
    return `less of the least angle ${checkWay(limit.way)} at the ${toothPlaceName(limit.what)} of ${coupling} in ${state}`
  }
  const whose = inSentence(train.bodies.find(({ id }) => id === limit.body)?.name ?? '')
  switch (limit.kind) {
    case 'foot': {
      const way = limit.toward === undefined ? '' : wayInWords(train, limit.toward)
      return footLimitWords[limit.limit].more(`${feetInWords(limit)} of ${whose}`, way)
    }
    case 'tilt':
      return `more tilt of ${whose}`
    case 'restraint':
      return `more play ${wayInWords(train, limit.toward)} at ${limit.restraint} of ${whose}`
  }
}
