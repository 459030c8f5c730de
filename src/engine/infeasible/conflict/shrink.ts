import type { Cut } from '../../lp/program'
import type { Solver } from '../../lp/solver'
import { subproblemOf } from '../elastic/subproblem'
import { limitWeights } from '../elastic/dualWeights'
import { shareFeasibility, type ShareFeasibility } from '../elastic/shareFeasibility'
import type { ElasticModel } from '../elastic/elasticModel'

/** Asks whether members of one model can be kept together; remembers what was asked. */
export class FeasibilityCache {
  private readonly known = new Map<string, ShareFeasibility>()

  constructor(
    readonly model: ElasticModel,
    readonly share: number,
    private readonly cuts: readonly Cut[],
    private readonly solver: Solver,
  ) {}

  reach(kept: ReadonlySet<number>): ShareFeasibility {
    const key = [...kept].sort((a, b) => a - b).join(' ')
    const known = this.known.get(key)
    if (known) return known
    const part = subproblemOf(this.model, kept)
    const reach = shareFeasibility(part.program, this.share, this.cuts, this.solver)
    this.known.set(key, reach)
    return reach
  }

  /** The members that press where a share was missed, with their weights. */
  press(kept: ReadonlySet<number>, missed: Extract<ShareFeasibility, { kind: 'missed' }>) {
    return limitWeights(subproblemOf(this.model, kept), missed)
  }
}

/**
 * A set of members that cannot be kept together though any of them gone lets the others be, found by
 * leaving out: first whole blocks in the order given, then members one by one, those that press least
 * first. After each leaving out only the members that press are looked at further.
 * @returns undefined where the solver stopped, or rounding kept the last set from being judged
 */
export function shrink(
  cache: FeasibilityCache,
  start: ReadonlySet<number>,
  blocks: readonly ((member: number) => boolean)[],
): ReadonlySet<number> | undefined {
  const first = cache.reach(start)
  if (first.kind !== 'missed') return undefined
  let kept: ReadonlySet<number> = start
  let weights = cache.press(start, first)
  const without = (gone: ReadonlySet<number>): boolean | undefined => {
    const rest = new Set([...kept].filter((member) => !gone.has(member)))
    if (rest.size === kept.size) return true
    const reach = cache.reach(rest)
    if (reach.kind === 'stopped') return undefined
    if (reach.kind === 'met') return false
    weights = cache.press(rest, reach)
    kept = pressing(rest, weights)
    return true
  }
  for (const block of blocks)
    if (without(new Set([...kept].filter(block))) === undefined) return undefined
  kept = pressing(kept, weights)
  const needed = new Set<number>()
  for (;;) {
    const next = [...kept]
      .filter((member) => !needed.has(member))
      .sort((a, b) => weightOf(weights, a) - weightOf(weights, b) || a - b)[0]
    if (next === undefined) break
    const gone = without(new Set([next]))
    if (gone === undefined) return undefined
    if (!gone) needed.add(next)
  }
  return isIrreducible(cache, kept) ? kept : undefined
}

const weightOf = (weights: ReadonlyMap<number, { weight: number }>, member: number): number =>
  weights.get(member)?.weight ?? 0

const pressing = (
  kept: ReadonlySet<number>,
  weights: ReadonlyMap<number, unknown>,
): ReadonlySet<number> => new Set([...kept].filter((member) => weights.has(member)))

/** Cannot be kept together; can be without any one of them. */
function isIrreducible(cache: FeasibilityCache, set: ReadonlySet<number>): boolean {
  if (cache.reach(set).kind !== 'missed') return false
  return [...set].every(
    (member) => cache.reach(new Set([...set].filter((other) => other !== member))).kind === 'met',
  )
}
