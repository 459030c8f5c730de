import {
  farthestRow,
  surveyExplained,
  surveyJoined,
  surveyVerdict,
} from '../../language/surveyWords'
import { capital } from '../../language/names'
import type { OneEntry, SurveyedRow } from '../../mechanics/surveys/loopCheck'
import type { Train } from '../../mechanics/train'
import { surveyChecks, type SurveyCheck } from '../../mechanics/uncertainty/surveyChecks'
import type { Finding, SurveyAnswer, SurveyEntryAnswer, SurveyPointAnswer } from './answer'

/** What the surveys say beside the readings of the couplings; undefined where none is used. */
export function surveysAnswer(train: Train): { surveys?: SurveyAnswer[] } {
  const checks = surveyChecks(train)
  return checks.length === 0 ? {} : { surveys: checks.map((check) => surveyAnswer(train, check)) }
}

function surveyAnswer(train: Train, check: SurveyCheck): SurveyAnswer {
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
    explains: explains.map((entry) => entryAnswer(train, check, entry)),
    sentence: sentencesOf(train, check),
  }
}

/** Verdict, explanation and what the plan stands on, as sentences. */
const sentencesOf = (train: Train, check: SurveyCheck): string =>
  [surveyVerdict(train, check), surveyExplained(train, check), surveyJoined(train, check)]
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

function entryAnswer(train: Train, { survey }: SurveyCheck, entry: OneEntry): SurveyEntryAnswer {
  const { error, left } = entry
  if (entry.kind === 'point') {
    const point = train.surveys[survey]?.points[entry.index]
    const machine = train.machines[point?.machine ?? -1]?.id ?? ''
    return { machine, x: point?.x ?? 0, way: entry.way, off: error, left }
  }
  const coupling = train.couplings[entry.coupling]?.id ?? ''
  const way = entry.number === 'y' || entry.number === 'sy' ? ('y' as const) : ('z' as const)
  const what = entry.number === way ? ('offset' as const) : ('slope' as const)
  return { coupling, what, way, off: -error, left }
}

/** Surveys that contradict the readings; one that agrees is no finding. */
export const surveyFindings = (train: Train): Finding[] =>
  surveyChecks(train)
    .filter(({ agree }) => !agree)
    .map((check) => ({
      where: placeOf(train, check),
      what: `${surveyVerdict(train, check)}; ${surveyExplained(train, check) ?? ''}${train.surveys[check.survey]?.joins === true ? '; it joins the lines all the same' : ''}`,
    }))

/** The entry that is named, or the survey. */
function placeOf(train: Train, { survey, explains }: SurveyCheck): string {
  const place = train.surveys[survey]?.place ?? ''
  const [only, another] = explains
  if (!only || another) return place
  return only.kind === 'point'
    ? `${place}.points[${only.index}]`
    : `${train.couplings[only.coupling]?.place ?? ''}.found`
}
