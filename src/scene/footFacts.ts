import { tidy } from '../language/tidy'
import type { Micrometres } from '../mechanics/units'
import type { Body, Foot, Hole, Train } from '../mechanics/train'
import { footCarried } from '../engine/fieldwork/steps/carried'
import { motionsFrom } from '../engine/fieldwork/steps/pose'
import type { FootAnswer } from '../engine/plan/answer'
import { alongOf, hasMoves } from '../engine/plan/moves'
import type { DrawnAnswer } from './drawnAnswer'
import { holeRadius } from '../mechanics/holeRadius'
import { footBands, limitSides, type FootLimit, type FootMoveName } from '../mechanics/footLimits'
import { footLimitWords, type Bound } from '../language/footLimitWords'
import { shimVerb, type ShimVerb } from '../language/recipes'
import { amount, showsNought, sideName, sideNoun, type Amount } from '../language/sides'

/** A place of the hole's centre against the bolt (um): x along the train, y toward 3 o'clock. */
interface Centre {
  readonly x: Micrometres
  readonly y: Micrometres
}

/** What one foot's card says and draws. */
export interface FootFacts {
  readonly key: string
  readonly body: number
  readonly foot: number
  readonly name: string
  readonly held: boolean
  /** What to do; absent for a held foot and where there is no plan. */
  readonly shim?: { readonly word: ShimVerb | 'pack stays'; readonly amount?: Amount }
  readonly slide?: { readonly words: string; readonly amount?: Amount }
  readonly along?: { readonly words: string; readonly amount: Amount }
  readonly pack?: {
    readonly now: Micrometres
    readonly after: Micrometres
    readonly min: Micrometres
    readonly max?: Micrometres
  }
  readonly hole?: {
    readonly clearance: Micrometres
    readonly now: Centre
    readonly after: Centre
    readonly room: Amount
    /** Where the least room is: "lake side". */
    readonly where: string
  }
  /** How far it goes with the skid under it, although nothing is done at it. */
  readonly carried?: string
  readonly bound: readonly Bound[]
}

/** Nearer to a limit than this, a plan stands on it (um); a tenth of what any gauge shows. */
const onTheLimit: Micrometres = 0.1

/** Every foot of the train, machines first, as the plan leaves it. */
export function footFacts(train: Train, answer: DrawnAnswer): FootFacts[] {
  const moves = hasMoves(answer) ? answer : undefined
  const motions = motionsFrom(train, moves?.bodies ?? [])
  return train.bodies.flatMap((body, b) =>
    body.feet.map((foot, f) => {
      const told = moves?.feet.find((a) => a.body === body.id && a.foot === foot.id)
      const along = moves ? alongOf(moves, body.id) : 0
      const carried = footCarried(train, motions, b, foot)
      return {
        ...factsOf(train, { body, b, foot, f, along, ...(told && { told }) }),
        ...(carried !== undefined && { carried }),
      }
    }),
  )
}

interface Subject {
  readonly body: Body
  readonly b: number
  readonly foot: Foot
  readonly f: number
  readonly told?: FootAnswer
  /** Move of the body along the train. */
  readonly along: Micrometres
}

function factsOf(train: Train, { body, b, foot, f, told, along }: Subject): FootFacts {
  // what is nothing but the last digits is no move
  const shim = tidy(told?.shim ?? 0)
  const side = tidy(told?.side ?? 0)
  const axial = tidy(told?.axial ?? 0)
  const tx = tidy(along)
  const { hole, pack } = foot
  const after = hole && { x: hole.x + axial, y: hole.y + side }
  return {
    key: `${body.id} ${foot.id}`,
    body: b,
    foot: f,
    name: foot.id,
    held: body.held,
    ...(told &&
      !body.held && {
        shim: shimWords(train, shim),
        slide: showsNought(side, train)
          ? { words: 'no slide' }
          : { words: sideName(train, side), amount: amount(side, train) },
        ...(!showsNought(tx, train) && {
          along: {
            words: tx > 0 ? 'along, to the right' : 'along, to the left',
            amount: amount(tx, train),
          },
        }),
      }),
    ...(pack && {
      pack: {
        now: pack.now,
        after: pack.now + shim,
        min: pack.min,
        ...(pack.max !== undefined && { max: pack.max }),
      },
    }),
    ...(hole &&
      after && {
        hole: {
          clearance: hole.clearance,
          now: { x: hole.x, y: hole.y },
          after,
          room: amount(Math.max(0, hole.clearance / 2 - Math.hypot(after.x, after.y)), train),
          where: whereRoom(train, hole, after),
        },
      }),
    bound: told && !body.held ? boundsOf(train, foot, { shim, side }, after) : [],
  }
}

function shimWords(train: Train, shim: Micrometres): NonNullable<FootFacts['shim']> {
  if (showsNought(shim, train)) return { word: 'pack stays' }
  return { word: shimVerb(shim), amount: amount(shim, train) }
}

/** The bolt is nearest to its hole on the side away from the hole's centre. */
function whereRoom(train: Train, hole: Hole, { x, y }: Centre): string {
  if (Math.hypot(x, y) < 0.02 * hole.clearance) return 'all round'
  if (Math.abs(x) > Math.abs(y)) return x < 0 ? 'right-end side' : 'left-end side'
  return /^\d/.test(sideNoun(train, -y)) ? sideNoun(train, -y) : `${sideNoun(train, -y)} side`
}

/** Which limits of this foot the plan stands on; a foot that may not move there is bound by none. */
function boundsOf(
  train: Train,
  foot: Foot,
  moves: Record<FootMoveName, Micrometres>,
  after?: Centre,
): Bound[] {
  const { hole } = foot
  const reached: FootLimit[] =
    hole &&
    after &&
    foot.maySlide &&
    Math.hypot(after.x, after.y) >= holeRadius(hole, train.plan.reserve) - onTheLimit
      ? ['hole']
      : []
  for (const { fact, move, low, high } of footBands(foot)) {
    if (!(move === 'shim' ? foot.mayShim : foot.maySlide)) continue
    if (moves[move] <= low + onTheLimit) reached.push(limitSides[fact].lower)
    if (moves[move] >= high - onTheLimit) reached.push(limitSides[fact].upper)
  }
  return reached.flatMap((limit) => footLimitWords[limit].bound ?? [])
}
