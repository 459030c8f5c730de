import type { Body } from '../../../mechanics/train'
import type { StepAnswer } from './answer'

/** Which end of a body is moved first; both at once are told from the left one on. */
export type FirstEnd = NonNullable<StepAnswer['stops']>['first']

/**
 * What belongs to feet in the order in which its step moves them, row by row from the end that goes
 * first, so that no two faces begin at different ends; without a foot of the body's last.
 */
export function inEndOrder<Entry extends { readonly foot?: string }>(
  body: Body,
  entries: readonly Entry[],
  first: FirstEnd,
): Entry[] {
  const rows = first === 'right' ? [...body.rows].reverse() : body.rows
  const order = rows.flatMap(({ feet }) => feet.flatMap((f) => body.feet[f]?.id ?? []))
  const place = ({ foot }: Entry) => {
    const at = foot === undefined ? -1 : order.indexOf(foot)
    return at < 0 ? order.length : at
  }
  return [...entries].sort((a, b) => place(a) - place(b))
}
