import { tol } from '../../mechanics/tolerances'
import type { Body } from '../../mechanics/train'

/** Feet whose shims are changed alike: those of a row, or each by itself where the body may roll. */
export const footGroupsOf = (body: Body): readonly (readonly number[])[] =>
  body.may.roll ? body.feet.map((_, f) => [f]) : body.rows.map(({ feet }) => feet)

/** A body on three rows or more: its feet need not stand exactly in one plane. */
export const isLoose = (body: Body): boolean => body.rows.length > 2

/** How far each independent way in which a body may rise, pitch and roll carries each of its feet. */
export function footTurns(body: Body): number[][] {
  const { pitch, roll } = body.may
  const arm = Math.max(1, ...body.feet.map(({ x }) => Math.abs(x - body.x0)))
  const wide = Math.max(1, ...body.feet.map(({ y }) => Math.abs(y)))
  const ways = [
    body.feet.map(() => 1),
    ...(pitch ? [body.feet.map(({ x }) => (x - body.x0) / arm)] : []),
    ...(roll ? [body.feet.map(({ y }) => y / wide)] : []),
  ]
  return body.feet.reduce((left, { mayShim }, f) => (mayShim ? left : still(left, f)), ways)
}

/** The ways among these that leave a foot where it is: one fewer, or all where none carries it. */
function still(ways: readonly number[][], foot: number): number[][] {
  const size = (way: readonly number[]) => Math.abs(way[foot] ?? 0)
  const pivot = ways.reduce<number[] | undefined>(
    (best, way) => (size(way) > (best ? size(best) : tol.dust) ? way : best),
    undefined,
  )
  if (!pivot) return [...ways]
  return ways
    .filter((way) => way !== pivot)
    .map((way) => {
      const factor = (way[foot] ?? 0) / (pivot[foot] ?? 1)
      return way.map((value, f) => value - factor * (pivot[f] ?? 0))
    })
}
