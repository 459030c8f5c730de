/** One equation of an over-determined system: row . unknowns = value, with its uncertainty. */
export interface Equation {
  row: number[]
  value: number
  u: number
}

/** The least-squares solution, and how well the equations hold it (1 well, 0 not at all). */
export interface Fit {
  unknowns: number[]
  hold: number
}

/**
 * Weighted least squares (weights 1/u^2) by Householder reflections on columns of unit length.
 * Golub and Van Loan, Matrix Computations, algorithm 5.2.1 (from memory).
 */
export function leastSquares(equations: Equation[]): Fit {
  const n = equations[0]?.row.length ?? 0
  const a = equations.map(({ row, u }) => row.map((v) => v / u))
  const b = equations.map(({ value, u }) => value / u)
  const norm = (j: number) => Math.hypot(...a.map((row) => row[j] ?? 0)) || 1
  const scale = Array.from({ length: n }, (_, j) => norm(j))
  for (const row of a) scale.forEach((s, j) => (row[j] = (row[j] ?? 0) / s))
  if (a.length < n) return { unknowns: Array.from({ length: n }, () => NaN), hold: 0 }
  for (let k = 0; k < n; k++) reflect(a, b, k)
  const unknowns = Array.from({ length: n }, () => 0)
  const diagonal: number[] = []
  for (let k = n - 1; k >= 0; k--) {
    const row = a[k] ?? []
    let rest = b[k] ?? 0
    for (let j = k + 1; j < n; j++) rest -= (row[j] ?? 0) * (unknowns[j] ?? 0)
    const pivot = row[k] ?? 0
    diagonal.push(Math.abs(pivot))
    unknowns[k] = rest / pivot
  }
  return {
    unknowns: unknowns.map((v, j) => v / (scale[j] ?? 1)),
    hold: Math.min(...diagonal) / Math.max(...diagonal),
  }
}

/** Turns column k below the diagonal into zeros, taking the right-hand side along. */
function reflect(a: number[][], b: number[], k: number): void {
  const tail = a.slice(k)
  const column = tail.map((row) => row[k] ?? 0)
  const first = column[0] ?? 0
  const length = Math.hypot(...column)
  if (length === 0) return
  const v = [...column]
  v[0] = first + (first >= 0 ? length : -length)
  const vv = v.reduce((sum, x) => sum + x * x, 0)
  const n = a[0]?.length ?? 0
  for (let j = k; j < n; j++) {
    const dot = tail.reduce((sum, row, i) => sum + (v[i] ?? 0) * (row[j] ?? 0), 0)
    tail.forEach((row, i) => (row[j] = (row[j] ?? 0) - (2 * dot * (v[i] ?? 0)) / vv))
  }
  const dot = v.reduce((sum, x, i) => sum + x * (b[k + i] ?? 0), 0)
  v.forEach((x, i) => (b[k + i] = (b[k + i] ?? 0) - (2 * dot * x) / vv))
}
