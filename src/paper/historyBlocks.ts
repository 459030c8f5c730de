import { historyOf, trendsOf } from '../engine/fieldwork/since/history'
import { sinceWords } from '../engine/fieldwork/since/sinceWords'
import type { Train } from '../mechanics/train'
import { trendChart, trendKey } from '../scene/trendChart'
import { historySaid } from '../text/historyText'
import { label, type Block } from './page'
import { pxPerMm, textWidth } from './size'

/** What the outages of a file tell of its couplings over the years; nothing of a file that keeps none. */
export function historyBlocks(train: Train): Block[] {
  const trends = trendsOf(train)
  if (trends.length === 0) return []
  const history = historyOf(train)
  const said = [
    ...historySaid(train, history),
    ...(history.together ? sinceWords(train, history.together).causes : []),
  ]
  return [
    {
      kind: 'heading',
      text: 'Over the years',
      aside: 'right machine against left at mid-span, cold',
    },
    ...said.map((text): Block => ({ kind: 'text', look: 'plain', text })),
    ...trends.map((_, row): Block => {
      const one = trendChart(train, trends, textWidth * pxPerMm, row)
      return {
        kind: 'figures',
        figures: [
          {
            width: textWidth,
            height: one.height / pxPerMm,
            name: one.name,
            marks: [
              ...one.marks,
              ...one.labels.map(({ x, y, text, anchor, bold }) =>
                label(x, y, text, { size: 12.6, anchor, ...(bold && { bold }) }),
              ),
            ],
          },
        ],
      }
    }),
    { kind: 'text', look: 'small', text: trendKey(train) },
  ]
}
