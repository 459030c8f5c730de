/** One equation of a fit: row . unknowns = value, known to u. */
export interface Weighed {
  row: readonly number[]
  u: number
}

/**
 * What each equation's value adds to each unknown in the weighted least squares: (A' W A)^-1 A' W with
 * W = 1/u^2 (the normal equations, any text on least squares). Rows: unknowns; columns: equations.
 */
export function gains(equations: readonly Weighed[]): number[][] {
  const n = equations[0]?.row.length ?? 0
  const at = (row: readonly number[], j: number) => row[j] ?? 0
  // columns of very different size would spoil the elimination
  const size = Array.from(
    { length: n },
    (_, j) => Math.hypot(...equations.map(({ row, u }) => at(row, j) / u)) || 1,
  )
  const scaled = equations.map(({ row, u }) => size.map((s, j) => at(row, j) / s / u))
  const left = size.map((_, i) =>
    size.map((__, j) => scaled.reduce((sum, row) => sum + at(row, i) * at(row, j), 0)),
  )
  const right = size.map((_, i) => scaled.map((row) => at(row, i)))
  const solved = eliminated(left, right)
  return solved.map((row, i) => row.map((v, k) => v / (size[i] ?? 1) / (equations[k]?.u ?? 1)))
}

/** Solves left * X = right by Gauss and Jordan, with the largest pivot of each column. */
function eliminated(left: number[][], right: number[][]): number[][] {
  const n = left.length
  const rows = left.map((row, i) => [...row, ...(right[i] ?? [])])
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k; i < n; i++) {
      if (Math.abs(rows[i]?.[k] ?? 0) > Math.abs(rows[best]?.[k] ?? 0)) best = i
    }
    const pivotRow = rows[best] ?? []
    rows[best] = rows[k] ?? []
    rows[k] = pivotRow
    const pivot = pivotRow[k] ?? 0
    if (Math.abs(pivot) < 1e-14) throw new Error('the readings leave a number open')
    pivotRow.forEach((v, j) => (pivotRow[j] = v / pivot))
    for (const row of rows) {
      const factor = row[k] ?? 0
      if (row === pivotRow || factor === 0) continue
      row.forEach((v, j) => (row[j] = v - factor * (pivotRow[j] ?? 0)))
    }
  }
  return rows.map((row) => row.slice(n))
}
