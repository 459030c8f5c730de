import type { Body, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import type { Action } from './action'
import type { BreakAnswer, PoseAnswer, StepAnswer, StepFootAnswer } from './answer'
import type { BodyEnd, EndPlaces } from './endHeights'
import type { FirstEnd } from './ends'
import { freedFrom } from './freed'
import { liftPathOf, type LiftPath } from './liftPath'
import { limitKey } from './limits'
import { leftOver } from './moves'
import type { StepPath } from './path'
import { liftPoses, slidePoses } from './poseAnswers'
import { bothEndsMove, eachPiece } from './stepFeet'
import { breakAnswer, liftWords, stopWords } from './words'

/** How a body comes from before a step to after it. */
export interface StepWay {
  readonly first: FirstEnd
  /** What each foot is told, with how far it is lifted on the way. */
  readonly feet: StepFootAnswer[]
  readonly poses: PoseAnswer[]
  readonly stops?: NonNullable<StepAnswer['stops']>
  /** How the way is cut up, as one more sentence. */
  readonly words: string
  /** Limits passed by being lifted, beyond those of where the step ends. */
  readonly breaks: BreakAnswer[]
}

/**
 * The way of one step: straight along the train, in pieces sideways, on jacks up and down.
 * @param started where all bodies stand before it
 */
export function stepWay(
  train: Train,
  started: readonly Motion[],
  action: Action,
  path: StepPath,
  feet: StepFootAnswer[],
): StepWay {
  const body = train.bodies[action.body]
  if (!body) throw new RangeError(`no body ${action.body}`)
  const start = started[action.body] ?? noMotion
  if (action.kind === 'vertical') return liftWay(train, body, started, action, path, feet)
  const each = eachPiece(feet, action, path.stops)
  const poses = slidePoses(train, body, action, start, path.poses)
  const { first } = path
  if (action.kind === 'axial') return { first, feet, poses, words: '', breaks: [] }
  return {
    first,
    feet,
    poses,
    stops: { count: path.stops, each, first },
    words: stopWords(train, path, each, bothEndsMove(train, body, action)),
    breaks: [],
  }
}

function liftWay(
  train: Train,
  body: Body,
  started: readonly Motion[],
  action: Action,
  path: StepPath,
  feet: readonly StepFootAnswer[],
): StepWay {
  const lift = liftPathOf(train, started, action, feet)
  const { first, poses, passed } = lift
  // what is passed where the step ends is told with the step, if being lifted passes it by no more
  const more = passed.filter((one) =>
    path.passed.every((known) => limitKey(known) !== limitKey(one) || known.by < one.by),
  )
  const freed =
    more.length > 0
      ? freedFrom(train, started, action, feet, { more, known: path.passed })
      : undefined
  return {
    first,
    feet: withLifts(body, feet, lift),
    poses: liftPoses(train, body, lift, packEnds(body, action, feet)),
    stops: { count: poses.length - 1, each: longest(poses), first },
    words: liftWords(train, lift),
    breaks: freed ? more.map((one) => breakAnswer(train, action.id, one, freed(one))) : [],
  }
}

/** Where the packs of its end rows leave a body (um); undefined where soft feet alone are shimmed, and it stays. */
function packEnds(
  { rows, feet }: Body,
  { whole }: Action,
  told: readonly StepFootAnswer[],
): EndPlaces | undefined {
  const [left, right] = [rows[0], rows.at(-1)].map((row) => {
    const shims = (row?.feet ?? []).map(
      (f) => told.find(({ foot }) => foot === feet[f]?.id)?.shim ?? 0,
    )
    return shims.reduce((sum, shim) => sum + shim, 0) / Math.max(1, shims.length)
  })
  if (left === undefined || right === undefined) return undefined
  return whole.tz === 0 && whole.sz === 0 && whole.roll === 0 ? undefined : { left, right }
}

function withLifts(
  body: Body,
  feet: readonly StepFootAnswer[],
  { poses }: Pick<LiftPath, 'poses'>,
): StepFootAnswer[] {
  const start = poses[0]?.motion ?? noMotion
  return feet.map((answer) => {
    const foot = body.feet.find(({ id }) => id === answer.foot)
    if (!foot) return answer
    const heights = poses.map(({ motion }) => footMove(body, leftOver(motion, start), foot).shim)
    return { ...answer, lift: Math.max(0, ...heights) }
  })
}

/** The most that an end goes between two poses (um). */
function longest(poses: LiftPath['poses']): number {
  const ends: readonly BodyEnd[] = ['left', 'right']
  return Math.max(
    0,
    ...poses.flatMap(({ ends: here }, i) => {
      const before = poses[i - 1]?.ends ?? { left: 0, right: 0 }
      return ends.map((end) => Math.abs(here[end] - before[end]))
    }),
  )
}
