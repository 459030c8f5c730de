import { tol } from '../../../mechanics/tolerances'
import { fineText } from '../../../language/amounts'
import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { expectedAnswer } from '../../plan/report'
import type { ExpectedAnswer } from '../../plan/answer'
import { inSentence, listed } from '../../../language/names'
import type { JudgeAnswer } from './answer'
import { largestMove, leftOver } from './moves'

/** Couplings at the machines listed. */
export const couplingsAt = (train: Train, machines: readonly number[]): number[] =>
  train.couplings.flatMap(({ left, right }, c) =>
    machines.includes(left) || machines.includes(right) ? [c] : [],
  )

/**
 * What the sets of some couplings should show, cold, where the bodies stand now.
 * @param motions um, mrad
 * @param couplings indices
 */
export function expectedAt(
  train: Train,
  found: readonly AsFound[],
  motions: readonly Motion[],
  couplings: readonly number[],
): ExpectedAnswer[] {
  const some = { ...train, couplings: couplings.flatMap((c) => train.couplings[c] ?? []) }
  return expectedAnswer(
    some,
    couplings.flatMap((c) => found[c] ?? []),
    motions,
  )
}

/**
 * Whether a coupling's readings can be judged: only when the bodies on both its sides are done, a skid among them that
 * carries one of them and not the other.
 * @param now motions of the bodies (um, mrad), as `goal`
 * @param couplings indices
 */
export function readingsJudged(
  train: Train,
  now: readonly Motion[],
  goal: readonly Motion[],
  couplings: readonly number[],
): JudgeAnswer[] {
  return couplings.flatMap((c) => {
    const coupling = train.couplings[c]
    if (!coupling) return []
    const sides = [coupling.left, coupling.right]
    const skids = sides.map((m) => train.bodies[m]?.skid)
    // a skid under both machines carries the coupling along as it is
    const together = skids[0] !== undefined && skids[0] === skids[1]
    const bodies = new Set([...sides, ...(together ? [] : skids.flatMap((s) => s ?? []))])
    const waiting = [...bodies].flatMap((b) => {
      const body = train.bodies[b]
      if (!body) return []
      const left = largestMove(body, leftOver(goal[b] ?? noMotion, now[b] ?? noMotion))
      return left < tol.unseen ? [] : [{ body, left }]
    })
    const left = Math.max(0, ...waiting.map((entry) => entry.left))
    const coarse = left > train.plan.stage ? '; it is still coarse' : ''
    return [
      {
        coupling: coupling.id,
        judge: waiting.length === 0 ? ('good to judge' as const) : ('not yet' as const),
        why:
          waiting.length === 0
            ? ''
            : `${listed(waiting.map((entry) => `${inSentence(entry.body.name)} still has to move up to ${fineText(entry.left, train.units)}`))}${coarse}`,
        left,
      },
    ]
  })
}
