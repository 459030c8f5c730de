import { tol } from '../../../mechanics/tolerances'
import type { Micrometres, Millimetres } from '../../../mechanics/units'
import { solveSymmetric } from '../../../mechanics/symmetric'

interface Place {
  readonly x: Millimetres
  readonly y: Millimetres
}

/** How the heights of a body's feet depart from one plane. */
export interface FootPlane {
  /**
   * Row i turns heights under all feet into how far foot i stands off the plane of the others, + when
   * there is air under it: (their least-squares plane at i) - (height at i). Undefined where the others
   * leave that plane open at i: any height fits there.
   */
  readonly standOff: readonly (readonly number[] | undefined)[]
}

/**
 * Least squares through `z = a + b x + c y`: with the hat matrix H, the residual of foot i against the
 * plane of the others is (z - Hz)_i / (1 - H_ii), the deleted residual of ordinary least squares.
 */
export function footPlane(feet: readonly Place[]): FootPlane {
  const basis = planeBasis(feet)
  const hat = (i: number, j: number) =>
    basis.reduce((sum, column) => sum + (column[i] ?? 0) * (column[j] ?? 0), 0)
  return {
    standOff: feet.map((_, i) => {
      const open = 1 - hat(i, i)
      if (open <= tol.lastDigits) return undefined
      return feet.map((__, j) => (hat(i, j) - (i === j ? 1 : 0)) / open)
    }),
  }
}

/** Orthonormal columns that span constant, x and y over the feet; fewer where feet stand on one line. */
function planeBasis(feet: readonly Place[]): number[][] {
  const columns = [feet.map(() => 1), feet.map(({ x }) => x), feet.map(({ y }) => y)]
  const basis: number[][] = []
  for (const column of columns) {
    const size = Math.hypot(...column)
    let rest = column
    // twice, so that what is left is square to the others to the last digit
    for (let pass = 0; pass < 2; pass++)
      for (const known of basis) {
        const along = rest.reduce((sum, value, i) => sum + value * (known[i] ?? 0), 0)
        rest = rest.map((value, i) => value - along * (known[i] ?? 0))
      }
    const left = Math.hypot(...rest)
    if (size > 0 && left > tol.lastDigits * size) basis.push(rest.map((value) => value / left))
  }
  return basis
}

/**
 * The departure from a plane that explains gaps read one foot at a time, the others tight: least
 * squares of max(0, stand-off) against the gap, since a foot that presses shows none. Where gaps leave
 * more than one departure, the smallest.
 * @param gaps one a foot, 0 or more
 * @returns heights under the feet (um) but for a plane, and what the readings leave unexplained
 */
export function departure(
  { standOff }: FootPlane,
  gaps: readonly Micrometres[],
): { readonly heights: readonly Micrometres[]; readonly unexplained: readonly Micrometres[] } {
  const shown = (heights: readonly number[]) =>
    standOff.map((row) =>
      row === undefined
        ? 0
        : Math.max(
            0,
            row.reduce((sum, c, j) => sum + c * (heights[j] ?? 0), 0),
          ),
    )
  const misfit = (heights: readonly number[]) =>
    shown(heights).reduce((sum, value, i) => sum + (value - (gaps[i] ?? 0)) ** 2, 0)
  const most = Math.max(0, ...gaps)
  let best = { heights: gaps.map(() => 0), misfit: misfit(gaps.map(() => 0)) }
  // which feet stand off is part of the answer: every start settles, and the best fit is taken
  for (const least of [0, most / 4, most / 2, most * 0.75]) {
    let off = gaps.map((gap) => gap > least)
    for (let round = 0; round < 20; round++) {
      const heights = fitted(standOff, gaps, off)
      const fit = misfit(heights)
      if (fit < best.misfit - tol.lastDigits * (1 + best.misfit)) best = { heights, misfit: fit }
      const now = standOff.map((row) => row !== undefined && dot(row, heights) > 0)
      if (now.every((value, i) => value === off[i])) break
      off = now
    }
  }
  const explained = shown(best.heights)
  return {
    heights: best.heights,
    unexplained: gaps.map((gap, i) => gap - (explained[i] ?? 0)),
  }
}

/** Smallest heights whose stand-off fits the gaps of the feet that are off. */
function fitted(
  standOff: FootPlane['standOff'],
  gaps: readonly number[],
  off: readonly boolean[],
): number[] {
  const matrix = gaps.map((_, i) => gaps.map((__, j): number => (i === j ? tol.ridge : 0)))
  const right = gaps.map(() => 0)
  standOff.forEach((row, k) => {
    if (row === undefined || off[k] !== true) return
    row.forEach((a, i) => {
      const line = matrix[i]
      if (!line) return
      row.forEach((b, j) => (line[j] = (line[j] ?? 0) + a * b))
      right[i] = (right[i] ?? 0) + a * (gaps[k] ?? 0)
    })
  })
  return solveSymmetric(matrix, right)
}

const dot = (row: readonly number[], values: readonly number[]) =>
  row.reduce((sum, value, i) => sum + value * (values[i] ?? 0), 0)
