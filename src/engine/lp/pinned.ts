import { tol } from '../../mechanics/tolerances'
import type { Program } from './program'

/**
 * True when no motion is free of charge: the displacements that are paid for have full rank, so a
 * plan that costs nothing moves nothing.
 */
export function pinned(program: Program): boolean {
  const motions = program.firstMove - 1
  const rows = program.displacements.map((row) => {
    const line = new Array<number>(motions).fill(0)
    for (const [column, coefficient] of row.terms)
      if (column < program.firstMove) line[column - 1] = coefficient
    return line
  })
  for (let k = 0; k < motions; k++) {
    const size = (line: readonly number[] | undefined) => Math.abs(line?.[k] ?? 0)
    let best = k
    for (let i = k + 1; i < rows.length; i++) if (size(rows[i]) > size(rows[best])) best = i
    const pivot = rows[best]
    const swapped = rows[k]
    if (!pivot || !swapped || size(pivot) <= tol.lastDigits) return false
    rows[best] = swapped
    rows[k] = pivot
    for (let i = k + 1; i < rows.length; i++) {
      const line = rows[i]
      const factor = (line?.[k] ?? 0) / (pivot[k] ?? 1)
      if (!line || factor === 0) continue
      for (let j = k; j < motions; j++) line[j] = (line[j] ?? 0) - factor * (pivot[j] ?? 0)
    }
  }
  return true
}
