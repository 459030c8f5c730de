import { sum, valueOf, type Affine } from './affine'
import { footRows } from './limits'
import { build, loosen, type Built } from './model'
import { ownCarry, type Mover, type Six } from './motion'
import type { Row } from './program'
import { keptShareOf, shareOf } from './share'
import { loadSolver, Stages, type Solution } from './solver'
import type { LeftOut } from './terms'
import { fineFactor, type Train } from './train'

/** A body's own motion: fine units of the document and mrad. */
export type Moves = Record<keyof Six, number>

/** The second answer to a train file, in the document's fine units. */
export interface SecondAnswer {
  status: 'planned' | 'in-tolerance' | 'impossible'
  cost: number
  floor: number
  /** True worst share after the plan; as found when nothing moves; NaN when impossible. */
  worstShare: number
  /** Worst share by coupling and state, as found. */
  asFoundShares: Record<string, Record<string, number>>
  /** The least worst share within 1e-6 of the least cost, and within 1e-7 of it. */
  worstShareBand: [number, number]
  share: number
  bodies: Record<string, Moves>
  total: { shim: number; side: number; axial: number }
  /** Kinds of limit whose price is not zero in the least-cost plan. */
  binding: string[]
  hasCircles: boolean
}

const costSlack = 5e-7

function worstOf(built: Built, columns: ArrayLike<number>): number {
  return Math.max(0, ...built.checks.map((check) => shareOf(check, columns)))
}

/** The worst share with what the guard and intervals of growth keep free: what the plan's share bounds. */
function worstKept(built: Built, columns: ArrayLike<number>): number {
  return Math.max(0, ...built.checks.map((check) => keptShareOf(check, columns)))
}

function foundShares(built: Built): SecondAnswer['asFoundShares'] {
  const shares: SecondAnswer['asFoundShares'] = {}
  for (const check of built.checks) {
    const of = (shares[check.coupling] ??= {})
    of[check.state] = Math.max(of[check.state] ?? 0, shareOf(check, []))
  }
  return shares
}

function movesOf(mover: Mover, columns: ArrayLike<number>, fine: number): Moves {
  const { tx, ty, tz, sy, sz, roll } = mover.own
  const of = (part: Affine) => valueOf(part, columns)
  return {
    tx: of(tx) / fine,
    ty: of(ty) / fine,
    tz: of(tz) / fine,
    sy: of(sy),
    sz: of(sz),
    roll: of(roll),
  }
}

function totalOf(built: Built, columns: ArrayLike<number>, fine: number): SecondAnswer['total'] {
  const total = { shim: 0, side: 0, axial: 0 }
  for (const mover of built.movers.values()) {
    const at = (f: { x: number; y?: number | undefined }) =>
      ownCarry(mover, { x: f.x, y: f.y ?? 0, z: 0 })
    for (const f of mover.body.feet) total.shim += Math.abs(valueOf(at(f).z, columns)) / fine
    for (const f of footRows(mover.body.feet))
      total.side += Math.abs(valueOf(at(f).y, columns)) / fine
    total.axial += Math.abs(valueOf(mover.own.tx, columns)) / fine
  }
  return total
}

/** Kinds of limit with a price: relaxing them by 1 um or 1 share would save more than 1e-6 um. */
function bindingIn(rows: Row[], solution: Solution): string[] {
  const kinds = new Set<string>()
  rows.forEach((row, index) => {
    if (row.family === 'cost' || Math.abs(solution.duals[index] ?? 0) < 1e-6) return
    for (const kind of [row.family, ...row.also]) kinds.add(kind)
  })
  return [...kinds].sort()
}

function answer(
  built: Built,
  fine: number,
  part: Pick<SecondAnswer, 'status' | 'floor' | 'worstShareBand' | 'binding'>,
  columns: ArrayLike<number>,
): SecondAnswer {
  const bodies: SecondAnswer['bodies'] = {}
  for (const [id, mover] of built.movers) bodies[id] = movesOf(mover, columns, fine)
  const { cost } = built.program
  const spent = cost.reduce((sumSoFar, price, i) => sumSoFar + price * (columns[i] ?? 0), 0)
  return {
    ...part,
    cost: spent / fine,
    worstShare: part.status === 'impossible' ? NaN : worstOf(built, columns),
    asFoundShares: foundShares(built),
    share: built.share,
    bodies,
    total: totalOf(built, columns, fine),
    hasCircles: built.hasCircles,
  }
}

/** How the second builder departs from the contract: a term less, or circles at their widest. */
export interface Departure {
  leaveOut?: LeftOut
  loose?: boolean
}

/** Solves a train by the contract, with nothing of the planner's own code. */
export async function solveSecond(
  document: Train,
  { leaveOut, loose = false }: Departure = {},
): Promise<SecondAnswer> {
  const highs = await loadSolver()
  const built = build(document, leaveOut)
  if (loose) loosen(built.program)
  const fine = fineFactor(document, leaveOut)
  const stages = new Stages(highs, built.program)
  try {
    return inStages(built, fine, stages, leaveOut)
  } finally {
    stages.dispose()
  }
}

function inStages(built: Built, fine: number, stages: Stages, leaveOut: LeftOut): SecondAnswer {
  const { program, share } = built
  const worst: Affine = { constant: 0, by: new Map([[program.worst, 1]]) }
  const cost: Affine = { constant: 0, by: new Map() }
  program.cost.forEach((price, index) => {
    if (price !== 0) cost.by.set(index, price)
  })
  const least = stages.least(worst)
  const floor = least ? worstKept(built, least.columns) : Infinity
  const still = worstOf(built, [])
  const none = { floor, worstShareBand: [still, still] as [number, number], binding: [] }
  if (worstKept(built, []) <= share * (1 + 1e-9) && leaveOut !== 'in tolerance first')
    return answer(built, fine, { ...none, status: 'in-tolerance' }, [])
  if (!least || least.objective > share + 1e-9)
    return answer(built, fine, { ...none, status: 'impossible' }, [])
  stages.limitWorst(share)
  const second = leaveOut !== 'least worst share second'
  // where moves cost nothing the last point would be kept, and with it its least worst share
  if (!second) stages.forget()
  const cheapest = stages.least(cost)
  if (!cheapest) return answer(built, fine, { ...none, status: 'impossible' }, [])
  const binding = bindingIn(stages.rows, cheapest)
  const within = (slack: number) => {
    if (!second) return cheapest.columns
    const high = cheapest.objective * (1 + slack) + 1e-7
    stages.addRow({ family: 'cost', also: [], expression: sum([1, cost]), low: -Infinity, high })
    return (stages.least(worst) ?? cheapest).columns
  }
  const loose = within(1e-6)
  const best = within(costSlack)
  const tight = within(1e-7)
  const worstShareBand: [number, number] = [worstOf(built, loose), worstOf(built, tight)]
  return answer(built, fine, { status: 'planned', floor, worstShareBand, binding }, best)
}
