import { hotCheckAnswers } from '../engine/fieldwork/hotCheck/hotChecks'
import { coolingChart, coolingKey } from '../scene/coolingChart'
import { chartBlock, chartWidth } from './chartBlock'
import type { PaperJob } from './job'
import type { Block } from './page'

/** What every hot check that counts found, with its readings over time; nothing of a file without one. */
export function hotCheckBlocks({ document, train }: PaperJob): Block[] {
  return hotCheckAnswers({ document, train }).flatMap((answer): Block[] => {
    const check = train.hotChecks.find(({ id }) => id === answer.check)
    const state = train.states.find(({ id }) => id === answer.state)?.name ?? answer.state
    const chart = check && coolingChart(train, check, chartWidth)
    return [
      {
        kind: 'heading',
        text: `Hot check: ${answer.name}`,
        aside: [state, answer.when, answer.by].filter((one) => one !== undefined).join(', '),
      },
      ...answer.sentences.map((text): Block => ({ kind: 'text', look: 'plain', text })),
      ...(chart
        ? [chartBlock(chart), { kind: 'text', look: 'small', text: coolingKey(train) } as const]
        : []),
    ]
  })
}
