import { shareAsked } from '../language/askedShare'
import { keptSentence } from '../language/keptWords'
import { costWord } from '../language/costWord'
import { bestShareText } from '../language/roundedAmounts'
import { toldText, shareText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import type { Holds, RankedHold } from '../engine/studies/holds/holdRows'
import { effortOf } from '../engine/studies/holds/compare'
import { fewerText } from './fewerText'
import { holdGroups, type HoldGroup } from './holdGroups'
import { heading, paragraph, table, sheetText } from './layout'
import { cautionText } from './remarksText'
import { opening } from './planText'
import { choicesOpen, howToGoOn } from './unfinishedWords'
import { withinSentence } from './withinWords'
import { chanceText } from '../language/chanceText'
import { capital, counted, inSentence, listed } from '../language/names'

/** How choices are ordered, in words. */
export const orderInWords =
  'ranked by moves plus the effort of the machines disturbed; where equal, fewer machines disturbed, then the lower best reachable, then more machines fixed'

/** Every choice of held bodies as people read it, in lines of at most 80 characters. */
export function holdsText(train: Train, holds: Holds): string {
  const { complete, rows, ranOut } = holds
  // nothing held and what is held now always stand in the table, even where a better choice beats them
  const fewest = Math.min(...rows.map(({ held }) => held.length))
  const nothing = (row: RankedHold) => row.held.length === fewest
  const groups = holdGroups(rows, nothing)
  const shown = groups.filter(
    ({ face, lead }) => lead.beatenBy === undefined || face.current || nothing(face),
  )
  const beaten = groups.filter((group) => !shown.includes(group))
  return sheetText([
    ...opening(train),
    ...paragraph(`${headline(train, rows, complete, ranOut)}${keptSentence(train)}`),
    ...(ranOut ? paragraph(`${choicesOpen} ${howToGoOn}`) : []),
    ...(shown.length === 0 ? [] : tableOf(train, shown)),
    ...whyText(train, shown),
    ...fewestText(train, holds),
    ...beatenText(train, beaten, groups),
    ...impossibleText(train, rows),
    ...faultText(train, rows),
    ...cautionText(),
    '',
  ])
}

function headline(
  train: Train,
  rows: readonly RankedHold[],
  complete: boolean,
  ranOut = false,
): string {
  const [best] = rows
  if (!best) return 'No choice of fixed machines was solved.'
  const solved = complete
    ? rows.length === 1
      ? 'There is one choice of fixed machines, and it was solved.'
      : `All ${rows.length} choices of fixed machines were solved.`
    : ranOut
      ? `${counted(rows.length, 'choice', 'choices')} of fixed machines told, and the list is not complete.`
      : `There are too many choices to solve them all: these are the best ${rows.length} found, and the list is not complete.`
  if (best.status === 'in-tolerance')
    return `The tolerances ask for no move, whatever is fixed. ${solved}`
  if (best.cost === undefined)
    return `${complete ? 'No choice of fixed machines' : 'None of these choices'} reaches ${shareText(train.plan.share)} of tolerance. ${solved}`
  const current = rows.find((row) => row.current)
  const now = current === undefined ? '' : ` ${nowInWords(best, current)}`
  // what is held now stands for all choices with its plan
  const face = current?.sameAs === best.held ? current : best
  return `${capital(holdWords(train, face))}.${now} ${solved}`
}

function nowInWords(best: RankedHold, current: RankedHold): string {
  if (current === best || current.sameAs === best.held) return 'That is what is fixed now.'
  return current.cost === undefined
    ? 'What is fixed now cannot work.'
    : 'Something else is fixed now.'
}

const holdWords = (train: Train, row: RankedHold): string => `${namesOf(train, row.held)} fixed`

const namesOf = (train: Train, ids: readonly string[]): string =>
  ids.length === 0
    ? 'nothing'
    : listed(train.bodies.filter(({ id }) => ids.includes(id)).map(({ name }) => inSentence(name)))

function tableOf(train: Train, shown: readonly HoldGroup[]): string[] {
  const sure = shown.some(({ face }) => face.sure !== undefined)
  const wanted = shown.some(({ face }) => face.wanted !== undefined)
  return [
    ...heading('CHOICES', orderInWords),
    ...(sure
      ? paragraph(
          'sure: chance that every state is in at the first run, before rounding to shims, if the stated uncertainties are right.',
          '  ',
        )
      : []),
    ...(wanted ? paragraph(withinSentence(shown.map(({ face }) => face)), '  ') : []),
    '',
    ...table(
      [
        { head: '', align: 'right' },
        { head: 'fixed' },
        { head: costWord(train), align: 'right' },
        { head: 'effort', align: 'right' },
        { head: 'best reachable', align: 'right' },
        { head: 'disturbed', align: 'right' },
        ...(wanted ? [{ head: 'within', align: 'right' as const }] : []),
        ...(sure ? [{ head: 'sure', align: 'right' as const }] : []),
        { head: '' },
      ],
      shown.map(({ face }, i) => [
        `${i + 1}`,
        namesOf(train, face.held),
        toldText(face.cost ?? 0, train.units),
        toldText(effortOf(train, face), train.units),
        bestShareText(face.floor ?? 0, train.plan.share),
        `${face.disturbed.length}`,
        ...(wanted ? [shareText(face.wanted?.share ?? train.plan.share)] : []),
        ...(sure ? [face.sure?.all ? chanceText(face.sure.all) : '-'] : []),
        face.current ? 'now' : '',
      ]),
    ),
  ]
}

/** Why each choice behind the first is behind it, and which others have the same plan. */
function whyText(train: Train, shown: readonly HoldGroup[]): string[] {
  const lines = shown.flatMap(({ others, lead }, i) => {
    const also =
      others.length === 0
        ? ''
        : `the same plan as ${counted(others.length, 'other choice', 'other choices')}: ${sameInWords(train, others)}`
    const parts = [lead.why, also].filter((part) => part !== '')
    return parts.length === 0 ? [] : paragraph(`${parts.join('; ')}.`, `  ${i + 1}  `)
  })
  return lines.length === 0 ? [] : [...heading('WHY', 'against the first'), ...lines]
}

function fewestText(train: Train, holds: Holds): string[] {
  const fewer = fewerText(train, holds)
  return fewer === '' ? [] : [...heading('FEWER MACHINES'), ...paragraph(fewer, '  ')]
}

/** Most choices named before the rest is counted. */
const mostNamed = 4

function sameInWords(train: Train, same: readonly RankedHold[]): string {
  const named = same.slice(0, mostNamed).map(({ held }) => namesOf(train, held))
  const rest = same.length - named.length
  return [...named, ...(rest > 0 ? [`and ${rest} more`] : [])].join('; ')
}

function beatenText(
  train: Train,
  beaten: readonly HoldGroup[],
  groups: readonly HoldGroup[],
): string[] {
  if (beaten.length === 0) return []
  const by = ({ lead }: HoldGroup) =>
    groups.find((group) => group.lead.held === lead.beatenBy)?.face ?? lead
  return [
    ...heading(
      'BEATEN',
      `${beaten.length} more, each no better on any count than a choice above it`,
    ),
    ...beaten
      .slice(0, mostNamed)
      .flatMap((group) =>
        paragraph(
          `${namesOf(train, group.face.held)}: ${toldText(group.face.cost ?? 0, train.units)} of ${costWord(train)}; beaten by ${namesOf(train, by(group).held)}`,
          '  - ',
        ),
      ),
    ...(beaten.length > mostNamed
      ? paragraph(`and ${beaten.length - mostNamed} more`, '  - ')
      : []),
  ]
}

function impossibleText(train: Train, rows: readonly RankedHold[]): string[] {
  const impossible = rows.filter(({ status }) => status === 'impossible')
  if (impossible.length === 0) return []
  const least = impossible.filter(({ impliedBy }) => impliedBy === undefined)
  const implied = impossible.length - least.length
  return [
    ...heading('IMPOSSIBLE', `of tolerance ${shareAsked(train.plan)}`),
    ...least.flatMap((row) =>
      paragraph(`${row.why === '' ? namesOf(train, row.held) : row.why}${mark(row)}.`, '  - '),
    ),
    ...(implied > 0
      ? paragraph(
          `and ${counted(implied, 'choice that fixes', 'choices that fix')} more than one of these.`,
          '  - ',
        )
      : []),
  ]
}

const mark = (row: RankedHold): string => (row.current ? ' (fixed now)' : '')

function faultText(train: Train, rows: readonly RankedHold[]): string[] {
  const failed = rows.filter(({ fault }) => fault !== undefined)
  if (failed.length === 0) return []
  return [
    ...heading('NO ANSWER'),
    ...failed.flatMap(({ held, fault }) =>
      paragraph(`${namesOf(train, held)} fixed: ${fault ?? ''}`, '  - '),
    ),
  ]
}
