import { toldNought } from '../language/amounts'
import type { Body, Train } from '../mechanics/train'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { towardSide } from '../language/sides'

/** Which side is which, and how signs are meant: said on every page where either is read. */
export const sidesInWords = (train: Train): string =>
  `Seen from the ${train.seenFrom} end, 3 o'clock is ${towardSide(train, 1)} and 9 o'clock is ${towardSide(train, -1)}. Left and right are those of the drawing.`

export const signInWords = 'A dial reads + when its stem is pushed in.'

/** Bodies that the plan moves by themselves, as far as the digits show. */
export function movedBodies(train: Train, answer: PlanAnswer): Body[] {
  const shows = (value: number) => !toldNought(value, train.units)
  return train.bodies.filter(
    (body) =>
      !body.held &&
      (shows(answer.bodies?.find(({ id }) => id === body.id)?.move.tx ?? 0) ||
        (answer.feet ?? []).some(
          (foot) => foot.body === body.id && (shows(foot.shim) || shows(foot.side)),
        )),
  )
}

/** A sentence with its full stop. */
export const sentence = (text: string): string => (/[.!?]$/.test(text.trim()) ? text : `${text}.`)
