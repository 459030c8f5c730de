import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import { type Action } from './action'
import { added, scaled } from './moves'
import { limitsPassed, touchedBy, type LimitPassed } from './limits'

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
 * The way of an action that keeps every limit: as few stops as the stage allows, the end that has
 * farther to go first; more stops, or both ends at once, where an end ahead of the other would pass
 * a limit. Where nothing keeps them all: both ends at once, with what is passed.
 * @param motions where all bodies stand before the action
 */
export function stepPathOf(train: Train, motions: readonly Motion[], action: Action): StepPath {
  const body = train.bodies[action.body]
  if (!body) throw new RangeError(`no body ${action.body}`)
  const least = leastStops(train, body, action)
  const passedBy = (poses: readonly Motion[]) => passedOn(train, motions, action.body, poses)
  const straight = posesOf(body, motions, action, least, 'together')
  const end = straight.slice(-1)
  // The ends do not matter to an action whose own end passes a limit.
  const passedAtEnd = passedBy(end)
  if (passedAtEnd.length === 0 && action.kind !== 'axial' && body.rows.length > 1)
    for (let stops = least; stops <= Math.max(least, tol.mostStops); stops++)
      for (const first of endsInTurn(body, action)) {
        const poses = posesOf(body, motions, action, stops, first)
        if (passedBy(poses).length === 0) return { stops, first, poses, passed: [] }
      }
  return { stops: least, first: 'together', poses: straight, passed: passedBy(straight) }
}

/** So many that no end is lifted or lowered by more than a stage ahead of the other. */
function leastStops(train: Train, body: Body, action: Action): number {
  if (action.kind !== 'vertical') return 1
  const part = action.to - action.from
  const most = Math.max(
    0,
    ...body.feet.map((foot) => Math.abs(footMove(body, action.whole, foot).shim) * part),
  )
  return Math.max(1, Math.ceil(most / train.plan.stage - tol.dust))
}

/** The end with farther to go first; the left one of two alike. */
function endsInTurn(body: Body, action: Action): ('left' | 'right')[] {
  const [left, right] = endsOf(body).map((x) => Math.abs(endMove(body, action, x)))
  return (right ?? 0) > (left ?? 0) + tol.dust ? ['right', 'left'] : ['left', 'right']
}

const endsOf = (body: Body): [left: number, right: number] => [
  body.rows[0]?.x ?? body.x0,
  body.rows.at(-1)?.x ?? body.x0,
]

/** What an end has to go in the middle of its row, without roll (um). */
function endMove(body: Body, action: Action, x: number): Micrometres {
  const { shim, side } = footMove(body, action.whole, { x, y: 0 })
  return action.kind === 'vertical' ? shim : side
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
    return [added(before, oneEnd(body, action, part(1 / stops), first)), after]
  }).flat()
}

/** The piece of a move that takes one end there while the other stays. */
function oneEnd(body: Body, action: Action, piece: Motion, end: 'left' | 'right'): Motion {
  const [left, right] = endsOf(body)
  const x = end === 'left' ? left : right
  const far = end === 'left' ? right : left
  const { shim, side } = footMove(body, piece, { x, y: 0 })
  const middle = (body.x0 - far) / (x - far)
  return action.kind === 'vertical'
    ? { ...noMotion, tz: shim * middle, sz: shim / (x - far), roll: piece.roll }
    : { ...noMotion, ty: side * middle, sy: side / (x - far) }
}

/** What is passed at any of the poses, the worst of each limit. */
function passedOn(
  train: Train,
  motions: readonly Motion[],
  b: number,
  poses: readonly Motion[],
): LimitPassed[] {
  const bodies = touchedBy(train, b)
  const worst = new Map<string, LimitPassed>()
  const there = [...motions]
  for (const pose of poses) {
    there[b] = pose
    for (const passed of limitsPassed(train, there, bodies)) {
      const key = [
        passed.limit,
        passed.body,
        passed.foot,
        passed.restraint,
        passed.way,
        passed.coupling,
      ].join('\n')
      if (passed.by > (worst.get(key)?.by ?? 0)) worst.set(key, passed)
    }
  }
  return [...worst.values()]
}
