import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Train } from '../../../mechanics/train'
import type { Action } from './action'
import { liftPathOf } from './liftPath'
import { limitKey, worstOf, type LimitPassed } from './limits'
import { stepPathOf } from './path'
import { endOf } from './search'
import { footAnswers, type FootPack } from './stepFeet'

/** Most moves of bodies that share limits for which every order is looked at. */
const mostMoves = 7

/** With more of them no more than so many single moves are tried out, each where others are done before it. */
const mostTried = 600

/** How much an order passes by lifts, counted first. */
interface Passed {
  readonly count: number
  readonly worst: number
}

type Placed = Passed & { readonly order: Action[] }

/**
 * Whether all orders of some moves were looked at, or those only that come of an order by setting one move after another
 * to another place.
 */
export const looksAtAll = (group: readonly Action[]): boolean => group.length <= mostMoves

/**
 * Another order of whole moves in which fewer limits are passed as bodies are lifted to slip their shims, and none where a
 * step ends; the order given where no other passes less, or where it passes one without any lift.
 * @param group in an order that was found without lifts
 */
export function orderWithLifts(
  train: Train,
  group: readonly Action[],
  packs: readonly FootPack[],
): Action[] {
  const whole = group.every(({ from, to }) => from === 0 && to === 1)
  if (!whole || group.length < 2) return [...group]
  if (!group.some(({ kind }) => kind === 'vertical')) return [...group]
  const search = new LiftSearch(train, packs)
  const given = search.along(group)
  if (!given || given.count === 0) return [...group]
  const best = looksAtAll(group) ? search.best(group) : search.climbed(group, given)
  return best && less(best, given) ? best.order : [...group]
}

const less = (a: Passed, b: Passed): boolean =>
  a.count < b.count || (a.count === b.count && a.worst < b.worst * 0.95)

/** What an action passes depends on which are done before it, not on their order: each is worked out once. */
class LiftSearch {
  private readonly motions: Motion[]
  private readonly known = new Map<string, Passed | undefined>()
  private readonly bests = new Map<string, Placed | undefined>()

  constructor(
    private readonly train: Train,
    private readonly packs: readonly FootPack[],
  ) {
    this.motions = train.bodies.map(() => noMotion)
  }

  /** What an order passes by lifts; undefined where a limit is passed without any. */
  along(order: readonly Action[]): Passed | undefined {
    const [next, ...rest] = order
    if (!next) return { count: 0, worst: 0 }
    return this.with(next, order, () => this.along(rest))
  }

  /** The order of what is left that passes least, the first of those alike in the order given. */
  best(left: readonly Action[]): Placed | undefined {
    if (left.length === 0) return { count: 0, worst: 0, order: [] }
    const key = keyOf(left)
    if (this.bests.has(key)) return this.bests.get(key)
    let least: Placed | undefined
    for (const next of left) {
      let order: Action[] = []
      const passed = this.with(next, left, () => {
        const rest = this.best(left.filter((other) => other !== next))
        order = rest?.order ?? []
        return rest
      })
      if (passed && (!least || less(passed, least))) least = { ...passed, order: [next, ...order] }
    }
    this.bests.set(key, least)
    return least
  }

  /** An order that passes less by setting one move to another place, the best such place first, as long as that helps. */
  climbed(order: readonly Action[], given: Passed): Placed {
    let now: Placed = { ...given, order: [...order] }
    while (now.count > 0) {
      const next = this.bestNeighbour(now)
      if (!next) break
      now = next
    }
    return now
  }

  private bestNeighbour(now: Placed): Placed | undefined {
    let least: Placed | undefined
    for (const [from, action] of now.order.entries()) {
      const rest = now.order.filter((other) => other !== action)
      for (let to = 0; to <= rest.length; to++) {
        if (to === from || this.known.size > mostTried) continue
        const order = [...rest.slice(0, to), action, ...rest.slice(to)]
        const passed = this.along(order)
        if (passed && less(passed, least ?? now)) least = { ...passed, order }
      }
    }
    return least
  }

  /** One action done where all then stand, and what follows it. */
  private with(
    next: Action,
    left: readonly Action[],
    follow: () => Passed | undefined,
  ): Passed | undefined {
    const own = this.passedBy(next, keyOf(left))
    if (!own) return undefined
    const before = this.motions[next.body] ?? noMotion
    this.motions[next.body] = endOf(this.motions, next)
    const rest = follow()
    this.motions[next.body] = before
    return rest && { count: own.count + rest.count, worst: Math.max(own.worst, rest.worst) }
  }

  private passedBy(action: Action, left: string): Passed | undefined {
    const key = `${action.id}\n${left}`
    if (!this.known.has(key)) this.known.set(key, this.workedOut(action))
    return this.known.get(key)
  }

  private workedOut(action: Action): Passed | undefined {
    const path = stepPathOf(this.train, this.motions, action)
    if (path.passed.length > 0) return undefined
    const body = this.train.bodies[action.body]
    if (action.kind !== 'vertical' || !body) return { count: 0, worst: 0 }
    const before = this.motions[action.body] ?? noMotion
    const feet = footAnswers(body, action, before, this.packs)
    const { passed } = liftPathOf(this.train, this.motions, action, feet)
    return { count: kindsOf(passed), worst: worstOf(passed) }
  }
}

const kindsOf = (passed: readonly LimitPassed[]): number => new Set(passed.map(limitKey)).size

const keyOf = (left: readonly Action[]): string =>
  left
    .map(({ id }) => id)
    .sort()
    .join('\n')
