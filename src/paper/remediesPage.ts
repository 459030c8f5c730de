import type { ReasonsAnswer } from '../engine/fieldwork/answer'
import type { Remedy } from '../engine/infeasible/remedies/answer'
import { shareText } from '../language/amounts'
import { capital, counted } from '../language/names'
import { noneSoFar } from '../text/remediesText'
import { unfinishedWords } from '../text/unfinishedWords'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { sentence } from './words'

/** Remedies told in full of those that do not work by themselves. */
const mostOthers = 6

/** Of an impossible train: what cannot be had together, and what would make it possible. */
export function remediesPage({ answer }: Drawn): Chapter[] {
  if (answer.status !== 'impossible') return []
  return [
    {
      section: 'remedies',
      title: 'What is in the way',
      blocks: [
        { kind: 'heading', text: 'The conflict', aside: 'all of these together cannot be had' },
        ...(answer.reasons
          ? reasonsBlocks(answer.reasons)
          : [{ kind: 'text', look: 'strong', text: 'Not worked out for this sheet.' } as const]),
        { kind: 'heading', text: 'Decision' },
        { kind: 'blanks', columns: 3, labels: ['remedy chosen', 'agreed by', 'date and time'] },
      ],
    },
  ]
}

function reasonsBlocks({
  conflicts,
  remedies,
  holdsTried,
  unfinished = [],
}: ReasonsAnswer): Block[] {
  const [conflict, ...behind] = conflicts
  const working = remedies.filter(({ solves }) => solves)
  const others = remedies.filter(({ solves }) => !solves)
  const none = unfinished.includes('remedies') ? noneSoFar : nothingWorks(holdsTried.tried)
  return [
    ...unfinishedWords(unfinished).map((text) => ({ kind: 'text', look: 'strong', text }) as const),
    ...(conflict ? [{ kind: 'text', look: 'strong', text: conflict.sentence } as const] : []),
    {
      kind: 'list',
      look: 'dash',
      items: [
        ...(conflict?.members ?? []).map((member) => sentence(capital(member.sentence))),
        ...behind.map((next) => `Behind it: ${next.sentence}`),
      ],
    },
    {
      kind: 'heading',
      text: 'Remedies',
      aside: 'each solved on a copy; effort 1 is minutes, 10 is weeks',
    },
    {
      kind: 'text',
      look: 'plain',
      text: 'First read again: signs, sag, which shaft the bracket sat on, where the feet stand, which side is which. Half an hour, and the best money spent. Hours below are common practice, no source.',
    },
    ...(working.length > 0
      ? [remedyTable(working)]
      : [{ kind: 'text', look: 'strong', text: none } as const]),
    ...(others.length === 0
      ? []
      : ([
          { kind: 'heading', text: 'Not enough by themselves' },
          {
            kind: 'list',
            look: 'dash',
            items: [
              ...others.slice(0, mostOthers).map((remedy) => remedy.sentence),
              ...(others.length > mostOthers
                ? [`And ${counted(others.length - mostOthers, 'more', 'more')}.`]
                : []),
            ],
          },
        ] as const)),
  ]
}

const nothingWorks = (tried: number): string =>
  `Nothing that was tried works, alone or in pairs; ${tried > 0 ? `none of ${tried} other choices of fixed machines does` : 'no other choice of fixed machines does'}.`

/** Limits that a remedy's plan leans on, told before the rest is counted. */
const mostTight = 2

/** One wide column of words: narrow ones beside each other would make a row of many couplings as tall as a page. */
const remedyTable = (remedies: readonly Remedy[]): Block => ({
  kind: 'table',
  columns: [
    { head: 'no.', width: 0.7, align: 'right' },
    { head: 'what is done, what comes of it, who must agree, what it risks', width: 12 },
    { head: 'effort', width: 1, align: 'right' },
    { head: 'crew hours', width: 1.3 },
  ],
  rows: remedies.map(({ sentence: text, effort, hours, agree, risk, tight, worstShare }, i) => [
    String(i + 1),
    [
      text,
      ...(worstShare === null
        ? []
        : [`The tightest coupling then uses ${shareText(worstShare)}${tightWords(tight)}.`]),
      `Must agree: ${agree}.`,
      `Risk: ${risk}.`,
    ].join(' '),
    String(effort),
    hours[0] === hours[1] ? `${hours[0]}` : `${hours[0]} to ${hours[1]}`,
  ]),
})

/** "; still tight: ..., ... and 3 more limits"; empty where nothing is. */
function tightWords(tight: readonly string[]): string {
  if (tight.length === 0) return ''
  const more = tight.length - mostTight
  const told = tight.slice(0, mostTight).join('; ')
  return `; still tight: ${told}${more > 0 ? `; and ${counted(more, 'more limit', 'more limits')}` : ''}`
}
