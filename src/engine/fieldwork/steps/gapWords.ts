import { gapDigits } from '../../../language/amounts'
import { listed } from '../../../language/names'
import { bandAround } from '../../../mechanics/misalignment/bands'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import type { Motion } from '../../../mechanics/motion'
import { tol } from '../../../mechanics/tolerances'
import type { Coupling, Train } from '../../../mechanics/train'
import { usualU, workDoubtOf } from '../../../mechanics/uncertainty/usual'
import { workErrors, workedBy } from '../../../mechanics/uncertainty/workErrors'
import type { GapAnswer } from './answer'

/**
 * The gap that some couplings should have between their shaft ends, cold, and from where to where it is good, 19 times
 * of 20. It was measured once and is measured again, each with its uncertainty; between them lies the work, moves along
 * the train by the dials of a slide among it. Nothing of a coupling whose gap was not entered.
 * @param couplings indices
 * @param now motions of the bodies (um, mrad)
 */
export function gapsAt(
  train: Train,
  couplings: readonly number[],
  now: readonly Motion[],
): GapAnswer[] {
  const moved = couplingMotions(train, now)
  const errors = workErrors(train, workedBy(train, now))
  return couplings.flatMap((c) => {
    const coupling = train.couplings[c]
    if (!coupling?.axial) return []
    const { found, u = usualU.gap } = coupling.axial
    const should = found + (moved[c]?.gap ?? 0) / 1000
    const work = (errors[c] ?? []).map(({ gap }) => gap / 1000)
    const doubt = Math.hypot(u, u, ...work, ...movesAlong(train, coupling, now))
    return [{ coupling: coupling.id, should, good: bandAround(should, doubt) }]
  })
}

/** "of motor to gear 3.25 mm, good from 2.97 mm to 3.53 mm, cold; ..."; empty without a gap. */
export function gapWords(train: Train, gaps: readonly GapAnswer[]): string {
  const text = (value: number) => `${gapDigits(value, train.units)} ${train.units.length}`
  return listed(
    gaps.map(({ coupling, should, good: [low, high] }) => {
      const name = train.couplings.find(({ id }) => id === coupling)?.name ?? coupling
      return `of ${name} ${text(should)}, good from ${text(low)} to ${text(high)}, cold`
    }),
  )
}

/** How unsure each move along the train is that counts at a coupling, of machines and of skids under them (mm). */
function movesAlong(train: Train, { left, right }: Coupling, now: readonly Motion[]): number[] {
  const under = (m: number) => train.machines[m]?.skid ?? m
  // a skid under both carries the gap along
  const bodies = [left, right, ...(under(left) === under(right) ? [] : [under(left), under(right)])]
  const { slide } = workDoubtOf(train.plan.sure)
  return [...new Set(bodies)].flatMap((b) =>
    Math.abs(now[b]?.tx ?? 0) > tol.unseen ? [slide / 1000] : [],
  )
}
