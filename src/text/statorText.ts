import { statorsSaid } from '../engine/plan/statorWords'
import type { StatorAnswer } from '../engine/plan/statorAnswer'
import type { Train } from '../mechanics/train'
import { heading, paragraph } from './layout'

/** Air gaps of stators on feet of their own, and what centres them; nothing where none was measured. */
export function statorText(train: Train, stators: readonly StatorAnswer[] = []): string[] {
  const said = statorsSaid(train, stators)
  if (said.length === 0) return []
  return [
    ...heading('STATOR', 'air gaps, and what centres them'),
    ...said.flatMap((words) => paragraph(words, '  - ')),
  ]
}
