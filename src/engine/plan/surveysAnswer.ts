import { surveyBesideOthers, surveysJoined, surveysVerdict } from '../../language/surveysWords'
import {
  farthestRow,
  oneEntryWords,
  surveyExplained,
  surveyJoined,
  surveyVerdict,
} from '../../language/surveyWords'
import { capital } from '../../language/names'
import type { SurveyedRow } from '../../mechanics/surveys/loopCheck'
import type { OneEntry } from '../../mechanics/surveys/oneEntry'
import type { SquaresTest, TogetherCheck } from '../../mechanics/surveys/together'
import type { Train } from '../../mechanics/train'
import { surveyChecks, type SurveyCheck } from '../../mechanics/uncertainty/surveyChecks'
import type { Finding } from './answer'
import type {
  SquaresAnswer,
  SurveyAnswer,
  SurveyEntryAnswer,
  SurveyPointAnswer,
  SurveysTogetherAnswer,
} from './surveyedAnswer'

/** What the surveys say beside the readings of the couplings; undefined where none is used. */
export function surveysAnswer(train: Train): {
  surveys?: SurveyAnswer[]
  surveysTogether?: SurveysTogetherAnswer
} {
  const { single, together } = surveyChecks(train)
  if (single.length === 0) return {}
  return {
    surveys: single.map((check) => surveyAnswer(train, check, together?.others.get(check.survey))),
    ...(together && { surveysTogether: togetherAnswer(train, together) }),
  }
}

function togetherAnswer(train: Train, check: TogetherCheck): SurveysTogetherAnswer {
  const { all, among, risk, agree, explains } = check
  return {
    ...squaresAnswer(all),
    ...{ agree, risk },
    ...(among && { among: squaresAnswer(among) }),
    explains: explains.map((entry) => ({
      ...(entry.kind === 'point' && { survey: train.surveys[entry.survey]?.id ?? '' }),
      ...entryAnswer(train, entry),
    })),
    sentence: `${capital(togetherWords(train, check))}.`,
  }
}

/** Verdict, the entry that would explain a contradiction, and what the plan stands on, without the stop. */
const togetherWords = (train: Train, check: TogetherCheck): string =>
  [
    surveysVerdict(train, check),
    oneEntryWords(train, check.explains, 'these surveys'),
    surveysJoined(train, check.agree),
  ]
    .filter((words) => words !== undefined)
    .join('; ')

const squaresAnswer = ({ squares, freedom, limit, agree }: SquaresTest): SquaresAnswer => ({
  ...{ agree, chi2: squares, dof: freedom, limit },
})

function surveyAnswer(
  train: Train,
  check: SurveyCheck,
  others: SquaresTest | undefined,
): SurveyAnswer {
  const { survey, squares, freedom, limit, agree, risk, rows, explains } = check
  const points = rows.map((row) => pointAnswer(train, row))
  const of = train.surveys[survey]
  const far = farthestRow(check)
  return {
    survey: of?.id ?? '',
    name: of?.name ?? '',
    joins: of?.joins === true,
    agree,
    ...{ chi2: squares, dof: freedom, limit, risk },
    ...(far && { where: pointAnswer(train, far) }),
    points,
    explains: explains.map((entry) => entryAnswer(train, entry)),
    ...(others && { others: squaresAnswer(others) }),
    sentence: sentencesOf(train, check, others),
  }
}

/** Verdict, explanation and what the plan stands on, as sentences. */
const sentencesOf = (train: Train, check: SurveyCheck, others: SquaresTest | undefined): string =>
  [
    surveyVerdict(train, check),
    surveyExplained(train, check),
    others && surveyBesideOthers(others),
    surveyJoined(train, check),
  ]
    .flatMap((words) => (words === undefined ? [] : [`${capital(words)}.`]))
    .join(' ')

const pointAnswer = (train: Train, row: SurveyedRow): SurveyPointAnswer => {
  const axis = train.surveys[row.survey]?.points[row.index]?.axis
  return {
    machine: train.machines[row.machine]?.id ?? '',
    x: row.x,
    ...(axis && { axis }),
    way: row.way,
    ...(row.apart && {
      apart: { by: row.apart.by, u: row.apart.u, sigmas: row.apart.by / row.apart.u },
    }),
  }
}

function entryAnswer(train: Train, entry: OneEntry): SurveyEntryAnswer {
  const { error, left } = entry
  if (entry.kind === 'point') {
    const point = train.surveys[entry.survey]?.points[entry.index]
    const machine = train.machines[point?.machine ?? -1]?.id ?? ''
    return { machine, x: point?.x ?? 0, way: entry.way, off: error, left }
  }
  const coupling = train.couplings[entry.coupling]?.id ?? ''
  const way = entry.number === 'y' || entry.number === 'sy' ? ('y' as const) : ('z' as const)
  const what = entry.number === way ? ('offset' as const) : ('slope' as const)
  return { coupling, what, way, off: -error, left }
}

/** Surveys that contradict the readings or one another; those that agree are no finding. */
export function surveyFindings(train: Train): Finding[] {
  const { single, together } = surveyChecks(train)
  const alone = single.filter(({ agree }) => !agree)
  return [
    ...alone.map((check) => ({
      where: placeOf(train, check),
      what: `${surveyVerdict(train, check)}; ${surveyExplained(train, check) ?? ''}${train.surveys[check.survey]?.joins === true ? '; it joins the lines all the same' : ''}`,
    })),
    ...(together && saysMore(together, alone.length)
      ? [{ where: 'surveys', what: togetherWords(train, together) }]
      : []),
  ]
}

/**
 * One survey that contradicts the readings by itself makes all together do so: that is said once. All together say more
 * where they contradict one another, or where one entry explains why several contradict.
 */
const saysMore = ({ agree, among, explains }: TogetherCheck, alone: number): boolean =>
  !agree && (alone === 0 || among?.agree === false || (alone > 1 && explains.length > 0))

/** The entry that is named, or the survey. */
function placeOf(train: Train, { survey, explains }: SurveyCheck): string {
  const place = train.surveys[survey]?.place ?? ''
  const [only, another] = explains
  if (!only || another) return place
  return only.kind === 'point'
    ? `${place}.points[${only.index}]`
    : `${train.couplings[only.coupling]?.place ?? ''}.found`
}
