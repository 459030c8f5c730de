import type { Action } from './action'

/**
 * Puts actions in the order somebody chose, by id; what is not named follows in the order it had.
 * Portions of one move are taken in their own order wherever they are named.
 */
export function chosenOrder(
  actions: readonly Action[],
  order: readonly string[],
): { actions: Action[]; unknown: string[] } {
  const byId = new Map(actions.map((action) => [action.id, action]))
  const named = [...new Set(order)].flatMap((id) => byId.get(id) ?? [])
  const all = [...named, ...actions.filter((action) => !named.includes(action))]
  const portions = new Map<string, Action[]>()
  for (const action of actions)
    portions.set(moveOf(action), [...(portions.get(moveOf(action)) ?? []), action])
  return {
    actions: all.flatMap((action) => portions.get(moveOf(action))?.shift() ?? []),
    unknown: order.filter((id) => !byId.has(id) && !id.endsWith(':read') && !id.endsWith(':soft')),
  }
}

const moveOf = ({ body, kind }: Action): string => `${body} ${kind}`
