import type { PlanAnswer } from '../engine/fieldwork/answer'
import { fineDigits } from '../language/amounts'
import { towardSide } from '../language/sides'
import { fineSign } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { statorsShown } from '../scene/statorsShown'
import type { Block } from './page'

const heading = (aside: string): Block => ({ kind: 'heading', text: 'Stator', aside })
const text = (words: string): Block => ({ kind: 'text', look: 'plain', text: words })

/** For the office: air gaps of stators on feet of their own, and what centres them. */
export function statorBlocks(train: Train, answer: PlanAnswer): Block[] {
  const said = statorsShown(train, answer)
  return said.length === 0 ? [] : [heading('air gaps, and what centres them'), ...said.map(text)]
}

/** For the crew: air gaps as found beside boxes for those as left; in words what no stop point tells. */
export function airGapSheet(train: Train, answer: PlanAnswer): Block[] {
  const gaps = train.bodies.flatMap(({ name, stator }) =>
    (stator?.gaps ?? []).map((gap) => ({ name, gap })),
  )
  if (gaps.length === 0) return []
  const ways = ['top', towardSide(train, 1), 'bottom', towardSide(train, -1)]
  const told =
    'steps' in answer && answer.steps.steps.some(({ hold = '' }) => hold.includes('Air gap'))
  return [
    heading(`air gaps in ${fineSign[train.units.fine]}, found and left, the shaft locked`),
    {
      kind: 'table',
      columns: [
        { head: 'machine', width: 2 },
        { head: 'where', width: 1.6 },
        { head: '', width: 1.1 },
        ...ways.map((head) => ({ head, width: 1.6, align: 'right' as const })),
        { head: 'by, time', width: 1.6 },
      ],
      rows: gaps.flatMap(({ name, gap: { id, top, three, bottom, nine } }) => [
        [
          ...[name, id, 'found'],
          ...[top, three, bottom, nine].map((value) => fineDigits(value, train.units)),
          ' ',
        ],
        [' ', ' ', 'left', '', '', '', '', ''],
      ]),
    },
    ...(told ? [] : statorsShown(train, answer).map(text)),
  ]
}
