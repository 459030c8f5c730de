import { stepsAtFoot } from '../engine/fieldwork/steps/atFoot'
import type { Instruction } from '../engine/fieldwork/steps/instructions'
import { hasMoves } from '../engine/plan/moves'
import { bodyCarried } from '../engine/fieldwork/steps/carried'
import { motionsFrom } from '../engine/fieldwork/steps/pose'
import { fineText } from '../language/amounts'
import type { Bound } from '../language/footLimitWords'
import { towardSide, type Amount } from '../language/sides'
import type { Train } from '../mechanics/train'
import type { DrawnAnswer } from './drawnAnswer'
import { footFacts, type FootFacts } from './footFacts'

/** What is done at one foot, and what is left there afterwards. */
export interface FootTableRow {
  readonly key: string
  readonly foot: string
  /** "put in 350 um", "pack stays". */
  readonly shim: string
  /** "450 um toward the lake", "no slide". */
  readonly slide: string
  /** Whether anything is done here. */
  readonly moves: boolean
  /** The pack after; not there where no pack was entered. */
  readonly pack?: string
  /** Least room between bolt and hole after, "none" where they meet; not there where no hole was entered. */
  readonly room?: string
  readonly bound: readonly Bound[]
  /** Steps that do it, in the order of work; none while they are not worked out. */
  readonly steps: readonly Instruction[]
}

/** A machine or skid that moves by itself, with its feet. */
export interface FootTableGroup {
  readonly body: string
  readonly name: string
  /** How far it goes with the skid under it, beside its own moves. */
  readonly carried?: string
  /** How far it goes along the train: "300 um along, to the right"; not there where it does not. */
  readonly along?: string
  readonly rows: readonly FootTableRow[]
}

/**
 * Every foot of every body that moves by itself, body by body: what to do, what is left, in which steps. Screen,
 * paper and text lay out this one table. Empty where nothing moves by itself or there is no plan.
 */
export function footTable(
  train: Train,
  answer: DrawnAnswer,
  instructions: readonly Instruction[],
): FootTableGroup[] {
  if (!hasMoves(answer)) return []
  const motions = motionsFrom(train, answer.bodies)
  const facts = footFacts(train, answer)
  return train.bodies.flatMap((body, b) => {
    const feet = facts.filter((one) => one.body === b)
    if (body.held || !feet.some(moves)) return []
    const carried = bodyCarried(train, motions, b)
    const rows = feet.map((one): FootTableRow => {
      const side = answer.feet.find((move) => move.body === body.id && move.foot === one.name)?.side
      return {
        key: one.key,
        foot: one.name,
        shim: one.shim?.amount ? `${one.shim.word} ${text(one.shim.amount)}` : 'pack stays',
        slide: slideText(train, one, side ?? 0),
        moves: moves(one),
        ...(one.pack && { pack: fineText(one.pack.after, train.units) }),
        ...(one.hole && {
          room: /[1-9]/.test(one.hole.room.digits) ? text(one.hole.room) : 'none',
        }),
        bound: one.bound,
        steps: stepsAtFoot(instructions, body.id, one.name),
      }
    })
    const [{ along } = {}] = feet
    return [
      {
        ...{ body: body.id, name: body.name, rows },
        ...(carried !== undefined && { carried }),
        ...(along && { along: `${text(along.amount)} ${along.words}` }),
      },
    ]
  })
}

const moves = ({ shim, slide, along }: FootFacts): boolean =>
  shim?.amount !== undefined || slide?.amount !== undefined || along !== undefined

const text = ({ digits, unit }: Amount): string => `${digits} ${unit}`

const slideText = (train: Train, { slide }: FootFacts, side: number): string =>
  slide?.amount ? `${text(slide.amount)} ${towardSide(train, side)}` : 'no slide'
