import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Action } from './action'
import type { StepFootAnswer } from './answer'
import { endsOf, lifted, type EndPlaces } from './endHeights'
import { jackLimits, passedOnJacks } from './jackLimits'
import { footReach, type LimitPassed } from './limits'
import { changedFeet, clearOf, liftTask } from './liftTask'
import { liftWays, type LiftWay } from './liftWays'
import { added, scaled } from './moves'
import { beyondStage } from './turns'

/** How a body is lifted to change its packs, and let down. */
export interface LiftPath {
  readonly first: LiftWay['first']
  /** From before the step to after it: where the ends are, own motion of the body, feet that have room from here on. */
  readonly poses: readonly LiftPose[]
  /** Limits passed on the way, the worst of each. */
  readonly passed: readonly LimitPassed[]
}

interface LiftPose {
  readonly ends: EndPlaces
  readonly motion: Motion
  readonly clear: readonly string[]
}

/**
 * The way of a step that shims which keeps every limit, with the fewest moves of the jacks; where none keeps them all,
 * the one that passes them least. On the way a foot stands on a jack and not on its pack, so no most pack bounds it.
 * @param motions where all bodies stand before the step
 * @param feet what each foot is told
 * @param slip room over the packs (um)
 */
export function liftPathOf(
  train: Train,
  motions: readonly Motion[],
  action: Action,
  feet: readonly StepFootAnswer[],
  slip: Micrometres = train.plan.slip,
): LiftPath {
  const body = train.bodies[action.body]
  if (!body) throw new RangeError(`no body ${action.body}`)
  const piece = scaled(action.whole, action.to - action.from)
  const task = liftTask(body, piece, feet, { stage: train.plan.stage, slip })
  const limits = jackLimits(train, body, motions, piece)
  const needs = changedFeet(feet).map((foot) => ({
    id: foot.foot,
    need: clearOf(foot, slip),
    height: heightOf(body, foot.foot),
  }))
  let best: { way: LiftWay; places: Place[]; passed: LimitPassed[] } | undefined
  let least = Infinity
  for (const way of wayByWay(liftWays(task))) {
    const places = placesOf(way, needs)
    const ahead = Math.max(
      0,
      ...way.points.map((ends) => beyondStage(ends, task.target, task.stage)),
    )
    const passed = [
      ...passedOnJacks(limits, places.slice(1, -1)),
      ...(ahead > tol.onTheWay ? [{ limit: 'stage' as const, body: action.body, by: ahead }] : []),
    ]
    const worse = severity(body, passed)
    if (worse < least - tol.onTheWay) {
      best = { way, places, passed }
      least = worse
    }
    if (passed.length === 0) break
  }
  if (!best) throw new RangeError(`no way for ${action.id}`)
  const { way, places, passed } = best
  const start = motions[action.body] ?? noMotion
  const poses = places.map(({ ends, rolled, clear }, i) => ({
    ends,
    clear,
    motion:
      i === 0
        ? start
        : i === places.length - 1
          ? added(start, piece)
          : lifted(body, start, piece, ends, rolled),
  }))
  return { first: way.first, poses, passed }
}

function* wayByWay(groups: Iterable<LiftWay[]>): Generator<LiftWay> {
  for (const group of groups) yield* group
}

interface Place extends Pick<LiftPose, 'ends' | 'clear'> {
  /** The roll is made once every pack has been changed. */
  readonly rolled: boolean
}

/** The places of a way from where the step begins, each with the feet that first have room there. */
function placesOf(
  { points }: LiftWay,
  needs: readonly {
    readonly id: string
    readonly need: Micrometres
    readonly height: (ends: EndPlaces) => Micrometres
  }[],
): Place[] {
  let waiting = needs
  const places: Place[] = [{ ends: { left: 0, right: 0 }, clear: [], rolled: false }]
  for (const ends of points) {
    const rolled = waiting.length === 0
    const has = waiting.filter(({ need, height }) => height(ends) >= need - tol.onTheWay)
    waiting = waiting.filter((one) => !has.includes(one))
    places.push({ ends, clear: has.map(({ id }) => id), rolled })
  }
  return places
}

/** How high a foot is where the ends are, before the roll is made. */
function heightOf(body: Body, id: string): (ends: EndPlaces) => Micrometres {
  const { left, right } = endsOf(body)
  const x = body.feet.find((foot) => foot.id === id)?.x ?? left
  const part = right > left ? (x - left) / (right - left) : 0
  return (ends) => ends.left + part * (ends.right - ends.left)
}

/** How much a way passes, all limits together, in um at the farthest foot; being ahead counts half of what a limit does. */
const severity = (body: Body, passed: readonly LimitPassed[]): number =>
  passed.reduce(
    (sum, { limit, by }) =>
      sum + (limit === 'tilt' ? by * footReach(body) : limit === 'stage' ? by / 2 : by),
    0,
  )
