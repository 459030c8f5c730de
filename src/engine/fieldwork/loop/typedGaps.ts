import type { GapAgain, WorkDone } from '../../../document/work'
import type { Train } from '../../../mechanics/train'
import type { StepAnswer } from '../steps/answer'
import { movedSince } from './standingReadings'

/** The gap of a coupling as it was measured at the stop point of a step, in the document's length unit. */
export const typedGap = (
  gaps: readonly GapAgain[],
  step: string,
  coupling: string,
): number | undefined =>
  gaps.find((entry) => entry.step === step && entry.coupling === coupling)?.gap

/** All gaps that were measured, with one more or one less; the newest stands last. */
export function withGap(
  gaps: readonly GapAgain[],
  step: string,
  coupling: string,
  gap: number | undefined,
): GapAgain[] {
  const rest = gaps.filter((entry) => entry.step !== step || entry.coupling !== coupling)
  return gap === undefined ? rest : [...rest, { coupling, step, gap }]
}

/** The newest gap of each coupling that nothing was moved after, by coupling, in the document's length unit. */
export function standingGaps(
  train: Train,
  steps: readonly Pick<StepAnswer, 'id' | 'kind'>[],
  work: readonly Pick<WorkDone, 'step' | 'body' | 'done' | 'foot'>[],
  gaps: readonly GapAgain[],
): Readonly<Record<string, number>> {
  const moved = movedSince(train, steps, work)
  return Object.fromEntries(
    gaps.flatMap((entry) => (moved(entry) ? [] : [[entry.coupling, entry.gap] as const])),
  )
}
