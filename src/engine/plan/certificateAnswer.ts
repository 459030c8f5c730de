import type { Train } from '../../mechanics/train'
import type { Certified, Weighted } from '../proof/certificate'
import type { CheckName } from '../proof/exactRows'
import type { LimitFact } from '../proof/facts'
import type { FootLimit } from '../../mechanics/footLimits'
import { tol } from '../../mechanics/tolerances'

/** What shows that a train is impossible, judged by code that believes neither the solver nor the builder of the program. */
export interface CertificateAnswer {
  /** Whether what it proves is over the share asked for. */
  accepted: boolean
  /** No allowed move has a smaller worst share: rounded down, the only number that is; null where it proves nothing. */
  least: number | null
  /** Every limit it leans on with its weight: share of tolerance per um of its row. */
  limits: CertifiedLimit[]
  checkedBy: string
  /** Why it was not accepted; left out where it was. */
  why?: string
}

/** A limit by the ids of what it belongs to. */
type CertifiedLimit = { weight: number } & (
  | {
      limit: 'tolerance'
      coupling: string
      state: string
      what: CheckName
      /** Direction, from y toward z; of a gap [1, 0] is too wide. */
      toward: readonly [number, number]
    }
  | {
      limit: FootLimit
      body: string
      foot: string
      /** Of a hole: direction from x toward y. */
      toward?: readonly [number, number]
      side?: 'low' | 'high'
    }
  | {
      limit: 'restraint'
      body: string
      restraint: string
      way: 'axial' | 'side' | 'rise'
      side: 'low' | 'high'
    }
  | { limit: 'tilt'; body: string; side: 'low' | 'high' }
)

/** A certificate as it is told, by ids. */
export function certificateAnswer(
  train: Train,
  limits: readonly Weighted[],
  proven: Certified,
): CertificateAnswer {
  const over = proven.accepted && proven.least > train.plan.share + tol.overFloor / 2
  const why = proven.accepted ? 'what it proves is not over the share asked for' : proven.why
  return {
    accepted: over,
    least: proven.accepted ? proven.least : null,
    limits: limits.map(({ fact, weight }) => told(train, fact, weight)),
    checkedBy:
      'rows made anew from the train, added up in exact arithmetic; neither the solver nor its program is believed',
    ...(!over && { why }),
  }
}

function told(train: Train, fact: LimitFact, weight: number): CertifiedLimit {
  const body = 'body' in fact ? train.bodies[fact.body] : undefined
  const id = body?.id ?? ''
  const side = 'side' in fact && fact.side === -1 ? 'low' : 'high'
  switch (fact.is) {
    case 'tolerance': {
      const { what, toward } = fact
      const coupling = train.couplings[fact.coupling]?.id ?? ''
      const state = train.states[fact.state]?.id ?? ''
      return { limit: 'tolerance', coupling, state, what, toward, weight }
    }
    case 'foot':
      return { limit: fact.limit, body: id, foot: body?.feet[fact.foot]?.id ?? '', side, weight }
    case 'hole': {
      const { toward } = fact
      return { limit: 'hole', body: id, foot: body?.feet[fact.foot]?.id ?? '', toward, weight }
    }
    case 'restraint': {
      const restraint = body?.restraints[fact.restraint]?.id ?? ''
      return { limit: 'restraint', body: id, restraint, way: fact.way, side, weight }
    }
    case 'tilt':
      return { limit: 'tilt', body: id, side, weight }
    case 'least':
      throw new RangeError('no impossible train is asked to keep teeth off dead straight')
  }
}
