import { notEngaged } from '../language/engagedWords'
import type { HotCheckAnswer } from '../engine/fieldwork/hotCheck/answer'
import { fineText, lengthText, shareText } from '../language/amounts'
import { grownText } from '../language/hotCheckWords'
import type { Train } from '../mechanics/train'
import { heading, paragraph, sheetText, table } from './layout'
import { opening } from './planText'
import { cautionText } from './remarksText'

/** What hot checks tell, in lines of at most 80 characters. */
export const hotCheckText = (train: Train, answers: readonly HotCheckAnswer[]): string =>
  sheetText([
    ...opening(train),
    ...(answers.length === 0
      ? paragraph(
          'The file has no hot check that is used: there is nothing to compare a plan with.',
        )
      : // a heading brings a blank line, and the opening has ended with one
        answers.flatMap((answer) => checkText(train, answer)).slice(1)),
    ...cautionText(),
    '',
  ])

function checkText(train: Train, answer: HotCheckAnswer): string[] {
  const state = train.states.find(({ id }) => id === answer.state)?.name ?? answer.state
  const who = [answer.when, answer.by].filter((part) => part !== undefined && part.trim() !== '')
  const [verdict = '', ...more] = answer.sentences
  return [
    ...heading(`HOT CHECK “${answer.name}”`, [`state “${state}”`, ...who].join(', ')),
    ...paragraph(verdict),
    ...sharesText(train, answer),
    ...machinesText(train, answer),
    ...heading('HOW THIS COMES ABOUT', 'u is a standard uncertainty'),
    ...more.flatMap((sentence) => paragraph(sentence, '  - ')),
  ]
}

function sharesText(train: Train, { couplings, state }: HotCheckAnswer): string[] {
  const isOpen = (id: string) =>
    train.couplings.find((coupling) => coupling.id === id)?.disengaged?.includes(state) === true
  const rows = couplings.map(({ coupling, how, share }) => {
    const name = train.couplings.find(({ id }) => id === coupling)?.name ?? coupling
    return share
      ? [
          name,
          how,
          shareText(share.running),
          `${shareText(share.low)} to ${shareText(share.high)}`,
          shareText(share.expected),
        ]
      : [name, how, isOpen(coupling) ? notEngaged : '', '', '']
  })
  return rows.length === 0
    ? []
    : [
        ...heading('TOLERANCE USED', 'as it ran, and from where to where 19 times of 20'),
        ...table(
          [
            { head: 'coupling' },
            { head: 'line' },
            { head: 'ran', align: 'right' },
            { head: 'between', align: 'right' },
            { head: 'expected', align: 'right' },
          ],
          rows,
        ),
      ]
}

function machinesText(train: Train, { machines }: HotCheckAnswer): string[] {
  const { units } = train
  const rows = machines.flatMap(({ machine, rows: list }) =>
    list.map(({ quantity, axis, x, entered, found, u }) => [
      `${train.machines.find(({ id }) => id === machine)?.name ?? machine}${axis ? `, ${axis} axis` : ''}`,
      quantity === 'rise' ? 'rise' : 'sideways',
      lengthText(x, units),
      grownText(train, quantity, entered),
      grownText(train, quantity, found),
      fineText(u, units),
    ]),
  )
  return rows.length === 0
    ? []
    : [
        ...heading('MOVEMENT ON THE RUN', 'from shut down to that state'),
        ...table(
          [
            { head: 'machine' },
            { head: 'way' },
            { head: 'x', align: 'right' },
            { head: 'growth entered', align: 'right' },
            { head: 'found', align: 'right' },
            { head: 'u', align: 'right' },
          ],
          rows,
        ),
      ]
}
