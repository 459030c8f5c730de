import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import type { Part } from '../lp/parts'
import { programUnit } from '../lp/program'
import type { DisplayedMove } from './choices'
import { nanometres } from './plates'

/**
 * What every cost of a part is a multiple of (program units), where only shims are paid for and every
 * change is a whole number of steps; 0 where that is not so. It lets a bound be rounded up.
 */
export function quantumOf(train: Train, part: Part, choices: readonly DisplayedMove[]): number {
  const { shims, weights } = train.plan
  if (!shims) return 0
  if (part.program.displacements.some(({ meaning }) => meaning.fact !== 'shim')) return 0
  const step = nanometres(shims.step)
  let common = 0
  for (const { kind, body: b, feet } of choices) {
    if (kind !== 'shim') continue
    const body = train.bodies[b]
    if (!body) continue
    const apart = feet.some((f) => {
      const pack = body.feet[f]?.pack
      return shims.rebuild && pack !== undefined && nanometres(pack.now) % step !== 0
    })
    if (apart) return 0
    const cost = (feet.length * weights.shim * body.weight) / tol.weightPart
    if (Math.abs(cost - Math.round(cost)) > tol.wholeStep) return 0
    common = divisor(common, Math.round(cost))
  }
  return (common * tol.weightPart * shims.step) / programUnit
}

/** The greatest common divisor of two whole numbers (Euclid). */
function divisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b]
  return a
}
