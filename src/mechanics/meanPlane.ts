import { solveSymmetric } from './symmetric'

/**
 * Least-squares a + b x + c y; what the points leave open is 0.
 * @param points x and y in mm, value in um
 * @returns a (um), b and c (mrad)
 */
export function meanPlaneOf(points: readonly { x: number; y: number; value: number }[]): number[] {
  const columns = [points.map(() => 1), points.map(({ x }) => x), points.map(({ y }) => y)]
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
  const values = points.map(({ value }) => value)
  return solveSymmetric(
    columns.map((a) => columns.map((b) => dot(a, b))),
    columns.map((a) => dot(a, values)),
  )
}
