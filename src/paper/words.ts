import { toldNought } from '../language/amounts'
import type { Body, Train } from '../mechanics/train'
import { bodyCarried } from '../engine/fieldwork/steps/carried'
import { motionsFrom } from '../engine/fieldwork/steps/pose'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { MovesAnswer } from '../engine/plan/answer'
import { alongOf, hasMoves } from '../engine/plan/moves'
import { towardSide } from '../language/sides'

/** Which side is which, and how signs are meant: said on every page where either is read. */
export const sidesInWords = (train: Train): string =>
  `Seen from the ${train.seenFrom} end, 3 o'clock is ${towardSide(train, 1)} and 9 o'clock is ${towardSide(train, -1)}. Left and right are those of the drawing.`

export const signInWords = 'A dial reads + when its stem is pushed in.'

/** Bodies that the plan moves by themselves, as far as the digits show. */
export function movedBodies(train: Train, answer: MovesAnswer): Body[] {
  const shows = (value: number) => !toldNought(value, train.units)
  return train.bodies.filter(
    (body) =>
      !body.held &&
      (shows(alongOf(answer, body.id)) ||
        answer.feet.some(
          (foot) => foot.body === body.id && (shows(foot.shim) || shows(foot.side)),
        )),
  )
}

/** How far a body goes with the skid under it, by the plan: "goes with the bedplate, 1.10 mm down"; undefined where it goes nowhere. */
export const carriedWords = (train: Train, answer: PlanAnswer, body: Body): string | undefined =>
  hasMoves(answer)
    ? bodyCarried(train, motionsFrom(train, answer.bodies), train.bodies.indexOf(body))
    : undefined

/** What a dial on a held body must show: nothing, or how far it goes with the skid under it. */
export function heldWords(train: Train, answer: PlanAnswer, body: Body): string {
  const carried = carriedWords(train, answer, body)
  return carried === undefined
    ? 'A dial on it must stay at 0.'
    : `It ${carried}; a dial that stands on the skid must stay at 0.`
}

/** A sentence with its full stop. */
export const sentence = (text: string): string => (/[.!?]$/.test(text.trim()) ? text : `${text}.`)
