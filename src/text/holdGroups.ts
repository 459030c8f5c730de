import type { RankedHold } from '../engine/studies/holds/holdRows'

/** Choices that come to the same plan; people read them as one. */
export interface HoldGroup {
  /** What is held now if it is among them, else the one that holds most: it says most of the plan. */
  readonly face: RankedHold
  /** The others, in rank. */
  readonly others: readonly RankedHold[]
  /** Why the group is not the first, and how it stands to other groups: the best ranked of it. */
  readonly lead: RankedHold
}

/**
 * Puts ranked choices that have a plan into groups of the same plan, in rank.
 * @param alone choices that stand by themselves though they share a plan with others
 */
export function holdGroups(
  rows: readonly RankedHold[],
  alone: (row: RankedHold) => boolean = () => false,
): HoldGroup[] {
  const groups = new Map<string, RankedHold[]>()
  for (const row of rows) {
    if (row.cost === undefined) continue
    const lead = (row.sameAs ?? row.held).join(' ')
    const known = groups.get(lead)
    if (known) known.push(row)
    else groups.set(lead, [row])
  }
  return [...groups.values()].flatMap((all): HoldGroup[] => {
    const [lead] = all
    if (!lead) return []
    const apart = all.filter((row) => alone(row) && !row.current)
    const together = all.filter((row) => !apart.includes(row))
    const face = together.reduce<RankedHold | undefined>(
      (a, b) => (a === undefined || better(b, a) ? b : a),
      undefined,
    )
    const single = apart.map((row) => ({ face: row, others: [], lead: row }))
    if (!face) return single
    return [{ face, others: together.filter((row) => row !== face), lead }, ...single]
  })
}

const better = (a: RankedHold, b: RankedHold): boolean =>
  a.current || (!b.current && a.held.length > b.held.length)
