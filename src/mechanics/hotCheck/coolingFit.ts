import { inverseOf, leastSquares, type LeastSquares } from '../leastSquares'
import { solveSymmetric } from '../symmetric'
import { tol } from '../tolerances'
import type { Minutes } from '../units'

/** The four numbers of a line `[y, sy, z, sz]` (um, mrad) so long after the stop, with their covariance. */
export interface TimedLine {
  readonly after: Minutes
  readonly numbers: readonly number[]
  readonly covariance: readonly (readonly number[])[]
}

/** A rate of cooling, 1/T, that is known (one by minutes), with its standard uncertainty. */
export interface KnownRate {
  readonly rate: number
  readonly u: number
}

/** The part of its whole slope that a number has gone after a time: (1 - e^(-kt))/k. */
export const gone = (rate: number, after: Minutes): number => {
  const kt = rate * after
  return kt < tol.sameRate ? after * (1 - kt / 2) : -Math.expm1(-kt) / rate
}

/** Its derivative by the rate. */
const goneByRate = (rate: number, after: Minutes): number => {
  const kt = rate * after
  return kt < tol.sameRate
    ? after * after * (-1 / 2 + kt / 3)
    : (after * Math.exp(-kt) - gone(rate, after)) / rate
}

/** Lines with the inverse of their covariances. */
type WeightedLine = TimedLine & { readonly weights: readonly (readonly number[])[] }

export const weightedLines = (lines: readonly TimedLine[]): WeightedLine[] =>
  lines.map((line) => ({ ...line, weights: inverseOf(line.covariance) }))

/** Sum of squares that hot line and slope, fitted at a rate, leave over: the same as of `fitAt`, of sums of four by four. */
export function squaresLeft(lines: readonly WeightedLine[], rate: number): number {
  const matrix = Array.from({ length: 8 }, () => new Array<number>(8).fill(0))
  const right = new Array<number>(8).fill(0)
  const parts = lines.map((line) => ({ ...line, gained: [1, gone(rate, line.after)] as const }))
  for (const { numbers, weights, gained } of parts)
    for (const i of four)
      for (const j of four) {
        const weight = weights[i]?.[j] ?? 0
        for (const a of [0, 1] as const) {
          right[4 * a + i] = (right[4 * a + i] ?? 0) + gained[a] * weight * (numbers[j] ?? 0)
          const row = matrix[4 * a + i] ?? []
          for (const b of [0, 1] as const)
            row[4 * b + j] = (row[4 * b + j] ?? 0) + gained[a] * gained[b] * weight
        }
      }
  const fit = solveSymmetric(matrix, right)
  return parts.reduce((sum, { numbers, weights, gained }) => {
    const left = four.map((i) => (numbers[i] ?? 0) - (fit[i] ?? 0) - gained[1] * (fit[4 + i] ?? 0))
    return (
      sum +
      left.reduce(
        (all, one, i) =>
          all + left.reduce((row, other, j) => row + one * other * (weights[i]?.[j] ?? 0), 0),
        0,
      )
    )
  }, 0)
}

/** Hot line and slope at a rate: eight unknowns. */
export const fitAt = (lines: readonly TimedLine[], rate: number): LeastSquares =>
  leastSquares({
    values: lines.flatMap(({ numbers }) => numbers),
    covariance: blocks(lines),
    design: lines.flatMap(({ after }) =>
      four.map((i) => [...unit(i, 1), ...unit(i, gone(rate, after))]),
    ),
  })

const four = [0, 1, 2, 3] as const
const unit = (i: number, value: number): number[] => four.map((k) => (k === i ? value : 0))

/** The covariances of all times in one, since readings of different times err apart. */
function blocks(lines: readonly TimedLine[], more: readonly number[] = []): number[][] {
  const size = 4 * lines.length + more.length
  return Array.from({ length: size }, (_, r) =>
    Array.from({ length: size }, (__, c) => {
      if (r >= 4 * lines.length) return r === c ? (more[r - 4 * lines.length] ?? 0) : 0
      return Math.floor(r / 4) === Math.floor(c / 4)
        ? (lines[Math.floor(r / 4)]?.covariance[r % 4]?.[c % 4] ?? 0)
        : 0
    }),
  )
}

/** The equations made linear in hot line, slope and rate: nine unknowns, and one value more where a rate is known. */
export const freeAt = (
  lines: readonly TimedLine[],
  rate: number,
  slope: readonly number[],
  prior: KnownRate | undefined,
): LeastSquares =>
  leastSquares({
    values: [...lines.flatMap(({ numbers }) => numbers), ...(prior ? [prior.rate] : [])],
    covariance: blocks(lines, prior ? [prior.u * prior.u] : []),
    design: [
      ...lines.flatMap(({ after }) =>
        four.map((i) => [
          ...unit(i, 1),
          ...unit(i, gone(rate, after)),
          (slope[i] ?? 0) * goneByRate(rate, after),
        ]),
      ),
      ...(prior ? [[...unit(-1, 0), ...unit(-1, 0), 1]] : []),
    ],
  })
