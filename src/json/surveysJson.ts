import type { SurveyAnswer, SurveyPointAnswer } from '../engine/plan/answer'
import type { DocumentUnits } from '../mechanics/units'
import { inUnits } from './inUnits'
import { written, type MeasuresOf } from './written'

const point: MeasuresOf<SurveyPointAnswer> = {
  x: 'length',
  apart: { by: 'fine', u: 'fine', sigmas: 'plain' },
}

/** What surveys say beside the readings, in the document's units. */
export const surveysJson = (
  surveys: readonly SurveyAnswer[],
  units: DocumentUnits,
): SurveyAnswer[] =>
  surveys.map((survey) => ({
    ...written<Omit<SurveyAnswer, 'explains'>>(
      survey,
      {
        ...{ chi2: 'plain', dof: 'as it is', limit: 'plain', risk: 'as it is' },
        ...{ where: point, points: point },
      },
      units,
    ),
    explains: survey.explains.map((entry) => {
      const left = inUnits(entry.left, 'plain', units)
      const off = inUnits(
        entry.off,
        'what' in entry && entry.what === 'slope' ? 'slope' : 'fine',
        units,
      )
      return 'machine' in entry
        ? { ...entry, x: inUnits(entry.x, 'length', units), off, left }
        : { ...entry, off, left }
    }),
  }))
