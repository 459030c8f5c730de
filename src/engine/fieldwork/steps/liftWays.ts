import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import { otherEnd, type BodyEnd, type EndPlaces } from './endHeights'
import type { LiftTask } from './liftTask'
import { inTurns, leanBand, lowestBeside } from './turns'

/** A way of a body on its jacks: its ends after every move of them, the last one where the step ends. */
export interface LiftWay {
  readonly first: BodyEnd | 'together'
  readonly points: readonly EndPlaces[]
}

/** Parts of a stage that the ends may be ahead by, where the whole of it would pass a limit. */
const parts = [1, 2, 3, 4, 6, 8]

const still: EndPlaces = { left: 0, right: 0 }

/**
 * Ways to lift a body so that every pack can be changed, better ones first, those that are as good in one group: the
 * ends in turn, less and less ahead of one another; both ends in step; and last, one end as far ahead as it takes.
 */
export function* liftWays(task: LiftTask): Generator<LiftWay[]> {
  const { target, needs, between } = task
  if (needs.left === undefined && needs.right === undefined && between.length === 0) {
    yield [{ first: 'together', points: [target] }]
    return
  }
  if (task.oneRow) {
    yield stepWays(task, 0)
    return
  }
  const aheads = parts.map((part) => task.stage / part)
  for (const ahead of aheads) yield shortestFirst(turnWays(task, ahead))
  for (const ahead of [...aheads, 0]) yield shortestFirst(stepWays(task, ahead))
  yield shortestFirst(turnWays(task, Infinity))
}

const shortestFirst = (ways: readonly LiftWay[]): LiftWay[] =>
  [...ways].sort((a, b) => a.points.length - b.points.length)

/** The ends in turn, none more than so much ahead. */
function turnWays(task: LiftTask, ahead: Micrometres): LiftWay[] {
  const band = leanBand(task.target, ahead)
  return bothOrders(task).flatMap((first): LiftWay[] => {
    const through = (tops: readonly EndPlaces[]): LiftWay[] => {
      const points: EndPlaces[] = []
      let here = still
      for (const next of [...tops, task.target]) {
        const legs = inTurns(here, next, band, first)
        if (!legs) return []
        points.push(...legs)
        here = next
      }
      if (points.length > 2 * tol.mostStops) return []
      return [{ first: firstOf(points), points }]
    }
    return [
      ...through([allClear(task, ahead)]),
      ...(task.oneByOne ? through(eachClear(task, ahead, first)) : []),
    ]
  })
}

/** Both ends at once. */
const stepWays = (task: LiftTask, ahead: Micrometres): LiftWay[] => [
  { first: 'together', points: [allClear(task, ahead), task.target] },
  ...(task.oneByOne
    ? bothOrders(task).map((first): LiftWay => ({
        first: 'together',
        points: [...eachClear(task, ahead, first), task.target],
      }))
    : []),
]

/** The end with farther to go first; the left one of two alike. */
const bothOrders = ({ target: { left, right } }: LiftTask): BodyEnd[] =>
  Math.abs(right) > Math.abs(left) + tol.dust ? ['right', 'left'] : ['left', 'right']

function firstOf(points: readonly EndPlaces[]): LiftWay['first'] {
  const [{ left, right } = still] = points
  return Math.abs(left) > tol.dust ? 'left' : Math.abs(right) > tol.dust ? 'right' : 'together'
}

/** The lowest place at which all packs can be changed at once. */
function allClear({ target, needs, between }: LiftTask, ahead: Micrometres): EndPlaces {
  const [low, high] = leanBand(target, ahead)
  let left = needs.left ?? Math.max(0, target.left)
  let right = needs.right ?? Math.max(0, target.right)
  if (needs.left === undefined) left = Math.max(left, right - high)
  if (needs.right === undefined) right = Math.max(right, left + low)
  const short = Math.max(
    0,
    ...between.map(({ part, need }) => need - (left + part * (right - left))),
  )
  return { left: left + short, right: right + short }
}

/** One end clear with the other as low as it may be, on its old packs or over them; then the other clear, the first on its new ones. */
function eachClear({ target, needs }: LiftTask, ahead: Micrometres, first: BodyEnd): EndPlaces[] {
  const band = leanBand(target, ahead)
  const other = otherEnd(first)
  const [one, two] = [needs[first], needs[other]]
  const place = (end: BodyEnd, height: Micrometres, beside: Micrometres): EndPlaces =>
    end === 'left' ? { left: height, right: beside } : { left: beside, right: height }
  return [
    ...(one === undefined ? [] : [place(first, one, Math.max(0, lowestBeside(first, one, band)))]),
    ...(two === undefined
      ? []
      : [place(other, two, Math.max(target[first], lowestBeside(other, two, band)))]),
  ]
}
