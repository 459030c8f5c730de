import { tidy } from '../../../language/tidy'
import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { keptRooms } from '../../../mechanics/uncertainty/kept'
import type { Solver } from '../../lp/solver'
import { isRoom, type ElasticLimit } from '../elastic/limit'
import { subproblemOf } from '../elastic/subproblem'
import type { DualWeight } from '../elastic/dualWeights'
import { floorOf } from '../elastic/shareFeasibility'
import { leavesNothing, mostKept } from '../floor/keptAlone'
import { allLimits, elasticModelOf } from '../elastic/elasticModel'
import type { Conflict } from './answer'
import { irreducibles, type Irreducible } from './irreducible'
import { pressedWay, towardOf } from './limitWords'
import { memberAnswer } from './memberAnswer'
import { missingAt, reachWithout } from './missing'
import { conflictSentence, lackGroups, type GroupedLack } from './sentence'
import { FeasibilityCache } from './shrink'
import { atLeastEntered, togetherOf } from './together'

/** Conflicts told: the first, and what would be in the way next if that one were resolved. */
const mostConflicts = 3

/** A train that cannot be planned, with the irreducible sets found in it, the smallest first. */
export interface Contradiction {
  readonly cache: FeasibilityCache
  readonly sets: readonly Irreducible[]
}

/** Looks for what cannot be had together in a train; no sets where it can be planned. */
export function contradictionOf(
  train: Train,
  found: readonly AsFound[],
  solver: Solver,
): Contradiction {
  const model = elasticModelOf(train, found)
  const cache = new FeasibilityCache(model, train.plan.share, [], solver)
  return { cache, sets: irreducibles(cache, allLimits(model)) }
}

/**
 * Why a train cannot be planned: an irreducible set of limits, tolerances and held bodies, and behind
 * it the next ones that would come to light if the limits of the first gave.
 * @param out where each is put as soon as it is worked out
 * @returns none where the train can be planned after all, or the solver stopped
 */
export function conflictsOf(
  { cache, sets }: Contradiction,
  solver: Solver,
  most = mostConflicts,
  out: Conflict[] = [],
): Conflict[] {
  const { model } = cache
  let left: ReadonlySet<number> = allLimits(model)
  while (out.length < most) {
    const [set] = out.length === 0 ? sets : irreducibles(cache, left)
    if (!set) break
    out.push(conflictAnswer(cache, set, solver))
    const given = [...set.members].flatMap((index) => model.members[index] ?? []).filter(isRoom)
    if (given.length === 0) break
    left = new Set(
      [...left].filter((index) => {
        const member = model.members[index]
        return !member || !given.some((other) => sameLimit(member, other))
      }),
    )
  }
  return out
}

/** One body's limits of one kind: giving room at one foot alone helps little while its neighbour stays. */
function sameLimit(a: ElasticLimit, b: ElasticLimit): boolean {
  if (!isRoom(a) || !isRoom(b) || a.body !== b.body || a.kind !== b.kind) return false
  if (a.kind === 'foot' && b.kind === 'foot') return a.limit === b.limit
  if (a.kind === 'restraint' && b.kind === 'restraint') return a.way === b.way
  return true
}

function conflictAnswer(
  cache: FeasibilityCache,
  { members: set }: Irreducible,
  solver: Solver,
): Conflict {
  const { model } = cache
  const { train } = model
  const reach = cache.reach(set)
  const press: ReadonlyMap<number, DualWeight> =
    reach.kind === 'missed' ? cache.press(set, reach) : new Map<number, DualWeight>()
  const floor = floorOf(subproblemOf(model, set).program, [], solver)
  const members = [...set]
    .sort((a, b) => order(model.members[a]) - order(model.members[b]) || a - b)
    .flatMap((index) => {
      const member = model.members[index]
      return member ? [[index, member] as const] : []
    })
  const all = allLimits(model)
  const lacks = lackGroups(members, press).map(({ indices, members: group }): GroupedLack => {
    const alike = [...all].filter((index) => {
      const member = model.members[index]
      return member && group[0] && sameLimit(member, group[0])
    })
    const without = reachWithout(cache, all, alike)
    const whole = without === 'met' ? togetherOf(cache, all, alike, solver) : undefined
    const here = missingAt(cache, set, indices, solver)
    return {
      members: group,
      toward: group[0]
        ? pressedWay(train, group[0], towardOf(group[0], press.get(indices[0] ?? 0)))
        : '',
      amount: whole ?? (here === undefined ? undefined : atLeastEntered(cache, indices, here)),
      enough: whole !== undefined ? 'yes' : without === 'missed' ? 'never' : 'unknown',
    }
  })
  const [only] = members
  const kept = mostKept(
    train,
    keptRooms(train),
    (c, s) =>
      members.length === 1 &&
      only?.[1].kind === 'coupling' &&
      only[1].coupling === c &&
      only[1].state === s,
  )
  const answers = members.map(([index]) =>
    memberAnswer(cache, set, all, index, press.get(index), solver),
  )
  const tolerances = answers.flatMap(({ tolerance }) => tolerance ?? [])
  return {
    members: answers.map(({ answer }) => answer),
    floor: floor === undefined ? null : tidy(floor),
    sentence: conflictSentence(
      train,
      members.map(([, member]) => member),
      lacks,
      tolerances,
      kept && leavesNothing(train, kept) ? kept : undefined,
    ),
  }
}

/** Held bodies first, then couplings, then what limits the moves: the order in which it is told. */
const order = (member: ElasticLimit | undefined): number =>
  member?.kind === 'held' ? 0 : member?.kind === 'coupling' ? 1 : 2
