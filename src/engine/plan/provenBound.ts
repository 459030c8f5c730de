import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import type { Misalignment } from '../../mechanics/readings/equation'
import type { Micrometres } from '../../mechanics/units'
import { programUnit } from '../lp/program'
import { boundsTogether } from '../proof/exactSum'
import { costProof } from '../proof/claims'
import { costClaims } from './limitClaims'
import type { LeastOfPart } from './solvePlan'

/** No plan costs less, and what shows it. */
export interface ProvenBound {
  readonly bound: Micrometres
  /** By rows of the proof's own, in exact arithmetic; false: by those of the program. */
  readonly byOwnRows: boolean
}

/**
 * The bound of a least cost: from what its duals claim, added up in exact arithmetic over rows that the proof makes itself;
 * where that proves less than can be shown, from the rows of the program.
 * @param share that the cost was minimised under
 * @param parts that move
 */
export function provenBound(
  train: Train,
  lines: readonly Misalignment[],
  share: number,
  parts: readonly LeastOfPart[],
): ProvenBound {
  const { claims, moves } = costClaims(parts)
  const { proven } = costProof(train, lines, share, claims, moves)
  const bounds = parts.map(({ least }) => least.bound)
  const byProgram = boundsTogether([boundsTogether(bounds, 1)], programUnit)
  if (!proven.accepted || proven.least < byProgram * (1 - tol.sameCost))
    return { bound: byProgram, byOwnRows: false }
  return { bound: Math.max(0, proven.least), byOwnRows: true }
}
