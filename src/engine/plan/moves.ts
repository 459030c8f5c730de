import type { Micrometres } from '../../mechanics/units'
import type { MovesAnswer } from './answer'

/** Whether an answer says where every body comes to stand, moved or not. */
export const hasMoves = <Answer extends object>(
  answer: Answer,
): answer is Extract<Answer, MovesAnswer> => 'bodies' in answer

/** How far a body moves along the train, + to the right (um). */
export const alongOf = ({ bodies }: Pick<MovesAnswer, 'bodies'>, id: string): Micrometres =>
  bodies.find((body) => body.id === id)?.move.tx ?? 0
