import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { Misalignment } from '../../mechanics/readings/equation'
import { sharesAfter } from './couplingsMet'
import { sharesWithKept } from './keptFree'
import { leastMissed } from './leastAngle'
import { limitExcesses, placeSaid, type LimitExcess } from './limitsKept'
import { claimedFootMove, displacement, type ClaimedMotion } from './moved'

export interface Proof {
  readonly sound: boolean
  /** Why it is not sound; empty when it is. */
  readonly faults: readonly string[]
  /** Cost recomputed from the moved feet (um). */
  readonly cost: Micrometres
  /** No plan costs less (um). */
  readonly bound: Micrometres
  readonly gap: Micrometres
  readonly worstViolation: Micrometres
  readonly worstShare: number
  /** The same with what is kept free of the tolerances counted: the share asked for must not be less. */
  readonly worstKept: number
}

/**
 * Judges a plan anew: moves the bodies, measures every limit and every coupling in every state,
 * adds up the moves, and compares with the bound. Nothing of the program that found it is used.
 * @param lines of the couplings as found (um, mrad)
 * @param motions um, mrad
 * @param share of tolerance asked for
 * @param bound no plan costs less (um)
 */
export function prove(
  train: Train,
  lines: readonly Misalignment[],
  motions: readonly ClaimedMotion[],
  share: number,
  bound: Micrometres,
): Proof {
  const passed = limitExcesses(train, motions)
  const worst = passed.reduce<LimitExcess | undefined>(
    (a, b) => (b.by > (a?.by ?? 0) || Number.isNaN(b.by) ? b : a),
    undefined,
  )
  const shares = sharesAfter(train, lines, motions)
  const largest = shares.reduce((a, b) => (b.share > a.share || Number.isNaN(b.share) ? b : a))
  const withKept = sharesWithKept(train, lines, motions)
  const kept = withKept.reduce(
    (a, b) => (b.share > a.share || Number.isNaN(b.share) ? b : a),
    largest,
  )
  const cost = costOf(train, motions)
  const gap = cost - bound
  const allowed = Math.max(tol.allowedGap * cost, tol.allowedGapLeast)
  const faults = [
    ...(worst === undefined || worst.by <= tol.allowedPass
      ? []
      : [`${placeSaid(train, worst)} is passed by ${worst.by} um`]),
    ...(largest.share <= share + tol.share
      ? []
      : [
          `coupling ${largest.coupling} uses ${largest.share} of its tolerance in ${largest.state}, more than ${share}`,
        ]),
    ...(kept === largest || kept.share <= share + tol.share
      ? []
      : [
          `coupling ${kept.coupling} with what is kept free uses ${kept.share} of its tolerance in ${kept.state}, more than ${share}`,
        ]),
    ...leastMissed(train, lines, motions).map(
      ({ coupling, state, place, by }) =>
        `coupling ${coupling} falls short of its least angle at the ${place} by ${by} mrad in ${state}`,
    ),
    ...(Math.abs(gap) <= allowed
      ? []
      : [`the plan costs ${cost} um and the bound is ${bound} um: the gap is too wide`]),
  ]
  return {
    sound: faults.length === 0,
    faults,
    cost,
    bound,
    gap,
    worstViolation: Math.max(0, worst?.by ?? 0),
    worstShare: largest.share,
    worstKept: kept.share,
  }
}

/** What the moves cost: every foot's shim, every row's slide once, every axial move. */
export function costOf(train: Train, motions: readonly ClaimedMotion[]): Micrometres {
  const { shim, side, axial } = train.plan.weights
  return train.bodies.reduce((sum, body, b) => {
    const motion = motions[b]
    if (!motion) throw new RangeError(`no motion for ${body.id}`)
    const raised = body.feet.map((_, f) => Math.abs(claimedFootMove(body, motion, f)[2]))
    const slid = body.rows.map((row) => Math.abs(displacement(motion, [row.x - body.x0, 0, 0])[1]))
    const total = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
    const moved = shim * total(raised) + side * total(slid) + axial * Math.abs(motion.tx)
    return sum + body.weight * moved
  }, 0)
}
