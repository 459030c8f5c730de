import { toldNought } from '../../language/amounts'
import type { Body, Train } from '../../mechanics/train'
import type { Micrometres } from '../../mechanics/units'
import type { MovesAnswer } from './answer'

/** Whether an answer says where every body comes to stand, moved or not. */
export const hasMoves = <Answer extends object>(
  answer: Answer,
): answer is Extract<Answer, MovesAnswer> => 'bodies' in answer

/** How far a body moves along the train, + to the right (um). */
export const alongOf = ({ bodies }: Pick<MovesAnswer, 'bodies'>, id: string): Micrometres =>
  bodies.find((body) => body.id === id)?.move.tx ?? 0

/** Bodies that the plan moves by themselves, as far as the digits show. */
export function movedBodies(train: Train, answer: Pick<MovesAnswer, 'bodies' | 'feet'>): Body[] {
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
