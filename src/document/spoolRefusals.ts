import { shown, type Refusal } from './refusal'
import type { ReadingSetDocument } from './schema'

/** Refuses sets of a spool at a coupling that has none. */
export const spoolRefusals = (
  found: readonly ReadingSetDocument[],
  { left, right }: Readonly<Record<'left' | 'right', { readonly plane: number }>>,
  place: string,
): Refusal[] =>
  right.plane !== left.plane
    ? []
    : found.flatMap(({ kind }, i) =>
        kind === 'spool'
          ? [
              {
                at: `${place}.found[${i}]`,
                why: `${shown(kind)} needs two flex planes, but both planes are at ${left.plane}: give another kind of set, or the second plane`,
              },
            ]
          : [],
      )
