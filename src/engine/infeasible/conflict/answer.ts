import type { Way } from '../../../language/sides'
import type { BindingLimit } from '../../plan/answer'
import type { ToleranceCheck } from './more'

/** What a member of a conflict is, by ids; `toward` is the way in which it presses. */
export type ConflictLimit =
  | { kind: 'held'; body: string }
  | { kind: 'tilt'; body: string; toward: Way }
  | Extract<BindingLimit, { kind: 'foot' | 'restraint' }>
  | {
      kind: 'coupling'
      coupling: string
      state: string
      /** The check that presses most; left out where none is known to. */
      presses?: Pick<Extract<BindingLimit, { kind: 'check' }>, 'what' | 'way'>
    }

/** One member of a set of things that cannot all be had. */
export interface ConflictMember {
  limit: ConflictLimit
  where: string
  /**
   * Least that this member alone would have to give for the rest of this conflict to be kept, as it was
   * entered, a tolerance in every state of the conflict; null for a held body.
   */
  lacks: Lacked | null
  /**
   * Least that this one limit must give for the whole train to have a plan, all else as entered; of a
   * tolerance in all states. Of the same quantity; null where no amount within ten times the limit will.
   */
  alone: Lacked | null
  /** Of a tolerance: every check that must give, together; null for one that need not. */
  checks?: { what: ToleranceCheck; lacks: Lacked | null; alone: Lacked | null }[]
  sentence: string
}

/** An amount of a limit: um, mm, or mrad. */
export interface Lacked {
  amount: number
  quantity: 'fine' | 'length' | 'slope'
}

/** An irreducible conflict: together impossible, possible without any one of its members. */
export interface Conflict {
  members: ConflictMember[]
  /** Smallest worst share of its couplings that any move reaches while all of it is kept. */
  floor: number | null
  sentence: string
}
