import { tol } from '../../mechanics/tolerances'
import { fineText, shareText, slopeText } from '../../language/amounts'
import type { Micrometres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { footMove, totalsOf } from '../plan/totals'
import { sharesAfter } from '../proof/couplingsMet'
import { sharesWithKept } from '../proof/keptFree'
import { leastMissed } from '../proof/leastAngle'
import { limitExcesses, placeSaid } from '../proof/limitsKept'
import { prove } from '../proof/prove'
import { toothPlaceName as placeNamed } from '../../language/toothWords'
import { isLoose } from './footGroups'
import type { Rounded } from './rounding'
import { footRange } from './shims'

/** A rounding measured anew, with what it passes in words. */
export interface Judged {
  readonly faults: string[]
  readonly cost: Micrometres
  readonly worstShare: number
  /** The same with what is kept free of the tolerances counted. */
  readonly worstKept: number
  readonly worstViolation: Micrometres
  /** Farthest that shims leave a foot off the plane of its body. */
  readonly flat: Micrometres
}

/**
 * Judges a rounding by the proof's own code: every limit and every coupling in every state, the
 * bodies lying in the planes of their shims. The whole tolerance is allowed here; whether the share
 * asked for is kept stands in the worst share.
 */
export function judgedRounding(train: Train, found: readonly AsFound[], rounded: Rounded): Judged {
  const lines = found.map(({ line }) => line)
  const share = Math.max(1, train.plan.share)
  const proof = prove(train, lines, rounded.motions, share, 0)
  const { units } = train
  const called = (id: string) => train.couplings.find((one) => one.id === id)?.name ?? id
  const when = (id: string) => train.states.find((one) => one.id === id)?.name ?? id
  const over = sharesAfter(train, lines, rounded.motions).filter(
    ({ share: used }) => !(used <= share + tol.share),
  )
  const faults = [
    ...limitExcesses(train, rounded.motions)
      .filter(({ by }) => !(by <= tol.allowedPass))
      .map((one) => `${placeSaid(train, one)} would be passed by ${fineText(one.by, units)}`),
    ...over.map(
      ({ coupling, state, share: used }) =>
        `${called(coupling)} would use ${shareText(used)} of its tolerance, ${when(state)}`,
    ),
    ...leastMissed(train, lines, rounded.motions).map(
      ({ coupling, state, place, by }) =>
        `${called(coupling)} would run ${slopeText(by, units)} straighter at its ${placeNamed(place)} than its teeth need, ${when(state)}`,
    ),
    ...sharesWithKept(train, lines, rounded.motions)
      .filter(({ share: used }) => !(used <= share + tol.share))
      .filter(
        ({ coupling, state }) =>
          !over.some((one) => one.coupling === coupling && one.state === state),
      )
      .map(
        ({ coupling, state, share: used }) =>
          `${called(coupling)} would use ${shareText(used)} of its tolerance with what is kept free of it, ${when(state)}`,
      ),
  ]
  let flat = 0
  let cost = 0
  const { weights, shims } = train.plan
  train.bodies.forEach((body, b) => {
    const motion = rounded.motions[b]
    if (!motion) return
    body.feet.forEach((foot, f) => {
      const change = rounded.changes[b]?.[f] ?? 0
      cost += body.weight * weights.shim * Math.abs(change)
      if (body.held) return
      const off = Math.abs(change - footMove(body, motion, foot).shim)
      flat = Math.max(flat, off)
      if (!(off <= (isLoose(body) ? (shims?.flat ?? 0) : 0) + tol.allowedPass))
        faults.push(
          `${body.name} foot ${foot.id} would stand ${fineText(off, units)} off the plane of the others`,
        )
      const [low, high] = footRange(foot)
      if (change < low - tol.allowedPass || change > high + tol.allowedPass)
        faults.push(`${body.name} foot ${foot.id} cannot change by ${fineText(change, units)}`)
    })
  })
  const still = train.bodies.map((body, b) => {
    const { side, axial } = totalsOf({ ...train, bodies: [body] }, [
      rounded.motions[b] ?? { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 },
    ])
    return body.weight * (weights.side * side + weights.axial * axial)
  })
  return {
    faults,
    cost: still.reduce((sum, part) => sum + part, cost),
    worstShare: proof.worstShare,
    worstKept: proof.worstKept,
    worstViolation: proof.worstViolation,
    flat,
  }
}
