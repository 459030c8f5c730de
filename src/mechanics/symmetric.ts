import { tol } from './tolerances'

/**
 * Solves a symmetric positive semidefinite system by elimination; unknowns that depend on others
 * are left at 0. Overwrites both arguments.
 * @param matrix n rows of n
 * @param right n entries
 * @returns n unknowns, in the unit of `right` by that of `matrix`
 */
export function solveSymmetric(matrix: number[][], right: number[]): number[] {
  const n = right.length
  const diagonal = matrix.map((row, k) => row[k] ?? 0)
  const used: number[] = []
  for (let k = 0; k < n; k++) {
    const pivotRow = matrix[k]
    const pivot = pivotRow?.[k] ?? 0
    if (!pivotRow || pivot <= tol.dependent * (diagonal[k] ?? 0)) continue
    used.push(k)
    for (let i = k + 1; i < n; i++) {
      const row = matrix[i]
      const factor = (row?.[k] ?? 0) / pivot
      if (!row || factor === 0) continue
      for (let j = k; j < n; j++) row[j] = (row[j] ?? 0) - factor * (pivotRow[j] ?? 0)
      right[i] = (right[i] ?? 0) - factor * (right[k] ?? 0)
    }
  }
  const out = new Array<number>(n).fill(0)
  for (const k of used.reverse()) {
    const row = matrix[k] ?? []
    let rest = right[k] ?? 0
    for (let j = k + 1; j < n; j++) rest -= (row[j] ?? 0) * (out[j] ?? 0)
    out[k] = rest / (row[k] ?? 1)
  }
  return out
}
