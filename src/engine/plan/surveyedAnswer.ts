import type { Micrometres, Millimetres } from '../../mechanics/units'

/** A survey beside the couplings as their readings alone give them. */
export interface SurveyAnswer {
  survey: string
  name: string
  /** Whether the lines that the plan stands on are fitted to it. */
  joins: boolean
  agree: boolean
  /** Sum of squares in standard uncertainties, its degrees of freedom, and what it may come to. */
  chi2: number
  dof: number
  limit: number
  /** Chance at most that a sound survey is said to disagree. */
  risk: number
  /** The number that lies farthest off in its own uncertainty. */
  where?: SurveyPointAnswer
  points: SurveyPointAnswer[]
  /** Single entries that would explain a disagreement, best first, as far as they cannot be told apart. */
  explains: SurveyEntryAnswer[]
  /** It against the readings and all other surveys; left out where there is none. */
  others?: SquaresAnswer
  sentence: string
}

/** All surveys and the readings at once. */
export interface SurveysTogetherAnswer extends SquaresAnswer {
  /** Chance at most that sound surveys are said to disagree by this, `among` or any `others`; `agree` is of all of these. */
  risk: number
  /** The surveys among themselves, whatever was read; left out where they have nothing in common. */
  among?: SquaresAnswer
  /** Single entries, of whatever survey or coupling, that would explain all of a contradiction, as above. */
  explains: SurveyEntryAnswer[]
  sentence: string
}

/** Sum of squares in standard uncertainties, its degrees of freedom, and what it may come to. */
export interface SquaresAnswer {
  agree: boolean
  chi2: number
  dof: number
  limit: number
}

/**
 * One number of a survey less what the couplings and its other places say of it (um), with how unsure that is, and how
 * many times that; left out where nothing else tells it.
 */
export interface SurveyPointAnswer {
  machine: string
  x: Millimetres
  axis?: 'left' | 'right'
  way: 'z' | 'y'
  apart?: { by: Micrometres; u: Micrometres; sigmas: number }
}

/** An entry by how much it would be too large (um; mrad of a slope), and the sum of squares that is left without it. */
export type SurveyEntryAnswer = { way: 'z' | 'y'; off: number; left: number } & (
  | { survey?: string; machine: string; x: Millimetres }
  | { coupling: string; what: 'offset' | 'slope' }
)
