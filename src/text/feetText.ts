import type { Body, Train } from '../mechanics/train'
import { bodyCarried } from '../engine/fieldwork/steps/carried'
import { motionsFrom } from '../engine/fieldwork/steps/pose'
import type { AnswerWithMoves } from '../scene/drawnAnswer'
import { footTable, type FootTableGroup, type FootTableRow } from '../scene/footTable'
import { heading, paragraph, table } from './layout'

/** What to do at every foot, machine by machine; one line for a machine that stays. */
export function feetText(train: Train, answer: AnswerWithMoves): string[] {
  const groups = footTable(train, answer, [])
  return [
    ...heading('FEET', 'what to do at each; shim goes in or out under the foot'),
    ...blocks(
      train.bodies.map((body, b) => {
        const group = groups.find((one) => one.body === body.id)
        return group ? movedText(group) : stillText(train, answer, body, b)
      }),
    ),
  ]
}

/** Tables stand apart from what is around them; single lines follow each other. */
function blocks(bodies: readonly (readonly string[])[]): string[] {
  return bodies.flatMap((lines, i) => {
    const apart = lines.length > 2 || (bodies[i - 1]?.length ?? 3) > 2
    return apart ? ['', ...lines] : lines
  })
}

function stillText(train: Train, answer: AnswerWithMoves, body: Body, index: number): string[] {
  const carried = bodyCarried(train, motionsFrom(train, answer.bodies), index)
  const words = answer.held.includes(body.id) ? 'is fixed' : 'stays where it is'
  const rides = carried === undefined ? '' : `, and ${carried}`
  return paragraph(`${body.name} ${words}: pack stays, no slide${rides}.`, '', 2)
}

function movedText({ name, carried, along, rows }: FootTableGroup): string[] {
  const rides = carried === undefined ? '' : `: moves on its own, and ${carried}`
  return [
    ...paragraph(`${name}${rides}`, '', 2),
    ...(along === undefined ? [] : paragraph(along, '  ')),
    ...table(
      [
        { head: 'foot' },
        { head: 'shim' },
        { head: 'slide' },
        { head: 'pack then', align: 'right' },
        { head: 'clearance', align: 'right' },
      ],
      rows.map((row) => [
        row.foot,
        row.shim,
        row.slide,
        cell(row.pack, row, false),
        cell(row.room, row, true),
      ]),
    ),
  ]
}

/** What is left at a pack or at a bolt, and whether the foot stands on a limit there. */
const cell = (left = 'not entered', { bound }: FootTableRow, atBolt: boolean): string =>
  [left, ...bound.filter((word) => (word === 'bolt-bound') === atBolt)].join(', ')
