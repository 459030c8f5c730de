import type { Misalignment } from '../../mechanics/readings/equation'
import type { Train } from '../../mechanics/train'
import {
  certified,
  certifiedCost,
  type Certified,
  type Weighted,
  type WeightedMove,
} from './certificate'
import { cleanDuals, type ProgramToBound } from './cleanDuals'
import type { ExactSide } from './exactRows'
import { factRows, type LimitFact, type FactRow } from './facts'
import { moveRow, type Move } from './moves'

/** A limit with what a solver says that it carries: of a tolerance the objective a share of it, of others that per um. */
export interface Claim {
  readonly fact: LimitFact
  readonly carries: number
}

/** A proof with what it comes to. */
export interface JudgedProof {
  readonly limits: readonly Weighted[]
  readonly proven: Certified
}

/**
 * The proof that claims of a solver come to, judged. Its weights leave a little of every motion, which counts at its worst:
 * they are judged as they are, and changed so that motions cancel to the last digits, and what proves more is told.
 */
export function shareProof(
  train: Train,
  lines: readonly Misalignment[],
  claims: readonly Claim[],
): JudgedProof {
  const known = rowsOf(train, lines, claims)
  const sharper = sharpened(known, [], true)
  return better(
    [known.map(bare), sharper.limits].map((limits) => ({
      limits,
      proven: certified(train, lines, limits),
    })),
  )
}

/** The same of the cost (um) within a share. */
export function costProof(
  train: Train,
  lines: readonly Misalignment[],
  share: number,
  claims: readonly Claim[],
  moves: readonly WeightedMove[],
): JudgedProof {
  const known = rowsOf(train, lines, claims)
  const paid = moves.flatMap((one) => {
    const row = moveRow(train, one.move)
    return row ? [{ ...one, ...row }] : []
  })
  const asTold = { limits: known.map(bare), moves: paid.map(affordable) }
  return better(
    [asTold, sharpened(known, paid, false)].map(({ limits, moves: weighted }) => ({
      limits,
      proven: certifiedCost(train, lines, share, limits, weighted),
    })),
  )
}

const leastOf = ({ proven }: JudgedProof): number => (proven.accepted ? proven.least : -Infinity)

function better(all: readonly JudgedProof[]): JudgedProof {
  return all.reduce((a, b) => (leastOf(b) > leastOf(a) ? b : a))
}

interface KnownRow extends Weighted {
  readonly row: FactRow
}

interface KnownMove extends WeightedMove {
  readonly side: ExactSide
  readonly cost: { near(): number }
}

function rowsOf(
  train: Train,
  lines: readonly Misalignment[],
  claims: readonly Claim[],
): KnownRow[] {
  const rowOf = factRows(train, lines)
  return claims.flatMap(({ fact, carries }) => {
    const row = rowOf(fact)
    if (!row) return []
    return [{ fact, weight: row.perShare.sign > 0 ? carries / row.perShare.near() : carries, row }]
  })
}

const bare = ({ fact, weight }: Weighted): Weighted => ({ fact, weight })

/** A weight of no more than the move costs: rounding may have taken it there. */
function affordable({ move, weight, cost }: KnownMove): { move: Move; weight: number } {
  const most = cost.near() * (1 - 2 ** -50)
  return { move, weight: Math.max(-most, Math.min(most, weight)) }
}

function sharpened(
  known: readonly KnownRow[],
  moves: readonly KnownMove[],
  ofShare: boolean,
): { limits: Weighted[]; moves: WeightedMove[] } {
  const sides = [...known.map(({ row }) => row.side), ...moves.map(({ side }) => side)]
  const columns = [...new Set(sides.flatMap(({ terms }) => [...terms.keys()]))]
  const place = new Map(columns.map((at, i) => [at, i + 1]))
  const termsOf = ({ terms }: ExactSide) =>
    [...terms].map(([at, value]) => [place.get(at) ?? 0, value.near()] as const)
  const program: ProgramToBound = {
    // the share itself is fixed where it is not asked for
    columns: [
      { lower: 0, upper: ofShare ? Infinity : 0 },
      ...columns.map(() => ({ lower: -Infinity, upper: Infinity })),
    ],
    rows: [
      ...known.map(({ row: { side, perShare, limit } }) => ({
        terms: [...termsOf(side), ...(perShare.sign === 0 ? [] : [[0, -perShare.near()] as const])],
        lower: -Infinity,
        upper: limit.minus(side.constant).near(),
      })),
      ...moves.map(({ side }) => ({ terms: termsOf(side), lower: 0, upper: 0 })),
    ],
    objective: [ofShare ? 1 : 0, ...columns.map(() => 0)],
  }
  const duals = cleanDuals(program, [
    ...known.map(({ weight }) => -weight),
    ...moves.map(({ weight }) => -weight),
  ])
  return {
    limits: known.flatMap(({ fact }, i) => {
      const weight = -(duals[i] ?? 0)
      return weight > 0 ? [{ fact, weight }] : []
    }),
    moves: moves.map((one, k) => affordable({ ...one, weight: -(duals[known.length + k] ?? 0) })),
  }
}
