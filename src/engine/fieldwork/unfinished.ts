import type { PlanAnswer, UnfinishedReason } from './answer'

/** What of an answer may not be worked out to its end, where the work allowed for it runs out. */
export type Unfinished = 'plan' | 'prices' | 'closer plans' | UnfinishedReason

/** What of an answer is not worked out to its end. */
export function unfinishedOf(answer: PlanAnswer): Unfinished[] {
  const closer = 'sure' in answer && answer.sure.closerOpen === true
  if (answer.status === 'planned')
    return [
      ...(answer.pricesOpen ? (['prices'] as const) : []),
      ...(closer ? (['closer plans'] as const) : []),
    ]
  if (answer.status === 'in-tolerance') return closer ? ['closer plans'] : []
  if (answer.status === 'stopped') return answer.outOfWork ? ['plan'] : []
  return answer.status === 'impossible' ? (answer.reasons?.unfinished ?? []) : []
}
