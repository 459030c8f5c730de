import { tidy } from '../../language/tidy'
import type { Micrometres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { worstShare, type CouplingResult } from '../../mechanics/misalignment/shares'
import { noMotion, type Motion } from '../../mechanics/motion'
import { keepsRoom, keptRooms } from '../../mechanics/uncertainty/kept'
import { keptShares } from '../../mechanics/uncertainty/verdict'
import { prove, type Proof } from '../proof/prove'
import type { CertificateAnswer } from './certificateAnswer'
import type { MovesAnswer, PlanFigures, ProofAnswer, StandingAnswer } from './answer'
import { planCautions } from './cautions'
import { findingsOf } from './findings'
import { notEnteredOf } from './notEntered'
import * as report from './report'
import { statorsAnswer } from './statorAnswer'
import { axialAnswer } from './axialRow'
import type { ProvenBound } from './provenBound'
import { teethAnswer, teethOf } from './teeth'
import { teethCautions } from './teethWords'
import { surveysAnswer } from './surveysAnswer'
import { totalsOf } from './totals'

/** What the programs came to, before it is judged. */
export type PlanOutcome =
  | { readonly status: 'in-tolerance'; readonly floor: number | undefined }
  | {
      readonly status: 'impossible'
      readonly floor: number
      readonly certificate?: CertificateAnswer | undefined
    }
  | {
      readonly status: 'stopped'
      readonly floor: number | undefined
      readonly why: string
      readonly outOfWork?: true
    }
  | {
      readonly status: 'planned'
      readonly floor: number
      readonly motions: readonly Motion[]
      /** No plan costs less. */
      readonly bound: Micrometres
      /** That is shown by rows of the proof's own. */
      readonly byOwnRows: boolean
    }

/** Moves that passed their proof, with what is to be known of them. */
type ProvenMoves = MovesAnswer &
  Pick<StandingAnswer, 'findings' | 'teeth' | 'axial'> & { readonly proof: ProofAnswer }

/**
 * Judges what the programs came to by other code, and writes it down.
 * @param known the proof, where it was worked out before
 */
export function planSolved(
  train: Train,
  found: readonly AsFound[],
  standing: readonly CouplingResult[],
  solved: PlanOutcome,
  known: () => Proof | undefined = () => undefined,
): PlanFigures {
  const common = {
    name: train.name,
    share: train.plan.share,
    ...(train.plan.guard > 0 && { guard: train.plan.guard }),
    ...(train.plan.worst && { worst: true as const }),
    held: train.bodies.filter(({ held }) => held).map(({ id }) => id),
    asFound: report.asFoundAnswer(train, found, standing),
    standingShare: tidy(worstShare(standing)),
    ...(keepsRoom(train) && {
      standingKept: tidy(Math.max(...keptShares(train, standing, keptRooms(train)))),
    }),
    floor: solved.floor === undefined ? null : tidy(solved.floor),
    findings: findingsOf(train, found),
    notEntered: notEnteredOf(train),
    ...teethAnswer(train, found),
    ...axialAnswer(train),
    ...statorsAnswer(train),
    ...surveysAnswer(train),
  }
  switch (solved.status) {
    case 'stopped': {
      const { status, why, outOfWork } = solved
      return { status, why, ...(outOfWork && { outOfWork }), ...common }
    }
    case 'impossible':
      return {
        status: 'impossible',
        ...common,
        floor: tidy(solved.floor),
        ...(solved.certificate && { certificate: solved.certificate }),
      }
    case 'in-tolerance': {
      const still = train.bodies.map(() => noMotion)
      return judged(still, { bound: 0, byOwnRows: true }, (moves) => ({
        status: 'in-tolerance',
        ...common,
        ...moves,
      }))
    }
    case 'planned': {
      const { motions, floor } = solved
      return judged(motions, solved, (moves) => ({
        status: 'planned',
        ...common,
        floor: tidy(floor),
        ...moves,
      }))
    }
  }

  /** The moves with their proof in an answer, or that they do not pass it. */
  function judged(
    motions: readonly Motion[],
    { bound, byOwnRows }: ProvenBound,
    answer: (moves: ProvenMoves) => PlanFigures,
  ): PlanFigures {
    const lines = found.map(({ line }) => line)
    const proof = known() ?? prove(train, lines, motions, train.plan.share, bound)
    if (!proof.sound) {
      const why = proof.faults.join('; ')
      return { status: 'unproven', why, ...common, proof: proofAnswer(proof, byOwnRows) }
    }
    return answer({
      ...teethAnswer(train, found, motions),
      ...axialAnswer(train, motions),
      ...statorsAnswer(train, motions),
      findings: [
        ...common.findings,
        ...planCautions(train, motions, proof.worstShare),
        ...teethCautions(train, teethOf(train, found, motions)),
      ],
      cost: proof.cost,
      total: totalsOf(train, motions),
      bodies: report.bodiesAnswer(train, motions),
      feet: report.feetAnswer(train, motions),
      couplings: report.couplingsAnswer(train, found, motions),
      worstShare: tidy(proof.worstShare),
      expected: report.expectedAnswer(train, found, motions),
      proof: proofAnswer(proof, byOwnRows),
    })
  }
}

const proofAnswer = ({ bound, gap, worstViolation }: Proof, byOwnRows: boolean): ProofAnswer => ({
  bound,
  gap,
  worstViolation,
  checkedBy: `every limit measured again on the moved bodies; ${
    byOwnRows
      ? 'bound added up in exact arithmetic over rows made anew from the train, which believes neither the solver nor its program'
      : 'bound recomputed from the duals of the least-cost program'
  }`,
})
