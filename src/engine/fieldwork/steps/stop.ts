import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Train } from '../../../mechanics/train'
import { portionOf, type Action } from './action'
import { limitsPassed, touchedBy } from './limits'
import { added, scaled } from './moves'
import { stepPathOf } from './path'
import { endOf, portionedBy } from './search'

/** Where to stop a step that passes a limit, so that none is passed. */
export interface Stop {
  /** Part of the step (0 to 1, in hundredths) to make before others; 0: the others first. */
  readonly part: number
  /** Ids of the steps to make before the rest of it. */
  readonly then: readonly string[]
  /** Where moves have to take turns: how many portions each is cut into. */
  readonly pieces?: number
}

/**
 * The greatest part of an action, in hundredths, that keeps every limit from where all bodies stand;
 * undefined where one is passed there already. Limits are convex, so what keeps them is one stretch
 * from the start.
 */
function partWithin(train: Train, motions: readonly Motion[], action: Action): number | undefined {
  const bodies = touchedBy(train, action.body)
  const start = motions[action.body] ?? noMotion
  const keeps = (hundredths: number) => {
    const there = [...motions]
    there[action.body] = added(
      start,
      scaled(action.whole, ((action.to - action.from) * hundredths) / 100),
    )
    return limitsPassed(train, there, bodies).length === 0
  }
  if (!keeps(0)) return undefined
  let [low, high] = [0, 100]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (keeps(middle)) low = middle
    else high = middle
  }
  return (keeps(high) ? high : low) / 100
}

/**
 * A stop in one step of an order: part of it, some of the steps after it, then the rest, tried out as a
 * whole. Undefined where no such stop keeps every limit until the step is done.
 */
export function stopIn(
  train: Train,
  actions: readonly Action[],
  at: number,
): Stop | 'passed before' | undefined {
  const action = actions[at]
  if (!action) return undefined
  const motions: Motion[] = train.bodies.map(() => noMotion)
  for (const before of actions.slice(0, at)) motions[before.body] = endOf(motions, before)
  const part = partWithin(train, motions, action)
  if (part === undefined) return 'passed before'
  const cut = action.from + (action.to - action.from) * part
  const first = part > 0 ? [{ ...action, to: cut }] : []
  const rest = { ...action, from: cut }
  for (let last = at + 1; last < actions.length; last++) {
    const between = actions.slice(at + 1, last + 1)
    // portions of one move keep their order
    if (between.some(({ body, kind }) => body === action.body && kind === action.kind)) break
    if (keepsAll(train, motions, [...first, ...between, rest]))
      return { part, then: between.map(({ id }) => id) }
  }
  return undefined
}

/** Whether actions made one after the other pass nothing, from where all bodies stand. */
function keepsAll(train: Train, from: readonly Motion[], actions: readonly Action[]): boolean {
  const motions = [...from]
  return actions.every((action) => {
    if (stepPathOf(train, motions, action).passed.length > 0) return false
    motions[action.body] = endOf(motions, action)
    return true
  })
}

/** More portions than an order is searched with; beyond them nobody stops so often. */
const manyPortions = [12, 16, 24, 32, 48, 64, 96]

/** How many portions would have to take turns where the search for an order has ended with fewer. */
export function portionTurns(
  train: Train,
  group: readonly Action[],
): { readonly pieces: number; readonly moves: readonly Action[] } | undefined {
  const still = train.bodies.map(() => noMotion)
  for (const pieces of manyPortions)
    for (const { order, turn } of portionedBy(group, pieces))
      if (keepsAll(train, still, order)) return { pieces, moves: turn }
  return undefined
}

/** The whole moves that portions were cut from, in their order. */
export const wholeMoves = (actions: readonly Action[]): Action[] =>
  actions.flatMap((action, i) => {
    const same = (other: Action) => other.body === action.body && other.kind === action.kind
    if (actions.findIndex(same) !== i) return []
    const id = action.to - action.from < 1 ? action.id.replace(/:\d+$/, '') : action.id
    return [portionOf({ ...action, id, from: 0, to: 1 }, 0, 1)]
  })
