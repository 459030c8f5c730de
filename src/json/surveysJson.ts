import type {
  SquaresAnswer,
  SurveyAnswer,
  SurveyEntryAnswer,
  SurveyPointAnswer,
  SurveysTogetherAnswer,
} from '../engine/plan/surveyedAnswer'
import type { DocumentUnits } from '../mechanics/units'
import { inUnits } from './inUnits'
import { written, type MeasuresOf } from './written'

const point: MeasuresOf<SurveyPointAnswer> = {
  x: 'length',
  apart: { by: 'fine', u: 'fine', sigmas: 'plain' },
}

const squares: MeasuresOf<SquaresAnswer> = { chi2: 'plain', dof: 'as it is', limit: 'plain' }

type Told = { surveys?: SurveyAnswer[]; surveysTogether?: SurveysTogetherAnswer }

/** What surveys say one by one and together, in the document's units; nothing where none is used. */
export const surveysJson = (
  { surveys, surveysTogether: all }: Told,
  units: DocumentUnits,
): Told => ({
  ...(surveys && { surveys: eachJson(surveys, units) }),
  ...(all && {
    surveysTogether: {
      ...written<Omit<SurveysTogetherAnswer, 'explains'>>(
        all,
        { ...squares, risk: 'as it is', among: squares },
        units,
      ),
      explains: entriesJson(all.explains, units),
    },
  }),
})

/** What surveys say beside the readings, in the document's units. */
const eachJson = (surveys: readonly SurveyAnswer[], units: DocumentUnits): SurveyAnswer[] =>
  surveys.map((survey) => ({
    ...written<Omit<SurveyAnswer, 'explains'>>(
      survey,
      {
        ...squares,
        ...{ risk: 'as it is', others: squares },
        ...{ where: point, points: point },
      },
      units,
    ),
    explains: entriesJson(survey.explains, units),
  }))

const entriesJson = (
  entries: readonly SurveyEntryAnswer[],
  units: DocumentUnits,
): SurveyEntryAnswer[] =>
  entries.map((entry) => {
    const left = inUnits(entry.left, 'plain', units)
    const off = inUnits(
      entry.off,
      'what' in entry && entry.what === 'slope' ? 'slope' : 'fine',
      units,
    )
    return 'machine' in entry
      ? { ...entry, x: inUnits(entry.x, 'length', units), off, left }
      : { ...entry, off, left }
  })
