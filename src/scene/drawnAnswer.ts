import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { MovesAnswer } from '../engine/plan/answer'
import type { HandAnswer } from '../engine/studies/hand/handAnswer'

/** What a sheet draws: a plan, or where somebody put the machines by hand. */
export type DrawnAnswer = PlanAnswer | HandAnswer

/** An answer that says where every body comes to stand, moved or not. */
export type AnswerWithMoves = Extract<DrawnAnswer, MovesAnswer>
