import { removed, withList, withValue } from '../place'
import type { SurveyDocument, TrainDocument } from '../schema'
import type { NamedEdit } from './machines'
import { idFrom } from './stateEdits'

type Point = SurveyDocument['points'][number]

/**
 * A survey more: a place at the first and the last foot of every machine, to be filled in; it counts for nothing until it
 * is used, so that the plan stays while somebody types.
 */
export function addSurvey(document: TrainDocument): NamedEdit {
  const surveys = document.surveys ?? []
  const id = idFrom(
    `survey ${surveys.length + 1}`,
    surveys.map((survey) => survey.id),
    'survey',
  )
  const points = document.machines.flatMap(({ id: machine, feet }): Point[] => {
    const xs = feet.map(({ x }) => x).filter((x) => Number.isFinite(x))
    const ends = xs.length === 0 ? [] : [Math.min(...xs), Math.max(...xs)]
    return [...new Set(ends)].map((x) => ({ machine, x }))
  })
  return {
    document: { ...document, surveys: [...surveys, { id, use: false, points }] },
    name: 'added a survey',
  }
}

/** The document without a survey. */
export function removeSurvey(document: TrainDocument, index: number): NamedEdit {
  const left = removed(document.surveys ?? [], index)
  return {
    document: withValue(document, ['surveys'], left.length === 0 ? undefined : left),
    name: `removed survey ${index + 1}`,
  }
}

/** A place more, on the machine of the last one; where it lies is still to be entered. */
export const addPlace = (document: TrainDocument, survey: number): NamedEdit => ({
  document: withList(document, ['surveys', survey, 'points'], (points) => [
    ...points,
    {
      machine: (points.at(-1) as Point | undefined)?.machine ?? document.machines[0]?.id ?? '',
    },
  ]),
  name: `added a place to survey ${survey + 1}`,
})

/** The survey without a place. */
export const removePlace = (document: TrainDocument, survey: number, point: number): NamedEdit => ({
  document: withList(document, ['surveys', survey, 'points'], (points) => removed(points, point)),
  name: `removed place ${point + 1} of survey ${survey + 1}`,
})
