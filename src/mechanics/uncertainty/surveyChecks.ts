import { loopCheck, type LoopCheck } from '../surveys/loopCheck'
import type { Train } from '../train'
import { readLines } from './foundLines'
import type { ReadLines } from './withSurveys'

/** The check of one survey, by its index in `surveys`. */
export interface SurveyCheck extends LoopCheck {
  readonly survey: number
}

/** Every survey that is used, joined or not, against the couplings as their readings alone give them. */
export function surveyChecks(train: Train): readonly SurveyCheck[] {
  const read = readLines(train)
  const before = memory.get(read)
  if (before) return before
  const lines = read.lines.map(({ line }) => line)
  const checks = train.surveys.flatMap(({ used }, survey) =>
    used ? [{ survey, ...loopCheck(train, survey, lines, read.errors) }] : [],
  )
  memory.set(read, checks)
  return checks
}

/** Lines as read are worked out once for couplings and surveys that stay. */
const memory = new WeakMap<ReadLines, readonly SurveyCheck[]>()
