import { loopCheck, type LoopCheck } from '../surveys/loopCheck'
import type { Train } from '../train'
import { readLines } from './foundLines'

/** The check of one survey, by its index in `surveys`. */
export interface SurveyCheck extends LoopCheck {
  readonly survey: number
}

/** Every survey that is used, joined or not, against the couplings as their readings alone give them. */
export function surveyChecks(train: Train): SurveyCheck[] {
  const { lines, errors } = readLines(train)
  const read = lines.map(({ line }) => line)
  return train.surveys.flatMap(({ used }, survey) =>
    used ? [{ survey, ...loopCheck(train, survey, read, errors) }] : [],
  )
}
