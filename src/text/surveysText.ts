import type { SurveyAnswer, SurveyPointAnswer } from '../engine/plan/answer'
import { fineText, lengthText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import { apartSaid } from '../language/surveyWords'
import { heading, paragraph, table } from './layout'

/** What surveys say beside the readings of the couplings, with every number of theirs. */
export function surveysText(train: Train, surveys: readonly SurveyAnswer[] = []): string[] {
  if (surveys.length === 0) return []
  return [
    ...heading('SURVEYS', 'beside the couplings as read'),
    ...surveys.flatMap((survey) => [
      ...paragraph(survey.sentence, '  - '),
      ...table(
        [
          { head: 'axis of' },
          { head: 'x', align: 'right' },
          { head: 'than all else says' },
          { head: 'unsure by', align: 'right' },
          { head: 'times that', align: 'right' },
        ],
        survey.points.map((point) => rowOf(train, point)),
      ),
    ]),
  ]
}

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
