import { fineDigits, fineText } from '../language/amounts'
import { fineSign, micrometresPer } from '../mechanics/units'
import type { PackAnswer, SmallMove } from '../engine/rounding/answer'
import type { PlanAnswer } from '../engine/work/answer'
import type { Train } from '../mechanics/train'
import { heading, paragraph, table } from './layout'
import { valueOf } from '../engine/plan/sentence'
import { counted, listed } from '../language/names'

/** A plan as it is told to people: rounded to shims where that was done, exact numbers elsewhere. */
export function toldAnswer(answer: PlanAnswer): PlanAnswer {
  const { rounded } = answer
  if (!rounded?.bodies || !rounded.expected) return answer
  const { bodies, feet, couplings, expected, total, worstShare } = rounded
  return { ...answer, bodies, feet, couplings, expected, worstShare, ...(total && { total }) }
}

/** Thickness of a plate as it is typed, with no fewer digits than other quantities. */
export function plateText(train: Train, value: number): string {
  const digits = fineDigits(value * micrometresPer[train.units.fine], train.units)
  return Math.abs(Number(digits) - value) < 1e-9 ? digits : String(value)
}

/** What to do to one pack: "add 0.25 + 0.10 mm", "remove 0.50 mm", or the new pack where it is made anew. */
export function recipeOf(train: Train, pack: PackAnswer): string {
  const unit = fineSign[train.units.fine]
  const plates = pack.use.map((plate) => plateText(train, plate)).join(' + ')
  const size = plateText(train, Math.abs(pack.change))
  if (train.plan.shims?.rebuild === true && pack.packAfter !== undefined)
    return pack.use.length === 0
      ? 'take the pack out'
      : `take the pack out, put in ${plates} ${unit} (${pack.change > 0 ? size + ' more' : size + ' less'})`
  if (pack.change < 0) return `remove ${size} ${unit}`
  return `add ${plates} ${unit}${pack.use.length > 1 ? ` (${size})` : ''}`
}

/** The recipe of every pack that changes, and what rounding cost. */
export function packsText(train: Train, answer: PlanAnswer): string[] {
  const { rounded, packs = [] } = answer
  if (!rounded) return []
  const name = (id: string) => train.bodies.find((body) => body.id === id)?.name ?? id
  const off = rounded.flat ?? 0
  return [
    ...heading('PACKS', 'from the shims of the store, all feet rounded together'),
    ...paragraph(rounded.sentence, '  '),
    ...(rounded.why ?? []).slice(1).flatMap((line) => paragraph(line, '  - ')),
    ...(packs.length === 0
      ? []
      : table(
          [
            { head: 'machine' },
            { head: 'foot' },
            { head: 'what to do' },
            { head: 'pack after', align: 'right' },
          ],
          packs.map((pack) => [
            name(pack.body),
            pack.foot,
            recipeOf(train, pack),
            pack.packAfter === undefined
              ? 'not entered'
              : `${plateText(train, pack.packAfter)} ${fineSign[train.units.fine]}`,
          ]),
        )),
    ...(off * micrometresPer[train.units.fine] > 0.5
      ? paragraph(
          `On three rows of feet or more a foot stands up to ${valueOf(off, train)} off the plane in which its machine lies.`,
          '  ',
        )
      : []),
    ...smallText(
      train,
      rounded.left ?? [],
      (count, which) =>
        `Left alone, ${count} under ${fineText(train.plan.leave, train.units)}: ${which}.`,
    ),
    ...smallText(
      train,
      rounded.small ?? [],
      (count, which) =>
        `Told although under ${fineText(train.plan.leave, train.units)}, as no rounding was found without, ${count}: ${which}.`,
    ),
  ]
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
    return `${name} ${where} ${valueOf(Math.abs(move), train)}`
  })
  return paragraph(say(counted(moves.length, 'move', 'moves'), listed(which)), '  ')
}
