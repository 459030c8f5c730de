import { quantityAt } from '../numbers'
import type { Path } from '../place'
import type { PasteColumn, PastedValues } from './pasted'

/** A column whose values stand at one place within each machine, or within each coupling. */
export interface PathColumn extends PasteColumn {
  readonly path: Path
}

/** A column of numbers of the first list of that name; its quantity is that of its place. */
export const numberColumns =
  (list: 'machines' | 'couplings') =>
  (heading: string, names: readonly string[], ...path: string[]): PathColumn => ({
    key: path.join('.'),
    heading,
    names,
    kind: quantityAt([list, 0, ...path]),
    path,
  })

/** Why a row cannot be taken that has a number below 0 where none may be; undefined where it has none. */
export function belowNought(
  columns: readonly PasteColumn[],
  amounts: readonly string[],
  values: PastedValues,
): string | undefined {
  const low = columns.find(({ key }) => amounts.includes(key) && Number(values[key] ?? 0) < 0)
  return low && `${low.heading}: ${String(values[low.key])} is below 0`
}
