import { fineText, toldText } from '../language/amounts'
import { fineSign } from '../mechanics/units'
import type { RoundedAnswer, RoundingMade, SmallMove } from '../engine/rounding/answer'
import type { Train } from '../mechanics/train'
import { heading, paragraph, table } from './layout'
import { counted, listed } from '../language/names'
import { plateDigits } from '../language/recipes'
import { packRecipe } from '../engine/fieldwork/steps/recipe'

/** The recipe of every pack that changes, and what rounding cost. */
export function packsText(train: Train, rounded: RoundedAnswer): string[] {
  return [
    ...heading('PACKS', 'from the shims of the store, all feet rounded together'),
    ...paragraph(rounded.sentence, '  '),
    ...(rounded.status === 'no rounding'
      ? rounded.why.slice(1).flatMap((line) => paragraph(line, '  - '))
      : madeText(train, rounded)),
  ]
}

function madeText(train: Train, rounded: RoundingMade): string[] {
  const { packs, flat, left, small } = rounded
  const name = (id: string) => train.bodies.find((body) => body.id === id)?.name ?? id
  return [
    ...(packs.length === 0
      ? []
      : table(
          [
            { head: 'machine' },
            { head: 'foot' },
            { head: 'what to do' },
            { head: 'pack then', align: 'right' },
          ],
          packs.map((pack) => [
            name(pack.body),
            pack.foot,
            packRecipe(train, pack),
            pack.packAfter === undefined
              ? 'not entered'
              : `${plateDigits(pack.packAfter, train.units)} ${fineSign[train.units.fine]}`,
          ]),
        )),
    ...(flat > 0.5
      ? paragraph(
          `On three rows of feet or more a foot stands up to ${toldText(flat, train.units)} off the plane in which its machine lies.`,
          '  ',
        )
      : []),
    ...smallText(
      train,
      left,
      (count, which) =>
        `Left alone, ${count} under ${fineText(train.plan.leave, train.units)}: ${which}.`,
    ),
    ...smallText(
      train,
      small,
      (count, which) =>
        `Told although under ${fineText(train.plan.leave, train.units)}, as ${without(train, rounded)}, ${count}: ${which}.`,
    ),
  ]
}

/** Why small moves are told. */
function without(train: Train, { ways }: RoundingMade): string {
  return ways?.alone === undefined
    ? 'no rounding was found without'
    : `leaving all of them alone would cost ${toldText(ways.alone, train.units)} in place of ${toldText(ways.told, train.units)}`
}

function smallText(
  train: Train,
  moves: readonly SmallMove[],
  say: (count: string, which: string) => string,
): string[] {
  if (moves.length === 0) return []
  const which = moves.map(({ body, foot, row, move }) => {
    const name = train.bodies.find(({ id }) => id === body)?.name ?? body
    const where = foot === undefined ? (row === undefined ? 'along' : `row ${row}`) : `foot ${foot}`
    return `${name} ${where} ${toldText(Math.abs(move), train.units)}`
  })
  return paragraph(say(counted(moves.length, 'move', 'moves'), listed(which)), '  ')
}
