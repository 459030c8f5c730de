import { tol } from '../tolerances'

/** Singular values (any order) with right and scaled left vectors of a tall narrow matrix. */
export interface Svd {
  readonly values: readonly number[]
  /** `left[k]` is the k-th left vector times its singular value: the rotated column. */
  readonly left: readonly (readonly number[])[]
  /** `right[k]` is the k-th right vector. */
  readonly right: readonly (readonly number[])[]
}

/**
 * One-sided Jacobi: rotates pairs of columns until all are orthogonal (Hestenes 1958). Accurate for
 * small singular values, which decide here whether readings suffice.
 * @param columns in any one unit each; scaled alike they are judged alike
 */
export function svd(columns: readonly (readonly number[])[]): Svd {
  const left = columns.map((column) => [...column])
  const n = left.length
  const right = left.map((_, k) => Array.from({ length: n }, (_, j) => (j === k ? 1 : 0)))
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
  const rotate = (a: number[], b: number[], c: number, s: number) => {
    for (let i = 0; i < a.length; i++) {
      const [p, q] = [a[i] ?? 0, b[i] ?? 0]
      a[i] = c * p - s * q
      b[i] = s * p + c * q
    }
  }
  for (let sweep = 0; sweep < 60; sweep++) {
    let turned = false
    for (let p = 0; p < n - 1; p++)
      for (let q = p + 1; q < n; q++) {
        const [a, b, va, vb] = [left[p], left[q], right[p], right[q]]
        if (!a || !b || !va || !vb) continue
        const [aa, bb, ab] = [dot(a, a), dot(b, b), dot(a, b)]
        if (Math.abs(ab) <= tol.orthogonal * Math.sqrt(aa * bb) || ab === 0) continue
        turned = true
        const zeta = (bb - aa) / (2 * ab)
        const t = (zeta >= 0 ? 1 : -1) / (Math.abs(zeta) + Math.hypot(1, zeta))
        const c = 1 / Math.hypot(1, t)
        rotate(a, b, c, c * t)
        rotate(va, vb, c, c * t)
      }
    if (!turned) break
  }
  return { values: left.map((column) => Math.sqrt(dot(column, column))), left, right }
}
