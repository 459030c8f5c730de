import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { largestMove, motionPart, type ActionKind } from './moves'
import { workRank, type Rank } from './rank'

/** One straight move of one body: along the train, up and down, or sideways, or a portion of it. */
export interface Action {
  /** Such as `gear:vertical`, and `gear:vertical:2` for the second of several portions. */
  readonly id: string
  readonly body: number
  readonly kind: ActionKind
  /** The whole move of this kind; a portion goes from `from` to `to` of it (0 to 1). */
  readonly whole: Motion
  readonly from: number
  readonly to: number
  /** Place in the order the craft's rules give, compared number by number. */
  readonly rank: Rank
}

const kinds: readonly ActionKind[] = ['axial', 'vertical', 'lateral']

/**
 * Every move there is to make, in the order of the craft's rules: axial first, then skids, then
 * outward from what stays; vertical before lateral (common practice, no source).
 */
export function actionsOf(train: Train, motions: readonly Motion[]): Action[] {
  const ranks = workRank(train, motions)
  const actions = train.bodies.flatMap((body, b) =>
    kinds.flatMap((kind, k): Action[] => {
      const whole = motionPart(motions[b] ?? noMotion, kind)
      if (largestMove(body, whole) < tol.unseen) return []
      const phase = kind === 'axial' ? 0 : body.kind === 'skid' ? 1 : 2
      const rank = [phase, ranks[b] ?? 0, k]
      return [{ id: `${body.id}:${kind}`, body: b, kind, whole, from: 0, to: 1, rank }]
    }),
  )
  return actions.sort((a, b) => compareRanks(a.rank, b.rank))
}

export function compareRanks(a: Rank, b: Rank): number {
  for (let i = 0; i < a.length; i++) {
    const apart = (a[i] ?? 0) - (b[i] ?? 0)
    if (apart !== 0) return apart
  }
  return 0
}

/** A portion of an action, the `index`th of `count`. */
export function portionOf(action: Action, index: number, count: number): Action {
  if (count === 1) return action
  return {
    ...action,
    id: `${action.id}:${index + 1}`,
    from: index / count,
    to: (index + 1) / count,
  }
}
