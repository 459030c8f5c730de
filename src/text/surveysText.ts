import type { StandingAnswer } from '../engine/plan/answer'
import type { SurveyAnswer, SurveyPointAnswer } from '../engine/plan/surveyedAnswer'
import { fineText, lengthText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import { apartSaid } from '../language/surveyWords'
import { heading, paragraph, table } from './layout'

/** What surveys say beside the readings of the couplings, with every number of theirs. */
export function surveysText(
  train: Train,
  { surveys = [], surveysTogether }: Pick<StandingAnswer, 'surveys' | 'surveysTogether'>,
): string[] {
  if (surveys.length === 0) return []
  const columns = surveyHeads.map((head, i) =>
    i === 0 || i === 2 ? { head } : { head, align: 'right' as const },
  )
  return [
    ...heading('SURVEYS', 'beside the couplings as read'),
    ...(surveysTogether ? paragraph(surveysTogether.sentence, '  - ') : []),
    ...surveys.flatMap((survey) => [
      ...paragraph(survey.sentence, '  - '),
      ...table(columns, surveyTable(train, survey)),
    ]),
  ]
}

/** What the columns of a survey's numbers are called. */
export const surveyHeads = [
  'axis of',
  'x',
  'than all else says',
  'unsure by',
  'times that',
] as const

/** A row a number of a survey. */
export const surveyTable = (train: Train, { points }: SurveyAnswer): string[][] =>
  points.map((point) => rowOf(train, point))

function rowOf(train: Train, { machine, axis, x, way, apart }: SurveyPointAnswer) {
  const body = train.machines.find(({ id }) => id === machine)
  const which = body?.twoAxes === true && axis ? `, ${axis} shaft` : ''
  return [
    `${body?.name ?? machine}${which}`,
    lengthText(x, train.units),
    apart ? apartSaid(train, way, apart.by) : 'told by nothing else',
    apart ? fineText(apart.u, train.units) : '',
    apart ? Math.abs(apart.sigmas).toFixed(1) : '',
  ]
}
