import type { Band } from '../../mechanics/misalignment/bands'
import type { Refusal } from '../../document/refusal'
import type { Way } from '../../language/sides'
import type { FootLimit } from '../../mechanics/footLimits'
import type { CertificateAnswer } from './certificateAnswer'
import type { GrowthQuantity, GrowthSource } from '../../mechanics/train'
import type { ToothPlace } from '../../mechanics/gearCoupling'
import type { StatorAnswer } from './statorAnswer'
import type { AxialAnswer } from './axialAnswer'
import type { CheckResult } from '../../mechanics/misalignment/shares'
import type { TeethAnswer } from './teethAnswer'
import type { Motion } from '../../mechanics/motion'
import type { CheckVerdict } from '../../mechanics/uncertainty/verdict'
import type { SurveyAnswer, SurveysTogetherAnswer } from './surveyedAnswer'
import type { Micrometres, Milliradians, Millimetres } from '../../mechanics/units'

/** What every answer tells of a train as found, whatever its status; engine units, as in every answer: um, mm, mrad. */
export interface StandingAnswer {
  name: string
  /** Share of every tolerance that the plan was allowed to use. */
  share: number
  held: string[]
  asFound: AsFoundAnswer[]
  /** Worst share as found. */
  standingShare: number
  /** The same with what is kept free counted, as in the floor; left out where nothing is. */
  standingKept?: number
  /** How many standard uncertainties are kept free of every limit; left out where none are. */
  guard?: number
  /** The plan holds for every value within the intervals of growth; left out where that is not asked. */
  worst?: true
  /**
   * Smallest worst share that any allowed move reaches, what is kept free counted; null when its program
   * was stopped.
   */
  floor: number | null
  findings: Finding[]
  notEntered: NotEntered[]
  /** Every mesh of every gear coupling; left out where there is none. */
  teeth?: TeethAnswer[]
  /** Gaps between shaft ends, rotors and stretch through the train; left out where no gap was entered. */
  axial?: AxialAnswer
  /** Air gaps of stators on feet of their own; left out where there is none. */
  stators?: StatorAnswer[]
  /** Every survey that is used, beside the readings of the couplings; left out where there is none. */
  surveys?: SurveyAnswer[]
  /** All of them at once; left out where fewer than two are used. */
  surveysTogether?: SurveysTogetherAnswer
}

/** Where every body comes to stand, and what that comes to. */
export interface MovesAnswer {
  cost: Micrometres
  total: Totals
  bodies: BodyAnswer[]
  feet: FootAnswer[]
  couplings: CouplingAnswer[]
  worstShare: number
  expected: ExpectedAnswer[]
}

export interface PlannedAnswer extends StandingAnswer, MovesAnswer {
  status: 'planned'
  floor: number
  proof: ProofAnswer
  /** What each limit that binds is worth, dearest first; left out where prices were not asked for. */
  prices?: BindingAnswer[]
  /** True where the work allowed for the prices ran out: none is told. */
  pricesOpen?: true
}

/** Nothing needs to move: the moves are none. */
export interface InToleranceAnswer extends StandingAnswer, MovesAnswer {
  status: 'in-tolerance'
  proof: ProofAnswer
}

export interface ImpossibleAnswer extends StandingAnswer {
  status: 'impossible'
  floor: number
  /** Left out where only the floor was asked for. */
  certificate?: CertificateAnswer
}

/** A plan was found, did not pass its proof and is not shown. */
export interface UnprovenAnswer extends StandingAnswer {
  status: 'unproven'
  why: string
  proof: ProofAnswer
}

/** A program did not end well. */
export interface StoppedAnswer extends StandingAnswer {
  status: 'stopped'
  why: string
  /** True where the work allowed for the plan ran out: more of it may find one. */
  outOfWork?: true
}

/** What the programs of a train came to. */
export type PlanFigures =
  PlannedAnswer | InToleranceAnswer | ImpossibleAnswer | UnprovenAnswer | StoppedAnswer

export type PlanStatus = PlanFigures['status']

interface Refused {
  refused: Refusal[]
}

export interface Totals {
  shim: Micrometres
  side: Micrometres
  axial: Micrometres
}

export interface BodyAnswer {
  id: string
  held: boolean
  /** Own motion: um and mrad. */
  move: Motion
}

export interface FootAnswer {
  body: string
  foot: string
  shim: Micrometres
  side: Micrometres
  axial: Micrometres
  packAfter?: Micrometres
  boltAt?: { x: Micrometres; y: Micrometres; room: Micrometres }
}

export interface CouplingAnswer {
  coupling: string
  state: string
  share: number
  checks: CheckAnswer[]
  asFound: { share: number; checks: CheckAnswer[] }
}

/** One limit: um for an offset, mm for a gap, mrad for the rest. */
export interface CheckAnswer {
  what: CheckResult['what']
  y?: number
  z?: number
  x?: number
  limit: number
  share: number
  /** What it shows of its full limit with what is kept free of it; left out where nothing is. */
  verdict?: CheckVerdict
  /** What is kept free of that limit along y and z, or along x, in its unit; likewise. */
  kept?: { y?: number; z?: number; x?: number }
}

export interface AsFoundAnswer {
  coupling: string
  /** Mid-span. */
  at: Millimetres
  offset: { y: Micrometres; z: Micrometres }
  slope: { y: Milliradians; z: Milliradians }
  /** Standard uncertainties of the four, from those of the readings and of joined surveys: brackets and places are exact. */
  u: { offset: { y: number; z: number }; slope: { y: number; z: number } }
  /** Of the line above: of the readings alone, or with surveys joined. */
  residual: number
  share: Record<string, number>
}

/** A limit that an answer leans on, by the ids of the part it belongs to. */
export type BindingLimit =
  | {
      kind: 'foot'
      limit: FootLimit
      body: string
      foot: string
      /** Other feet of its row at the same limit, which must give with it; none gives alone. */
      others?: string[]
      /** The way in which the foot is pressed against it; undefined where no tangent of its circle says so. */
      toward: Way | undefined
    }
  | { kind: 'tilt'; body: string }
  | {
      kind: 'restraint'
      body: string
      restraint: string
      way: 'axial' | 'side' | 'rise'
      toward: Way
    }
  | { kind: 'least'; coupling: string; state: string; what: ToothPlace; way: 'y' | 'z' }
  | {
      kind: 'check'
      coupling: string
      state: string
      what: CheckAnswer['what']
      way: 'y' | 'z' | 'x' | 'round'
    }

export interface BindingAnswer {
  limit: BindingLimit
  /** Cost saved (um) per um, mrad or mm of relaxing the limit. */
  price: number
  quantity: 'fine' | 'slope' | 'length'
  /** Relaxation up to which the price holds: um, mrad or mm; null when it holds without end. */
  upTo: number | null
}

/** What a set should show: um, its line in um and mrad. */
export type ExpectedAnswer =
  | {
      coupling: string
      set: number
      readings: [hour: number, value: number][]
      /** From where to where each reading is good, 19 times of 20. */
      good?: Band[]
    }
  | {
      coupling: string
      set: number
      offset: { y: number; z: number }
      slope: { y: number; z: number }
      good?: { offset: { y: Band; z: Band }; slope: { y: Band; z: Band } }
    }

export interface Finding {
  where: string
  what: string
}

export interface NotEntered {
  where: string
  what: string
  instead: string
}

export interface ProofAnswer {
  bound: Micrometres
  gap: Micrometres
  worstViolation: Micrometres
  checkedBy: string
}

/** What `check` answers: nothing is solved. */
export type CheckReport =
  | Refused
  | {
      ok: true
      name: string
      findings: Finding[]
      notEntered: NotEntered[]
      closure: { coupling: string; set: number; value: Micrometres }[]
      growth: GrowthSourceAnswer[]
      asFound: AsFoundAnswer[]
      standingShare: number
      teeth?: TeethAnswer[]
      axial?: AxialAnswer
      stators?: StatorAnswer[]
      surveys?: SurveyAnswer[]
      surveysTogether?: SurveysTogetherAnswer
    }

/** A source of growth that does not count, beside the growth in use. */
export interface GrowthSourceAnswer {
  machine: string
  state: string
  source: GrowthSource
  rows: {
    quantity: GrowthQuantity
    /** Left out where both axes move alike. */
    axis?: 'left' | 'right'
    x: Millimetres
    inUse: Micrometres
    beside: Micrometres
    /** Standard uncertainty of the difference. */
    u: Micrometres
    /** The difference in its uncertainty; null where two differ that are taken as exact. */
    sigmas: number | null
  }[]
  /** Most standard uncertainties that are left to chance. */
  limit: number
  agree: boolean
}
