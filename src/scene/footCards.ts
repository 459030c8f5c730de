import type { Train } from '../mechanics/train'
import type { DrawnAnswer } from './drawnAnswer'
import { footFacts, type FootFacts } from './footFacts'
import { levelsNeed, levelsOf, movingWidth, narrowestOf, type StandingFoot } from './cardLevels'
import { figureHeight, footFigure, footScales, type FootScales } from './footFigure'
import { lineMark, type Mark } from './drawings/marks'
import type { PlanView } from './planView'
import { onFarSide, sideName, upThePage } from '../language/sides'
import type { XScale } from './xScale'

/** The feet of the train: from above in the middle, each foot's card on the side where it stands. */
export interface FeetScene {
  readonly plan: PlanView
  readonly far: CardSide
  readonly near: CardSide
  /** What packs and holes are drawn by, so that it need not change while something is dragged. */
  readonly scales: FootScales
}

/** Cards of one side, the level next to the plan first. */
interface CardSide {
  readonly side: string
  readonly levels: readonly CardLevel[]
}

export interface CardLevel {
  readonly cards: readonly FootCard[]
  /** Lines from the level before (or from the plan) to the cards, in a strip `leaderHeight` high. */
  readonly leaders: readonly Mark[]
  /** Places (px) where leaders to the next level pass between the cards of this one. */
  readonly passing: readonly number[]
}

/** A foot's card where it stands on its level (px). */
export interface FootCard {
  readonly facts: FootFacts
  readonly left: number
  readonly width: number
  /** What its body is called. */
  readonly whose?: string
  readonly figure: readonly Mark[]
  readonly figureHeight: number
}

/** Narrowest page that holds all cards of a side on so many levels. */
export function feetNeed(train: Train, levels: 1 | 2): number {
  const feet = sidesOf(train)
  const side = (far: boolean) => feet.filter((foot) => foot.far === far).map(narrowestOf)
  return Math.max(...[true, false].map((far) => levelsNeed(side(far), levels)))
}

/** Every foot of the train, machines first; it is on the far side when it stands beyond the middle of its body's feet. */
const sidesOf = (train: Train): { held: boolean; far: boolean }[] =>
  train.bodies.flatMap((body) =>
    body.feet.map(({ y }) => ({ held: body.held, far: onFarSide(train, body, y) })),
  )

/** @param most scales of packs and holes that are not to be passed */
export function feetScene(
  train: Train,
  answer: DrawnAnswer,
  scale: XScale,
  plan: PlanView,
  most?: FootScales,
): FeetScene {
  const facts = footFacts(train, answer)
  const sides = sidesOf(train)
  const up = upThePage(train)
  const standing = facts.map((foot, i) => ({
    facts: foot,
    x: plan.feet[i]?.x ?? 0,
    y: plan.feet[i]?.y ?? 0,
    far: sides[i]?.far === true,
  }))
  const ofSide = (far: boolean) =>
    standing.filter((foot) => foot.far === far).sort((a, b) => a.x - b.x)
  const width = movingWidth([ofSide(true), ofSide(false)], scale.width)
  const scales = footScales(facts, width, most)
  const side = (far: boolean): CardSide => {
    const feet = ofSide(far)
    return {
      side: sideName(train, far ? up : -up),
      levels: levelsOf(feet, scale.width, far, width).map((level) => ({
        ...level,
        cards: level.cards.map(({ facts: f, left, width: wide }) => {
          const body = train.bodies[f.body]
          return {
            facts: f,
            left,
            width: wide,
            ...(body && { whose: body.name }),
            figure: footFigure(train, f, wide, scales),
            figureHeight,
          }
        }),
      })),
    }
  }
  return {
    plan: { ...plan, marks: [...plan.marks, ...standing.map((foot) => stub(foot, plan.height))] },
    far: side(true),
    near: side(false),
    scales,
  }
}

/** From a foot to the edge of the plan, where its leader begins. */
const stub = ({ x, y, far }: StandingFoot, height: number): Mark =>
  far ? lineMark(x, 0, x, y - 6, 'leader') : lineMark(x, y + 6, x, height, 'leader')
