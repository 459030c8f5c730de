import type { Micrometres } from '../../mechanics/units'
import type { CheckAnswer } from '../plan/answer'
import type { Chance } from './interval'
import type { ShareBand } from './shareBands'

/** How sure a plan is, if the stated uncertainties are right. Chances are parts of 1. */
export interface SureAnswer {
  draws: number
  seed: number
  /** The plan done blind; missing where there is no plan. */
  all?: Chance
  /** Read again afterwards and trimmed until the readings show the plan. */
  reread?: Chance
  /** Nothing moved. */
  asFound: Chance
  /** Each coupling alone in each state, done blind, with the standard uncertainty of what is checked. */
  couplings: SureCoupling[]
  /** That no bolt of a body that slides ends beyond the edge of its hole; missing where none slides with a hole. */
  bolts?: Chance
  /** Blind, with every uncertainty halved and doubled. */
  half?: number
  double?: number
  /** What would add most, best first; of the plan, not of a choice of held bodies. */
  buys?: BuyAnswer[]
  /** Every usual value that stands for one that was left out; likewise. */
  assumed?: AssumedAnswer[]
  /** Where a chance is asked for: how the plan was chosen. */
  wanted?: WantedAnswer
}

/** How sure the plan is, and how sure it is as rounded; of a train without a plan, as it stands. */
export interface SureStage {
  sure?: {
    plan: SureAnswer
    rounded?: SureAnswer
    /** True where the work allowed for closer plans ran out: a better one may not be told. */
    closerOpen?: true
  }
}

export interface SureCoupling {
  coupling: string
  state: string
  chance: number
  /** Share of tolerance used in 19 of 20 draws, from and to; of the plan, not of a choice of held bodies. */
  band?: ShareBand
  /** mrad, um of an offset, mm of a gap. */
  u: { what: CheckAnswer['what']; y?: number; z?: number; x?: number }[]
}

/** Something that would add to the chance: the chance done blind if it were exact, or half as unsure. */
export interface BuyAnswer {
  what: BuyKind
  /** Id of the coupling, the machine or the survey; empty for the whole train. */
  where: string
  exact: number
  halved?: number
  /** What it costs more in moves: of a closer plan. */
  cost?: Micrometres
}

type BuyKind =
  'readings' | 'brackets' | 'growth' | 'survey' | 'work' | 'places of feet' | 'a closer plan'

/** A usual value in place of one that the file leaves out, by the place where it would be entered. */
export type AssumedAnswer = {
  where: string
  /** "sag of a bracket". */
  kind: string
  /** Name of the coupling or the machine; empty for the whole train. */
  of: string
  /** "set 2". */
  detail?: string
} & (
  | {
      /** um, mm or mrad. */
      value: number
      quantity: 'fine' | 'length' | 'slope'
    }
  | {
      /** In words, where it is no number. */
      value: string
      quantity?: undefined
    }
)

/** A chance that was asked for, and the share of tolerance at which the plan reaches it, or comes nearest. */
export interface WantedAnswer {
  chance: number
  reached: boolean
  share: number
  /** The share that the train asks for; the plan may keep more room than that. */
  asked: number
  /** Where no other share was looked at to the end: that would have taken more work than is allowed. */
  looked?: false
}

/** The same of one choice of held bodies, with the chance that its plan has. */
export interface WantedOfHold extends WantedAnswer {
  all: number
}
