import { tidy } from '../../language/tidy'
import { towardSide } from '../../language/sides'
import { toldDigits, lengthDigits, slopeDigits } from '../../language/amounts'
import { fineSign, slopeSign } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { CheckAnswer } from './answer'
import { inSentence } from '../../language/names'

const where: Record<CheckAnswer['what'], string> = {
  'left plane': 'at the left plane',
  'right plane': 'at the right plane',
  offset: 'offset',
  angle: 'angle',
  gap: 'axial gap',
  stretch: 'coupling stretch',
  float: 'rotor float',
}

/**
 * A check as "0.35 of 0.50 mrad at the left plane, gear low, toward the crane bay". The larger way
 * alone where y and z count apart ("box"), the vector with both ways where it is round.
 */
export function checkInWords(train: Train, coupling: string, check: CheckAnswer): string {
  const joint = train.couplings.find(({ id }) => id === coupling)
  const round = joint?.tolerance.shape === 'round'
  const { x } = check
  // the last digits decide no tie
  const y = tidy(check.y ?? 0)
  const z = tidy(check.z ?? 0)
  const value =
    x === undefined ? (round ? Math.hypot(y, z) : Math.max(Math.abs(y), Math.abs(z))) : Math.abs(x)
  const { digits, unit } = formatOf(train, check.what)
  const shows = (part: number) => /[1-9]/.test(digits(part))
  const ways =
    x === undefined
      ? [
          ...(shows(z) && (round || Math.abs(z) >= Math.abs(y)) ? [riseWord(check.what, z)] : []),
          ...(shows(y) && (round || Math.abs(y) > Math.abs(z)) ? [sideWord(train, check, y)] : []),
        ]
      : shows(x)
        ? [axialWay(check.what, x)]
        : []
  const size = `${digits(value)} of ${digits(check.limit)} ${unit} ${where[check.what]}`
  if (ways.length === 0) return size
  return x === undefined
    ? `${size}, ${subject(train, coupling, check.what)} ${ways.join(', ')}`
    : `${size}, ${ways.join('')}`
}

/** Which way a check along the train is off the middle of what is allowed. */
export function axialWay(what: CheckAnswer['what'], x: number): string {
  if (what === 'stretch') return x > 0 ? 'drawn out' : 'pressed together'
  if (what === 'float') return x > 0 ? 'drawn toward the coupling' : 'pushed from the coupling'
  return x > 0 ? 'too wide' : 'too narrow'
}

/** Which way an angle at a plane, or between the shafts, lies: "gear low, toward the crane bay"; empty where none is seen. */
export function waysOff(
  train: Train,
  coupling: string,
  what: 'left plane' | 'right plane' | 'angle',
  angle: { readonly y: number; readonly z: number },
): string {
  const [y, z] = [tidy(angle.y), tidy(angle.z)]
  const shows = (part: number) => /[1-9]/.test(slopeDigits(part))
  const ways = [
    ...(shows(z) ? [riseWord(what, z)] : []),
    ...(shows(y) ? [sideWord(train, { what }, y)] : []),
  ]
  return ways.length === 0 ? '' : `${subject(train, coupling, what)} ${ways.join(', ')}`
}

/** The check that uses the largest share. */
export const tightest = (checks: readonly CheckAnswer[]): CheckAnswer | undefined =>
  checks.reduce<CheckAnswer | undefined>(
    (a, b) => (a === undefined || b.share > a.share ? b : a),
    undefined,
  )

function formatOf(train: Train, what: CheckAnswer['what']) {
  switch (what) {
    case 'offset':
      return {
        digits: (value: number) => toldDigits(value, train.units),
        unit: fineSign[train.units.fine],
      }
    case 'gap':
    case 'stretch':
    case 'float':
      return {
        digits: (value: number) => lengthDigits(value, train.units),
        unit: train.units.length,
      }
    case 'angle':
    case 'left plane':
    case 'right plane':
      return { digits: slopeDigits, unit: slopeSign(train.units) }
  }
}

/**
 * Whose position the signs speak of. At the right plane the angle is minus the misalignment at the
 * left plane over the span: there the left machine lies high where z is positive.
 */
function subject(train: Train, coupling: string, what: CheckAnswer['what']): string {
  const joint = train.couplings.find(({ id }) => id === coupling)
  const machine = what === 'right plane' ? joint?.left : joint?.right
  const name = machine === undefined ? undefined : train.machines[machine]?.name
  return inSentence(name ?? '').replace(/^the /, '')
}

const riseWord = (what: CheckAnswer['what'], z: number): string => {
  if (what === 'angle') return z > 0 ? 'rising to the right' : 'falling to the right'
  return z > 0 ? 'high' : 'low'
}

const sideWord = (train: Train, { what }: Pick<CheckAnswer, 'what'>, y: number): string => {
  const side = towardSide(train, y)
  return what === 'angle' ? `running ${side} to the right` : side
}
