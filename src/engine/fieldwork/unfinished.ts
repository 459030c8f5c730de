import type { PlanAnswer, UnfinishedReason } from './answer'

/** What of an answer may not be worked out to its end, where the work allowed for it runs out. */
export type Unfinished = 'prices' | UnfinishedReason

/** What of an answer is not worked out to its end. */
export function unfinishedOf(answer: PlanAnswer): Unfinished[] {
  if (answer.status === 'planned') return answer.pricesOpen ? ['prices'] : []
  return answer.status === 'impossible' ? (answer.reasons?.unfinished ?? []) : []
}
