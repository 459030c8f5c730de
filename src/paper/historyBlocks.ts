import { historyOf, trendsOf } from '../engine/fieldwork/since/history'
import { sinceWords } from '../engine/fieldwork/since/sinceWords'
import type { Train } from '../mechanics/train'
import { trendChart, trendKey } from '../scene/trendChart'
import { historySaid } from '../text/historyText'
import { chartBlock, chartWidth } from './chartBlock'
import type { Block } from './page'

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
    ...trends.map((_, row) => chartBlock(trendChart(train, trends, chartWidth, row))),
    { kind: 'text', look: 'small', text: trendKey(train) },
  ]
}
