import type { LinearProgram, LpColumn, LpRow } from '../../src/engine/lp/solver'
import { Random } from '../second/random'

export interface RandomProgram {
  readonly program: LinearProgram
  /** The least that it can come to. */
  readonly objective: number
  readonly columns: readonly number[]
  readonly duals: readonly number[]
}

/**
 * A linear program built backwards from its answer: a point, duals, and for each row and column the
 * sides that make the two prove each other. Coefficients lie between 0.1 and 4.
 */
export function randomProgram(seed: number, columnCount: number, rowCount: number): RandomProgram {
  const random = new Random(seed * 31 + columnCount * 7 + rowCount)
  const value = () => random.about(3)
  const point = Array.from({ length: columnCount }, value)
  /** Bounds around a value: at one side where `price` presses that way, elsewhere at a distance. */
  const around = (at: number, price: number) => {
    const away = () => (random.chance(0.3) ? Infinity : random.between(0.5, 5))
    if (price === 0) return { lower: at - away(), upper: at + away() }
    if (random.chance(0.2)) return { lower: at, upper: at }
    return price > 0 ? { lower: at, upper: at + away() } : { lower: at - away(), upper: at }
  }
  const press = () => random.between(0.2, 2) * random.pick([1, -1])
  // as many things press as there are columns, so that point and duals are the only ones
  const pressed = new Set<number>()
  while (pressed.size < Math.min(columnCount, rowCount + columnCount))
    pressed.add(random.whole(0, rowCount + columnCount - 1))
  const duals = Array.from({ length: rowCount }, (_, i) => (pressed.has(i) ? press() : 0))
  const rows = duals.map((dual): LpRow => {
    const terms = point.flatMap((_, j) =>
      random.chance(0.7) ? [[j, random.between(0.1, 4) * random.pick([1, -1])] as const] : [],
    )
    const at = terms.reduce((sum, [j, a]) => sum + a * (point[j] ?? 0), 0)
    return { terms, ...around(at, dual) }
  })
  const reduced = point.map((_, j) => (pressed.has(rowCount + j) ? press() : 0))
  const columns = point.map((at, j): LpColumn => around(at, reduced[j] ?? 0))
  const objective = reduced.map((cost, j) =>
    rows.reduce((sum, { terms }, i) => {
      const a = terms.find(([column]) => column === j)?.[1] ?? 0
      return sum + a * (duals[i] ?? 0)
    }, cost),
  )
  return {
    program: { columns, rows, objective },
    objective: objective.reduce((sum, c, j) => sum + c * (point[j] ?? 0), 0),
    columns: point,
    duals,
  }
}
