import { tol } from '../mechanics/tolerances'
import { figureHeight, footFigure, type FootScales } from '../scene/footFigure'
import type { FootFacts } from '../scene/footFacts'
import { onFarSide, sideNoun, towardSide } from '../language/sides'
import { packText } from '../language/recipes'
import { fineSign } from '../mechanics/units'
import type { Body, Train } from '../mechanics/train'
import type { PaperFootCard } from './page'
import { pxPerMm } from './size'
import { stepNumbers, stepsAtFoot } from '../engine/fieldwork/steps/atFoot'
import type { Instruction } from '../engine/fieldwork/steps/instructions'

/** Width of a foot's drawing by how many cards stand side by side (px of the scene). */
const drawn = [100, 100, 80] as const

/** Widest that a foot's drawing is, in px of the scene. */
export const figureWidth = (columns: number): number => drawn[columns - 1] ?? 80

/** The columns in which the feet of a body lie on its page, left to right; feet at one x share one. */
export const columnsOf = (body: Body): number[] =>
  [...new Set(body.feet.map(({ x }) => x))].sort((a, b) => a - b)

export interface CardSettings {
  readonly columns: number
  readonly scales: FootScales
  /** What goes out and in, where packs were worked out. */
  readonly recipe: (facts: FootFacts) => string | undefined
  readonly instructions: readonly Instruction[]
}

export function footCard(
  train: Train,
  body: Body,
  facts: FootFacts,
  { columns, scales, recipe, instructions }: CardSettings,
): PaperFootCard {
  const { shim, slide, along, pack, hole, bound } = facts
  const { units } = train
  const unit = fineSign[units.fine]
  const width = figureWidth(columns)
  const xs = columnsOf(body)
  const foot = body.feet[facts.foot]
  const made = recipe(facts)
  const steps = stepsAtFoot(instructions, body.id, facts.name)
  const amountText = (amount: { digits: string; unit: string } | undefined) =>
    amount ? `${amount.digits} ${amount.unit}` : ''
  return {
    key: facts.key,
    column: xs.indexOf(foot?.x ?? 0),
    row: onFarSide(train, body, body.feet[facts.foot]?.y ?? 0) ? 'far' : 'near',
    name: `Foot ${facts.name}`,
    machine: body.name,
    steps: stepNumbers(steps),
    place: placeOf(train, body, facts.foot),
    figure: {
      width: Math.round(width / pxPerMm),
      height: Math.ceil(figureHeight / pxPerMm),
      name: `pack and hole of foot ${facts.name}, now dashed, after drawn through`,
      marks: footFigure(train, facts, width, scales),
    },
    shim: shim ? `${shim.word} ${amountText(shim.amount)}`.trim() : 'pack stays',
    pack: packText(train, pack?.now, pack?.after),
    ...(made !== undefined && { recipe: made }),
    slide: slide?.amount ? `slide ${amountText(slide.amount)}` : 'no slide',
    toward: slide?.amount ? towardWords(slide.words) : '',
    ...(along && { along: `${amountText(along.amount)} ${along.words}` }),
    room: hole
      ? `left at bolt ${amountText(hole.room)}, ${hole.where}`
      : 'clearance at the bolt not entered: measure it before the slide',
    bound,
    actuals: [`pack, ${unit}`, `slid, ${unit}`, `left at bolt, ${unit}`, 'by, time'],
  }
}

const towardWords = (words: string): string =>
  /^(to|toward|towards)\s/i.test(words.trim()) ? words.trim() : `toward ${words.trim()}`

/** "left end": which foot it is by where it stands; the strip beside its row says on which side. */
function placeOf(train: Train, body: Body, index: number): string {
  const xs = columnsOf(body)
  const foot = body.feet[index]
  const column = xs.indexOf(foot?.x ?? 0)
  const end =
    xs.length < 2
      ? ''
      : column === 0
        ? 'left end'
        : column === xs.length - 1
          ? 'right end'
          : 'middle'
  const ys = body.feet.map(({ y }) => y)
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2
  const aside = (foot?.y ?? 0) - middle
  const side = Math.abs(aside) < tol.dust ? '' : sideNounWords(train, aside)
  return end === '' ? side : end
}

const sideNounWords = (train: Train, y: number): string =>
  /^\d/.test(sideNoun(train, y)) ? towardSide(train, y) : `${sideNoun(train, y)} side`
