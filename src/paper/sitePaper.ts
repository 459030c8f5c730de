import { alignedWords, dueLine, siteWords, tightestWords } from '../engine/fieldwork/site/dueWords'
import { bySite, type TrainState } from '../engine/fieldwork/site/trainState'
import { capital, counted } from '../language/names'
import type { Day } from '../mechanics/day'
import type { Block, Chapter, Paper, PaperSize } from './page'
import { paginate } from './paginate'
import { revisionOf } from './revision'

/**
 * Every train of a shelf on paper: when each was last aligned, how it stands, what is due and why.
 * @param unread names of jobs that cannot be read, each with why
 */
export function sitePaper(
  states: readonly TrainState[],
  unread: readonly { readonly name: string; readonly why: string }[],
  { size, today, date }: { readonly size: PaperSize; readonly today: Day; readonly date: string },
): Paper {
  const chapter: Chapter = {
    section: 'front',
    title: 'Every train',
    blocks: [
      {
        kind: 'text',
        look: 'plain',
        text: `As they stood on ${today}, by the readings entered of each. Nothing is planned here: a train is planned on its own sheet.`,
      },
      ...bySite(states).flatMap(([site, here]): Block[] => [
        { kind: 'heading', text: capital(siteWords(site)) },
        {
          kind: 'table',
          columns: [
            { head: 'train', width: 5 },
            { head: 'last aligned', width: 3 },
            { head: 'tolerance used', width: 4 },
            { head: 'due', width: 8 },
          ],
          rows: here.map((state) => [
            state.name,
            alignedWords(state),
            tightestWords(state),
            dueLine(state),
          ]),
        },
      ]),
      ...(unread.length > 0
        ? ([
            { kind: 'heading', text: 'Cannot be judged yet' },
            { kind: 'list', look: 'dash', items: unread.map(({ name, why }) => `${name}: ${why}`) },
          ] satisfies Block[])
        : []),
    ],
  }
  return {
    ...{ size, print: 'office', date, notice: '' },
    train: counted(states.length + unread.length, 'train', 'trains'),
    revision: revisionOf([chapter]),
    pages: paginate([chapter], size),
  }
}
