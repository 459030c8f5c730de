import type { RankedHold } from './holdRows'
import { fallsShort } from './rank'

/** A choice with a plan. */
type Planned = Extract<RankedHold, { cost: number }>

const hasPlan = (row: RankedHold): row is Planned => row.cost !== undefined

/**
 * Of choices that disturb fewer machines than the first one, the cheapest by moves (um) for each number of machines, one
 * machine less first; none where no choice does. A plan that leaves a machine alone is one of the choices that fix it, so
 * that of a list of all choices this misses nothing. What falls short of a chance asked for does not count.
 * @param rows ranked, the best choice first
 */
export function fewerDisturbed(rows: readonly RankedHold[]): Planned[] {
  const [first] = rows
  if (!first || !hasPlan(first)) return []
  const cheapest = new Map<number, Planned>()
  for (const row of rows.filter(hasPlan)) {
    const count = row.disturbed.length
    if (count >= first.disturbed.length || (fallsShort(row) && !fallsShort(first))) continue
    const other = cheapest.get(count)
    if (!other || row.cost < other.cost) cheapest.set(count, row)
  }
  return [...cheapest.values()].sort((a, b) => b.disturbed.length - a.disturbed.length)
}
