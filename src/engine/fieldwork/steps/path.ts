import { tol } from '../../../mechanics/tolerances'
import type { Body, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { type Action } from './action'
import { endMoves, endsOf } from './endHeights'
import { added, scaled } from './moves'
import { passedAt, type LimitPassed } from './limits'

/** How an action is carried out: in so many stops, the two ends in turn or at once. */
export interface StepPath {
  readonly stops: number
  /** Which end goes first at every stop. */
  readonly first: 'left' | 'right' | 'together'
  /** Own motion of the body after each piece of the move, the last one where the action ends. */
  readonly poses: readonly Motion[]
  /** Limits passed on the way, the worst of each; empty when all are kept. */
  readonly passed: readonly LimitPassed[]
}

/**
 * The way of an action that keeps every limit: as few stops as it takes, the end that has farther to go first; more
 * stops, or both ends at once, where an end ahead of the other would pass a limit. Where nothing keeps them all: both
 * ends at once, with what is passed. A step that shims is judged by where it ends: how its body is lifted is a matter
 * of its own (`liftPath`).
 * @param motions where all bodies stand before the action
 */
export function stepPathOf(train: Train, motions: readonly Motion[], action: Action): StepPath {
  const body = train.bodies[action.body]
  if (!body) throw new RangeError(`no body ${action.body}`)
  const passedBy = (poses: readonly Motion[]) => passedAt(train, motions, action.body, poses)
  const straight = posesOf(body, motions, action, 1, 'together')
  const passed = passedBy(straight)
  // The ends do not matter to an action whose own end passes a limit.
  if (passed.length === 0 && action.kind === 'lateral' && body.rows.length > 1)
    for (let stops = 1; stops <= tol.mostStops; stops++)
      for (const first of endsInTurn(body, action)) {
        const poses = posesOf(body, motions, action, stops, first)
        if (passedBy(poses).length === 0) return { stops, first, poses, passed: [] }
      }
  return { stops: 1, first: 'together', poses: straight, passed }
}

/** The end with farther to go first; the left one of two alike. */
function endsInTurn(body: Body, action: Action): ('left' | 'right')[] {
  const { left, right } = endMoves(body, action.whole, 'side')
  return Math.abs(right) > Math.abs(left) + tol.dust ? ['right', 'left'] : ['left', 'right']
}

/** Poses of the body at every piece of the move; with an end first, two pieces a stop. */
function posesOf(
  body: Body,
  motions: readonly Motion[],
  action: Action,
  stops: number,
  first: StepPath['first'],
): Motion[] {
  const start = motions[action.body] ?? noMotion
  const part = (share: number) => scaled(action.whole, share * (action.to - action.from))
  return Array.from({ length: stops }, (_, k) => {
    const [before, after] = [added(start, part(k / stops)), added(start, part((k + 1) / stops))]
    if (first === 'together') return [after]
    return [added(before, oneEnd(body, part(1 / stops), first)), after]
  }).flat()
}

/** The piece of a slide that takes one end there while the other stays. */
function oneEnd(body: Body, piece: Motion, end: 'left' | 'right'): Motion {
  const at = endsOf(body)
  const [x, far] = end === 'left' ? [at.left, at.right] : [at.right, at.left]
  const side = endMoves(body, piece, 'side')[end]
  return { ...noMotion, ty: (side * (body.x0 - far)) / (x - far), sy: side / (x - far) }
}
