import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import { roomToward } from '../../mechanics/uncertainty/kept'
import { affineValue } from '../lp/affine'
import { programUnit, type Cut, type Program } from '../lp/program'
import { anywhere, nearest, type Allowed, type MoveRange } from './allowed'

/** A choice of one part: which of its limits bounds the move, and what the move may be. */
export interface Open {
  /** Index among the limits of the part's program. */
  readonly row: number
  readonly allowed: Allowed
}

/** Where a row's expression lies (um). */
export function moveOf(program: Program, row: number, columns: readonly number[]): Micrometres {
  const terms = new Map(program.limits[row]?.terms)
  return affineValue({ constant: 0, terms }, columns) * programUnit
}

/** The program with the moves of its choices kept within ranges (um). */
export function bounded(
  program: Program,
  open: readonly Open[],
  ranges: readonly MoveRange[],
): Program {
  const limits = [...program.limits]
  open.forEach(({ row }, i) => {
    const was = limits[row]
    const [low, high] = ranges[i] ?? anywhere
    if (!was || (low === -Infinity && high === Infinity)) return
    limits[row] = {
      ...was,
      lower: Math.max(was.lower, low / programUnit),
      upper: Math.min(was.upper, high / programUnit),
    }
  })
  return { ...program, limits }
}

/**
 * The choice whose move is farthest from one that can be made.
 * @returns index of the choice; undefined where all can be made
 */
export function farthest(open: readonly Open[], at: readonly Micrometres[]): number | undefined {
  let choice: number | undefined
  let most = tol.samePlace
  open.forEach(({ allowed }, i) => {
    const value = at[i] ?? 0
    const by = Math.abs(nearest(allowed, value) - value)
    if (by > most) {
      most = by
      choice = i
    }
  })
  return choice
}

/**
 * The node below and the node above, the nearer one last; a side without an allowed move is left out.
 * @param ranges low and high of each choice (um)
 * @param choice index of the one that is split
 */
export function branched(
  open: readonly Open[],
  ranges: readonly MoveRange[],
  at: readonly Micrometres[],
  choice: number,
): MoveRange[][] {
  const value = at[choice] ?? 0
  const { allowed } = open[choice] ?? {}
  const [low, high] = ranges[choice] ?? anywhere
  const [down, up] = [allowed?.down(value), allowed?.up(value)]
  const withRange = (range: MoveRange) => ranges.map((was, i) => (i === choice ? range : was))
  const below = down === undefined || down < low - tol.samePlace ? [] : [withRange([low, down])]
  const above = up === undefined || up > high + tol.samePlace ? [] : [withRange([up, high])]
  const nearDown = down !== undefined && (up === undefined || value - down <= up - value)
  return nearDown ? [...above, ...below] : [...below, ...above]
}

/** All choices stand at allowed moves, yet keeping all there was not possible: the first that is still free, in three. */
export function apart(
  open: readonly Open[],
  ranges: readonly MoveRange[],
  at: readonly Micrometres[],
): MoveRange[][] {
  const around = open.map(({ allowed }, i) => allowed.around(nearest(allowed, at[i] ?? 0)))
  const choice = around.findIndex(([low, high], i) => {
    const [from, to] = ranges[i] ?? anywhere
    return from < low - tol.samePlace || to > high + tol.samePlace
  })
  const { allowed } = open[choice] ?? {}
  const here = around[choice]
  if (!allowed || !here) return []
  const [low, high] = ranges[choice] ?? anywhere
  const [down, up] = [
    allowed.down(here[0] - 2 * tol.samePlace),
    allowed.up(here[1] + 2 * tol.samePlace),
  ]
  const withRange = (range: MoveRange) => ranges.map((was, i) => (i === choice ? range : was))
  return [
    ...(down === undefined || down < low ? [] : [withRange([low, down])]),
    ...(up === undefined || up > high ? [] : [withRange([up, high])]),
    withRange([Math.max(low, here[0]), Math.min(high, here[1])]),
  ]
}

/**
 * The tangents near a point, and those along the axes that every program starts with.
 * @param columns of the point (program units)
 */
export function touching(
  program: Program,
  cuts: readonly Cut[],
  columns: readonly number[],
): Cut[] {
  return cuts.filter(({ circle, angle }) => {
    const of = program.circles[circle]
    if (!of || Number.isInteger((2 * angle) / Math.PI)) return true
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    const room = of.kept ? roomToward(of.kept, angle) : 0
    const along = cos * affineValue(of.u, columns) + sin * affineValue(of.w, columns) + room
    const radius = affineValue(of.radius, columns)
    return radius - along <= tol.nearCircle * radius
  })
}
