import type { TrainDocument } from '../document/schema'
import type { Body, Train } from '../mechanics/train'
import { bodyCarried } from '../engine/fieldwork/steps/carried'
import { motionsFrom } from '../engine/fieldwork/steps/pose'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { hasMoves } from '../engine/plan/moves'

export const signInWords = 'A dial reads + when its stem is pushed in.'

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

/** What the first page is headed by: the train, and where it stands. */
export const jobTitle = ({ name, site }: Pick<TrainDocument, 'name' | 'site'>): string =>
  [name, ...(site === undefined ? [] : [site])].join(', ')
