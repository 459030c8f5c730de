import type { Micrometres } from '../../mechanics/units'
import type { StatorAnswer } from '../plan/statorAnswer'
import type { CouplingAnswer, ExpectedAnswer, FootAnswer, BodyAnswer, Totals } from '../plan/answer'

/** What to do to one pack; only feet whose pack changes have one. */
export interface PackAnswer {
  body: string
  foot: string
  /** Thickness that goes in (+) or out (-). */
  change: Micrometres
  /** Where the pack now was entered. */
  packAfter?: Micrometres
  /**
   * What comes out: plates by name, thickest first, where those that lie there are known; else one
   * thickness, the whole pack where it is made anew. Empty where plates only go in.
   */
  out: Micrometres[]
  /**
   * Plates from the stock that go in, thickest first: the whole pack after where it is made anew. Empty where
   * plates are only taken out. All of `use` less all of `out` is the change.
   */
  use: Micrometres[]
}

/** A foot after rounding; `shim` is what goes in or out. */
export interface RoundedFoot extends FootAnswer {
  /** How far the shims leave it off the plane in which its body then lies; bodies on three rows or more. */
  offPlane?: Micrometres
}

/** A move that the plan before rounding wants and that is not told: a foot, a row of feet (1: the left one) or along the train. */
export interface SmallMove {
  body: string
  foot?: string
  row?: number
  move: Micrometres
}

interface RoundingTried {
  worstShare: number
  feet: RoundedFoot[]
  couplings: CouplingAnswer[]
  /** Before rounding. */
  before: { cost: Micrometres; worstShare: number }
}

/** A rounding that is a plan. */
interface RoundedPlan extends RoundingTried {
  /** What goes under which foot, in plates of the stock. */
  packs: PackAnswer[]
  cost: Micrometres
  /** No rounding within that share costs less, whether it tells small moves or leaves them alone. */
  bound: Micrometres
  /** Cost less bound: what leaving small moves alone costs, and what a search that was ended left open. */
  gap: Micrometres
  /**
   * What the cheapest rounding found costs with small moves told, and with all of them left alone (absent:
   * none was found); only where these differ.
   */
  ways?: { told: Micrometres; alone?: Micrometres }
  worstViolation: Micrometres
  total: Totals
  /** Own motion; of a body on three rows or more that of the plane through its shims. */
  bodies: BodyAnswer[]
  expected: ExpectedAnswer[]
  /** Stators with the rotors where the rounding puts them; left out where there is none. */
  stators?: StatorAnswer[]
  /** Largest distance of a foot from the plane of its body. */
  flat: Micrometres
  /** Moves under `plan.leave` of the plan before rounding that are left alone. */
  left: SmallMove[]
  /** Moves under it that stay, because without them no rounding was found, or only a dearer one. */
  small: SmallMove[]
}

interface WithinShare extends RoundedPlan {
  status: 'rounded'
}

interface OverShare extends RoundedPlan {
  status: 'over the share asked for'
  /** Whether it is proven that no rounding keeps that share. */
  proven: boolean
}

/** The nearest rounding of each foot by itself, which is no plan. */
interface NoRounding extends RoundingTried {
  status: 'no rounding'
  /** Why, one line each. */
  why: string[]
}

/** The plan rounded to what the store has. */
export type RoundingFigures = WithinShare | OverShare | NoRounding

export type RoundedAnswer = RoundingFigures & { sentence: string }

/** A rounding that people may work by, over the share asked for or not. */
export type RoundingMade = Extract<RoundedAnswer, RoundedPlan>

/** The rounding that people work by; undefined where there is none. */
export const madeOf = (rounded: RoundedAnswer | undefined): RoundingMade | undefined =>
  rounded && rounded.status !== 'no rounding' ? rounded : undefined
