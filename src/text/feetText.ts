import { tidy } from '../language/tidy'
import type { Body, Foot, Train } from '../mechanics/train'
import type { FootAnswer } from '../engine/plan/answer'
import { bodyCarried } from '../engine/fieldwork/steps/carried'
import { motionsFrom } from '../engine/fieldwork/steps/pose'
import { alongOf } from '../engine/plan/moves'
import type { AnswerWithMoves } from '../scene/drawnAnswer'
import { toldNought, toldText } from '../language/amounts'
import { towardSide } from '../language/sides'
import { heading, paragraph, table } from './layout'
import { shimText } from '../language/recipes'

/** Nearer to a limit than this the foot stands at it (um). */
const touching = 0.01

/** What to do at every foot, machine by machine; one line for a machine that stays. */
export function feetText(train: Train, answer: AnswerWithMoves): string[] {
  return [
    ...heading('FEET', 'what to do at each; shim goes in or out under the foot'),
    ...blocks(train.bodies.map((body) => bodyText(train, body, answer))),
  ]
}

/** Tables stand apart from what is around them; single lines follow each other. */
function blocks(bodies: readonly (readonly string[])[]): string[] {
  return bodies.flatMap((lines, i) => {
    const apart = lines.length > 2 || (bodies[i - 1]?.length ?? 3) > 2
    return apart ? ['', ...lines] : lines
  })
}

function bodyText(train: Train, body: Body, answer: AnswerWithMoves): string[] {
  const feet = body.feet.map((foot) => ({
    foot,
    move: answer.feet.find((entry) => entry.body === body.id && entry.foot === foot.id),
  }))
  const shows = (value: number | undefined) => !toldNought(value ?? 0, train.units)
  const tx = alongOf(answer, body.id)
  const moves = shows(tx) || feet.some(({ move }) => shows(move?.shim) || shows(move?.side))
  const held = answer.held.includes(body.id)
  const carried = bodyCarried(train, motionsFrom(train, answer.bodies), train.bodies.indexOf(body))
  const rides = carried === undefined ? '' : `, and ${carried}`
  if (held || !moves) {
    const words = held
      ? 'is fixed: pack stays, no slide'
      : 'stays where it is: pack stays, no slide'
    return paragraph(`${body.name} ${words}${rides}.`, '', 2)
  }
  return [
    ...paragraph(`${body.name}${rides === '' ? '' : `: moves on its own${rides}`}`, '', 2),
    ...(shows(tx)
      ? paragraph(
          `along the train: ${toldText(Math.abs(tx), train.units)} to the ${tx > 0 ? 'right' : 'left'}`,
          '  ',
        )
      : []),
    ...table(
      [
        { head: 'foot' },
        { head: 'shim' },
        { head: 'slide' },
        { head: 'pack then', align: 'right' },
        { head: 'clearance', align: 'right' },
      ],
      feet.map(({ foot, move }) => footCells(train, foot, move)),
    ),
  ]
}

function footCells(train: Train, foot: Foot, move: FootAnswer | undefined): string[] {
  const shim = move?.shim ?? 0
  const side = move?.side ?? 0
  return [
    foot.id,
    shimText(train, tidy(shim)),
    toldNought(side, train.units)
      ? 'no slide'
      : `${toldText(Math.abs(side), train.units)} ${towardSide(train, side)}`,
    packCell(train, foot, move?.packAfter),
    roomCell(train, move?.boltAt?.room),
  ]
}

function packCell(train: Train, { pack }: Foot, after: number | undefined): string {
  if (after === undefined || !pack) return 'not entered'
  const bound =
    after <= pack.min + touching
      ? ', base-bound'
      : pack.max !== undefined && after >= pack.max - touching
        ? ', top-bound'
        : ''
  return toldText(after, train.units) + bound
}

function roomCell(train: Train, room: number | undefined): string {
  if (room === undefined) return 'not entered'
  const bound = room <= train.plan.reserve + touching ? ', bolt-bound' : ''
  return (toldNought(room, train.units) ? 'none' : toldText(room, train.units)) + bound
}
