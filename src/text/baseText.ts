import type { ReadyAnswer } from '../engine/fieldwork/ready/answer'
import { basesSaid } from '../engine/fieldwork/ready/base'
import type { Train } from '../mechanics/train'
import { heading, paragraph } from './layout'

/** How the bases lie, and how much of a soft foot they are; nothing where no soleplate was measured. */
export function baseText(train: Train, ready?: ReadyAnswer): string[] {
  const said = basesSaid(train, ready?.softFoot)
  if (said.length === 0) return []
  return [
    ...heading('BASE', 'soleplates against a level line'),
    ...said.flatMap((words) => paragraph(words, '  - ')),
  ]
}
