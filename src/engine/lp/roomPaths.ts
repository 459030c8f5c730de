import { tol } from '../../mechanics/tolerances'
import { combine } from './affine'
import { BoundPath, type MovingBounds, type PathPiece } from './boundPath'
import { tangentRow, violatedCuts } from './cuts'
import type { Cut, Program, Row } from './program'
import type { Loosened } from './relax'
import type { RoundsOptimal } from './rounds'
import type { LinearProgram, Solver } from './solver'
import { isSound, soundnessOf } from './soundness'
import { stageProgram } from './stage'

/**
 * What the least cost does while one limit is given more and more room, followed from the optimum as it is; each place that is
 * told is judged on the program with that much room, as an answer of the solver is. Program units.
 */
export class RoomPaths {
  private readonly program: Program
  private readonly cuts: readonly Cut[]
  private readonly written: LinearProgram
  private readonly start: BoundPath | undefined
  private readonly solver: Solver

  /**
   * @param least the least cost within a share
   * @param solver is told what it is spared
   */
  constructor(program: Program, least: RoundsOptimal & { readonly share: number }, solver: Solver) {
    this.program = program
    this.solver = solver
    this.cuts = least.asked.filter((cut) => tangentRow(program, cut).terms.length > 0)
    this.written = stageProgram(program, { ask: 'cost', share: least.share }, this.cuts)
    this.start = BoundPath.at(this.written, least.answer)
  }

  /** Least cost with so much more room; undefined where the path does not tell. */
  costWith(limit: Loosened, room: number): number | undefined {
    const asked = this.follow(limit, (path) => reaches(path, room))
    return asked?.cost
  }

  /**
   * The most room, up to `most`, with which the plan costs `price` a unit of it less than `cap`.
   * @returns undefined where there is none, or the path does not tell
   */
  roomFor(limit: Loosened, cap: number, price: number, most: number): number | undefined {
    return this.follow(limit, (path) => meets(path, cap, price, most))?.room
  }

  /** @param go takes a path to the place asked for; false where there is none */
  private follow(
    limit: Loosened,
    go: (path: BoundPath) => boolean,
  ): { readonly room: number; readonly cost: number } | undefined {
    const path = this.start?.moved(this.moving(limit))
    const more: Cut[] = []
    for (let round = 0; path && round < tol.mostRounds; round++) {
      this.solver.spared?.(this.written)
      if (!go(path)) return undefined
      const { place: room } = path
      const found = violatedCuts(this.wider(limit, room), [...this.cuts, ...more], [...path.x])
      if (found.length === 0) {
        const answer = path.answer()
        if (!isSound(soundnessOf(this.given(limit, room, more), answer))) return undefined
        return { room, cost: answer.objective }
      }
      more.push(...found)
      const rows = found.map((cut) => opened(tangentRow(this.program, cut), limit, cut, room))
      if (
        !path.add(
          rows,
          found.map((cut) => outward(limit, cut)),
        )
      )
        return undefined
    }
    return undefined
  }

  /** Rows whose bounds move, and how. */
  private moving(limit: Loosened): Map<number, MovingBounds> {
    const out = new Map<number, MovingBounds>()
    for (const row of limit.rows)
      out.set(row, limit.side === 'lower' ? { lower: -1, upper: 0 } : { lower: 0, upper: 1 })
    this.cuts.forEach((cut, i) => {
      const rates = outward(limit, cut)
      if (rates) out.set(this.program.limits.length + i, rates)
    })
    return out
  }

  /** The program with so much room for the limit, and with more tangents. */
  private given(limit: Loosened, room: number, more: readonly Cut[]): LinearProgram {
    const moving = this.moving(limit)
    const rows = this.written.rows.map((row, i) => {
      const rates = moving.get(i)
      if (!rates) return row
      return {
        ...row,
        lower: row.lower + rates.lower * room,
        upper: row.upper + rates.upper * room,
      }
    })
    const tangents = more.map((cut) => opened(tangentRow(this.program, cut), limit, cut, room))
    return { ...this.written, rows: [...rows, ...tangents] }
  }

  private wider({ circles }: Loosened, room: number): Program {
    if (circles.length === 0) return this.program
    const by = { constant: room, terms: new Map<number, number>() }
    return {
      ...this.program,
      circles: this.program.circles.map((circle, c) =>
        circles.includes(c) ? { ...circle, radius: combine([1, circle.radius], [1, by]) } : circle,
      ),
    }
  }
}

/** Tangents of a circle that is loosened go outward with it. */
const outward = ({ circles }: Loosened, { circle }: Cut): MovingBounds | undefined =>
  circles.includes(circle) ? { lower: 0, upper: 1 } : undefined

const opened = (row: Row, limit: Loosened, cut: Cut, room: number): Row =>
  outward(limit, cut) ? { ...row, upper: row.upper + room } : row

function reaches(path: BoundPath, room: number): boolean {
  let reached = path.place
  for (const { to } of path.pieces(room)) reached = to
  return reached === room
}

/**
 * Goes to the last place where cost plus `price` for every unit of room is not over `cap`: onward while it is under it or
 * falls, and back from beyond, since new tangents made what was passed dearer.
 */
function meets(path: BoundPath, cap: number, price: number, most: number): boolean {
  const over = ({ from, objective }: PathPiece) => objective + price * from - cap
  for (const piece of path.pieces(most)) {
    const { from, to, slope } = piece
    const rising = slope + price
    const now = over(piece)
    if (rising > 0 && now > 0) return back(path, cap, price)
    const end = rising > 0 ? from - now / rising : Infinity
    if (end > to && to < most) continue
    if (end > to && now + rising * (to - from) > 0) return false
    path.go(Math.min(end, to))
    return true
  }
  return false
}

function back(path: BoundPath, cap: number, price: number): boolean {
  for (const { from, to, objective, slope } of path.pieces(0)) {
    const now = objective + price * from - cap
    const rising = slope + price
    if (rising <= 0) return false
    const end = from - now / rising
    if (end < to) continue
    path.go(end)
    return true
  }
  return false
}
