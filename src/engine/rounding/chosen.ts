import type { Micrometres } from '../../mechanics/units'
import type { Part } from '../lp/parts'
import type { Meter } from './meter'
import { nearest, nothingElse } from './allowed'
import type { Open } from './branches'
import type { DisplayedMove } from './choices'
import type { Start } from './dive'

/** A part of the train with its choices. */
export interface ChoicePart {
  readonly part: Part
  readonly choices: readonly DisplayedMove[]
  /** What the plan before rounding wants of each choice (um). */
  readonly wanted: readonly Micrometres[]
  /** Every cost of the part is a multiple of this (program units); 0 where it is not. */
  readonly quantum: number
}

/** Whether a choice leaves moves under `plan.leave` alone, or may be any. */
export type Care = 'tidy' | 'any'

/**
 * Tells when a question has cost its work.
 * @param most work, as the meter counts it: rows times columns
 */
export function allowance(solver: Meter, most: number): () => boolean {
  const end = solver.work() + most
  return () => solver.work() >= end
}

/** The part's choices with what each may be. */
export function opened(
  { part, choices }: ChoicePart,
  care: (choice: number) => Care,
  fixed?: ReadonlySet<number>,
): Open[] {
  return choices.map((choice, i) => ({
    row: part.limits.indexOf(choice.row),
    allowed: fixed?.has(i) ? nothingElse : choice[care(i)],
  }))
}

/** Every shim rounded by itself, slides free. */
export const starting = ({ choices, wanted }: ChoicePart, care: Care): Start =>
  choices.map((choice, i) =>
    choice.kind === 'shim' ? nearest(choice[care], wanted[i] ?? 0) : undefined,
  )
