import { coupledSaid } from '../engine/plan/coupledWords'
import type { Train } from '../mechanics/train'
import { heading, paragraph } from './layout'

/** What is wanted of couplings and why, and run-out of their halves; nothing where neither is entered. */
export function coupledText(train: Train): string[] {
  const said = train.couplings.flatMap((coupling) => coupledSaid(train, coupling))
  if (said.length === 0) return []
  return [
    ...heading('WANTED AND RUN-OUT', 'right machine against left, at mid-span'),
    ...said.flatMap((words) => paragraph(`${words}.`, '  - ')),
  ]
}
