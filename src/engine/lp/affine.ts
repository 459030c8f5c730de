/** A constant plus a sum of coefficient * column, in program units of what it stands for. */
export interface Affine {
  readonly constant: number
  readonly terms: ReadonlyMap<number, number>
}

/** A number that no column changes (program units of what it stands for). */
export const constant = (value: number): Affine => ({ constant: value, terms: new Map() })

export const zero = constant(0)

/** Sum of factor * part over the pairs, in the unit of the parts; terms that cancel to nothing are dropped. */
export function combine(...parts: readonly (readonly [factor: number, part: Affine])[]): Affine {
  const terms = new Map<number, number>()
  let total = 0
  for (const [factor, part] of parts) {
    total += factor * part.constant
    for (const [column, coefficient] of part.terms)
      terms.set(column, (terms.get(column) ?? 0) + factor * coefficient)
  }
  for (const [column, coefficient] of terms) if (coefficient === 0) terms.delete(column)
  return { constant: total, terms }
}

/** What an expression comes to at the values of the columns (program units). */
export const affineValue = (expression: Affine, columns: readonly number[]): number => {
  let sum = expression.constant
  for (const [column, coefficient] of expression.terms) sum += coefficient * (columns[column] ?? 0)
  return sum
}
