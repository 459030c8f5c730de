/** A constant plus a weighted sum of the program's columns. */
export interface Affine {
  constant: number
  by: Map<number, number>
}

/** The constant alone. */
export function fixed(constant: number): Affine {
  return { constant, by: new Map() }
}

/** One column, times a factor. */
export function column(index: number, factor = 1): Affine {
  return { constant: 0, by: new Map([[index, factor]]) }
}

/** Sum of factor * expression. */
export function sum(...parts: [factor: number, part: Affine][]): Affine {
  const total = fixed(0)
  for (const [factor, part] of parts) {
    total.constant += factor * part.constant
    for (const [index, weight] of part.by) {
      total.by.set(index, (total.by.get(index) ?? 0) + factor * weight)
    }
  }
  return total
}

/** The expression's number where the columns have these values. */
export function valueOf(expression: Affine, columns: ArrayLike<number>): number {
  let value = expression.constant
  for (const [index, weight] of expression.by) value += weight * (columns[index] ?? 0)
  return value
}
