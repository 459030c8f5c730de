import type { Misalignment } from '../../mechanics/readings/equation'
import type { Train } from '../../mechanics/train'
import { Exact } from './exact'
import { farthestOf, type ExactSide } from './exactRows'
import { factRows, type LimitFact } from './facts'
import { moveRow, type Move } from './moves'

/** A limit with the weight it has in a proof: of the objective, a share of tolerance or a cost (um), per um of its row. */
export interface Weighted {
  readonly fact: LimitFact
  readonly weight: number
}

/** A move that is paid for, with so much of what it costs (um per um), at most all of it either way. */
export interface WeightedMove {
  readonly move: Move
  readonly weight: number
}

/** What limits with weights prove: that nothing allowed comes to less than this; or why they prove nothing. */
export type Certified =
  | { readonly accepted: true; readonly least: number }
  | { readonly accepted: false; readonly why: string }

/**
 * Judges a proof that a train is impossible, after Farkas: its limits, each times its weight, add up to one that no motion
 * can keep at a smaller share. For limits a.m + c <= b + l * share it follows that the sum of w (a.m + c - b) <= share * the
 * sum of w * l; what is left of a.m is counted at its worst within the farthest that anything may move. Rows are made from
 * the train here, with code of the proof's own, and every sum is exact: neither the solver nor the builder of the program
 * is believed, and nothing is rounded but the last number, downward.
 * @param lines of the couplings as found (um, mrad)
 * @returns the least worst share
 */
export function certified(
  train: Train,
  lines: readonly Misalignment[],
  limits: readonly Weighted[],
): Certified {
  const proof = new Added(train, lines)
  const why = proof.addLimits(limits)
  if (why !== undefined) return refused(why)
  if (proof.perShare.sign <= 0) return refused('no tolerance in it')
  return { accepted: true, least: proof.needed().overDown(proof.perShare) }
}

/**
 * Judges a proof that no plan within a share costs less: cost >= the sum of v * move for weights v of no more than each move
 * costs, and to that the limits are added as above.
 * @returns the least cost (um)
 */
export function certifiedCost(
  train: Train,
  lines: readonly Misalignment[],
  share: number,
  limits: readonly Weighted[],
  moves: readonly WeightedMove[],
): Certified {
  const proof = new Added(train, lines)
  const why = proof.addLimits(limits) ?? proof.addMoves(moves)
  if (why !== undefined) return refused(why)
  const within = proof.perShare.times(Exact.of(share))
  return { accepted: true, least: proof.needed().minus(within).overDown(Exact.of(1)) }
}

const refused = (why: string): Certified => ({ accepted: false, why })

/** Rows times their weights, added up. */
class Added {
  /** Of the share, in all. */
  perShare = Exact.zero
  private readonly train: Train
  private readonly rowOf: ReturnType<typeof factRows>
  private constants = Exact.zero
  private readonly left = new Map<number, Exact>()
  private readonly paid = new Set<string>()

  constructor(train: Train, lines: readonly Misalignment[]) {
    this.train = train
    this.rowOf = factRows(train, lines)
  }

  /** @returns why they are no proof; undefined where they may be one */
  addLimits(limits: readonly Weighted[]): string | undefined {
    for (const { fact, weight } of limits) {
      if (!Number.isFinite(weight) || weight < 0)
        return `a weight of ${weight}: it must be a number, 0 or above`
      const row = this.rowOf(fact)
      if (!row) return `a limit that the train does not have: ${fact.is}`
      const by = Exact.of(weight)
      this.perShare = this.perShare.plus(by.times(row.perShare))
      this.constants = this.constants.minus(by.times(row.limit))
      this.add(by, row.side)
    }
    return undefined
  }

  addMoves(moves: readonly WeightedMove[]): string | undefined {
    for (const { move, weight } of moves) {
      const row = moveRow(this.train, move)
      const key = JSON.stringify([move.is, move.body, move.index])
      if (!row || this.paid.has(key)) return `a move that is not paid for, or twice: ${move.is}`
      this.paid.add(key)
      const by = Exact.of(weight)
      if (by.abs().minus(row.cost).sign > 0) return `a move at more than it costs: ${move.is}`
      this.add(by, row.side)
    }
    return undefined
  }

  /** What no motion takes away: what is left of each counts at its worst. */
  needed(): Exact {
    let needed = this.constants
    for (const [at, value] of this.left)
      needed = needed.minus(value.abs().times(farthestOf(this.train, at)))
    return needed
  }

  private add(by: Exact, { constant, terms }: ExactSide): void {
    this.constants = this.constants.plus(by.times(constant))
    for (const [at, value] of terms)
      this.left.set(at, (this.left.get(at) ?? Exact.zero).plus(by.times(value)))
  }
}
