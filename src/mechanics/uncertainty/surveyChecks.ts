import { loopCheck, type LoopCheck } from '../surveys/loopCheck'
import { togetherCheck, togetherRisk, type TogetherCheck } from '../surveys/together'
import type { Train } from '../train'
import { readLines } from './foundLines'
import type { ReadLines } from './withSurveys'

/** The check of one survey, by its index in `surveys`. */
export interface SurveyCheck extends LoopCheck {
  readonly survey: number
}

/** The checks of all surveys that are used, joined or not, against the couplings as their readings alone give them. */
export interface SurveyChecks {
  readonly single: readonly SurveyCheck[]
  /** All of them at once; left out where fewer than two are used. */
  readonly together?: TogetherCheck
}

/** Chance at most that a sound train is said to have a survey that contradicts, however many there are. */
const risk = 0.05

/** Every survey by itself, which shares half of the risk where there are more, and all together. */
export function surveyChecks(train: Train): SurveyChecks {
  const read = readLines(train)
  const before = memory.get(read)
  if (before) return before
  const lines = read.lines.map(({ line }) => line)
  const used = train.surveys.flatMap((survey, i) => (survey.used ? [i] : []))
  const more = used.length > 1
  const each = more ? (risk - togetherRisk) / used.length : risk
  const checks = {
    single: used.map((survey) => ({
      survey,
      ...loopCheck(train, survey, lines, read.errors, each),
    })),
    ...(more && { together: togetherCheck(train, used, lines, read.errors) }),
  }
  memory.set(read, checks)
  return checks
}

/** Lines as read are worked out once for couplings and surveys that stay. */
const memory = new WeakMap<ReadLines, SurveyChecks>()
