import { shown, type Refusal } from './refusal'
import type { SurveyDocument, TrainDocument } from './schema'

/** What a well-shaped survey may still get wrong: machines, places along them, points that say nothing. */
export const surveyRefusals = (document: TrainDocument): Refusal[] =>
  (document.surveys ?? []).flatMap((survey, i) => {
    const points = survey.points.flatMap((point, p) =>
      ofPoint(point, `surveys[${i}].points[${p}]`, document, survey.use ?? true),
    )
    // what its points say together is no question while one of them is wrong
    return points.length > 0 || survey.use === false ? points : ofPoints(survey, i)
  })

type Point = SurveyDocument['points'][number]

function ofPoint(point: Point, at: string, document: TrainDocument, used: boolean): Refusal[] {
  if (!document.machines.some(({ id }) => id === point.machine))
    return [
      {
        at: `${at}.machine`,
        why: `${shown(point.machine)} is no machine of this train: give a machine's id`,
      },
    ]
  // one that counts for nothing may be under way
  if (!used) return []
  if (point.z === undefined && point.y === undefined)
    return [{ at, why: 'the point has no height z and no sideways place y: give one of them' }]
  return ofPlace(point, at, document)
}

/** A shaft ends at its coupling: beyond the plane on the other side lies another machine. */
function ofPlace({ machine, x }: Point, at: string, document: TrainDocument): Refusal[] {
  const nameOf = (id: string) => document.machines.find((one) => one.id === id)?.name ?? id
  return document.couplings.flatMap(({ left, right }): Refusal[] => {
    const beyond =
      (left.machine === machine && x > right.plane) || (right.machine === machine && x < left.plane)
    if (!beyond) return []
    const [limit, other, way] =
      left.machine === machine
        ? [right.plane, right.machine, 'or less']
        : [left.plane, left.machine, 'or more']
    return [
      {
        at: `${at}.x`,
        why: `${x} lies beyond the coupling to ${shown(nameOf(other))}: a point of ${shown(nameOf(machine))} lies at ${limit} ${way}`,
      },
    ]
  })
}

const ways = [
  { key: 'z', word: 'heights' },
  { key: 'y', word: 'sideways places' },
] as const

/**
 * A straight line of the survey's own takes two places away, and along one machine everything is straight: three places
 * on two machines are the least that says how the train bends.
 */
function ofPoints({ points }: SurveyDocument, i: number): Refusal[] {
  return ways.flatMap(({ key, word }): Refusal[] => {
    const given = points.filter((point) => point[key] !== undefined)
    if (given.length === 0) return []
    const places = new Set(given.map(({ machine, x }) => `${x} ${machine}`)).size
    const machines = new Set(given.map(({ machine }) => machine)).size
    if (places >= 3 && machines >= 2) return []
    const has = `${word} at ${counted(places, 'place')} of ${counted(machines, 'machine')}`
    return [
      {
        at: `surveys[${i}].points`,
        why: `${has} say nothing of how the train bends, since the survey has a straight line of its own: give at least 3 places on 2 machines, or no ${word}`,
      },
    ]
  })
}

const counted = (count: number, thing: string): string =>
  `${count} ${thing}${count === 1 ? '' : 's'}`
