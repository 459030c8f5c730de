import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { compareRanks, portionOf, type Action } from './action'
import { worstOf } from './limits'
import { added, scaled, type ActionKind } from './moves'
import { stepPathOf, type StepPath } from './path'

/** An action in its turn, with the way it goes. */
export interface OrderedAction {
  readonly action: Action
  readonly path: StepPath
}

/** Most portions a move is cut into. */
export const mostPortions = tol.mostPortions

/**
 * The order to work in: the craft's rules where they keep every limit, else another order, else
 * moves cut into portions that take turns. Only bodies that share limits are looked at together.
 * Where nothing keeps every limit: what passes them least.
 * @param actions in the order of the rules
 * @param bettered an order of one group, or another that is better by what is not looked at here
 */
export function findOrder(
  train: Train,
  actions: readonly Action[],
  bettered: (group: readonly Action[]) => Action[],
): Action[] {
  return merged(groupsOf(train, actions).map((group) => bettered(orderOfGroup(train, group))))
}

/** Actions of bodies that share limits: a skid and its machines, and machines whose shaft ends could meet. */
export function groupsOf(train: Train, actions: readonly Action[]): Action[][] {
  const keys = train.bodies.map(({ skid }, b) => skid ?? b)
  const along = new Set(actions.flatMap(({ kind, body }) => (kind === 'axial' ? keys[body] : [])))
  for (const { axial, left, right } of train.couplings) {
    const [from, to] = [keys[right] ?? right, keys[left] ?? left]
    if (axial && along.has(from) && along.has(to)) {
      keys.forEach((key, b) => {
        if (key === from) keys[b] = to
      })
    }
  }
  const groups = new Map<number, Action[]>()
  for (const action of actions) {
    const key = keys[action.body] ?? action.body
    groups.set(key, [...(groups.get(key) ?? []), action])
  }
  return [...groups.values()]
}

/** Simulates actions one after the other, each where all bodies then stand. */
export function walk(train: Train, actions: readonly Action[]): OrderedAction[] {
  const motions: Motion[] = train.bodies.map(() => noMotion)
  return actions.map((action) => {
    const path = stepPathOf(train, motions, action)
    motions[action.body] = endOf(motions, action)
    return { action, path }
  })
}

/** Own motion of the body once an action is done. */
export const endOf = (motions: readonly Motion[], { body, whole, from, to }: Action): Motion =>
  added(motions[body] ?? noMotion, scaled(whole, to - from))

const worstPassed = (placed: readonly OrderedAction[]): number =>
  Math.max(0, ...placed.map(({ path }) => worstOf(path.passed)))

function orderOfGroup(train: Train, group: readonly Action[]): Action[] {
  if (worstPassed(walk(train, group)) === 0) return [...group]
  const other = anotherOrder(train, group)
  if (other) return other
  let best: { actions: Action[]; worst: number } | undefined
  for (const actions of portioned(group)) {
    const worst = worstPassed(walk(train, actions))
    if (worst === 0) return actions
    if (!best || worst < best.worst * 0.95) best = { actions, worst }
  }
  return best ? best.actions : [...group]
}

/** Depth first in the order of the rules; where all stand depends only on which actions are done. */
function anotherOrder(train: Train, group: readonly Action[]): Action[] | undefined {
  const dead = new Set<string>()
  let looks = 0
  const motions: Motion[] = train.bodies.map(() => noMotion)
  const go = (left: readonly Action[]): Action[] | undefined => {
    if (left.length === 0) return []
    const key = left.map(({ id }) => id).join('\n')
    if (dead.has(key)) return undefined
    for (const action of left) {
      if (++looks > tol.mostLooks) return undefined
      if (stepPathOf(train, motions, action).passed.length > 0) continue
      const before = motions[action.body] ?? noMotion
      motions[action.body] = endOf(motions, action)
      const rest = go(left.filter((other) => other !== action))
      motions[action.body] = before
      if (rest) return [action, ...rest]
    }
    dead.add(key)
    return undefined
  }
  return go(group)
}

const cut: readonly (readonly ActionKind[])[] = [
  ['lateral'],
  ['vertical'],
  ['axial', 'lateral'],
  ['vertical', 'lateral'],
  ['axial', 'vertical', 'lateral'],
]

/** Moves of some kinds cut into portions that take turns, few portions first; the rest before them or after. */
function* portioned(group: readonly Action[]): Generator<Action[]> {
  yield [...group]
  for (let count = 2; count <= mostPortions; count++)
    for (const { order } of portionedBy(group, count)) yield order
}

/** The same by one number of portions, with the moves that take turns. */
export function* portionedBy(
  group: readonly Action[],
  count: number,
): Generator<{ order: Action[]; turn: Action[] }> {
  for (const kinds of cut) {
    const some = group.filter(({ kind }) => kinds.includes(kind))
    if (some.length < 2) continue
    const rest = group.filter((action) => !some.includes(action))
    for (const turn of [some, [...some].reverse()]) {
      const portions = Array.from({ length: count }, (_, index) =>
        turn.map((action) => portionOf(action, index, count)),
      ).flat()
      yield { order: [...rest, ...portions], turn }
      if (rest.length > 0) yield { order: [...portions, ...rest], turn }
    }
  }
}

/** Orders of separate groups made one, each kept, by the rules wherever they do not tie. */
function merged(orders: readonly (readonly Action[])[]): Action[] {
  const heads = orders.map(() => 0)
  const out: Action[] = []
  for (;;) {
    let group = -1
    let next: Action | undefined
    for (let g = 0; g < orders.length; g++) {
      const head = orders[g]?.[heads[g] ?? 0]
      if (head && (!next || compareRanks(head.rank, next.rank) < 0)) {
        group = g
        next = head
      }
    }
    if (!next) return out
    heads[group] = (heads[group] ?? 0) + 1
    out.push(next)
  }
}
