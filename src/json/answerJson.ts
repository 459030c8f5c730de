import type { Train } from '../mechanics/train'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { unfinishedOf } from '../engine/fieldwork/unfinished'
import { planJson } from './planJson'
import { readyJson } from './readyJson'
import { reasonsJson } from './reasonsJson'
import { roundedJson } from './roundedJson'
import { stepsJson } from './stepsJson'
import { sureJson } from './sureJson'

/** What planning a train answers, in the document's units and under the keys of the output contract. */
export function answerJson(answer: PlanAnswer, train: Train) {
  const { units } = train
  const open = unfinishedOf(answer)
  const { rounded, reasons, ready, steps, sure, ...plan } = { ...noStages, ...answer }
  return {
    ...planJson(plan, train),
    ...(open.length > 0 && { unfinished: open }),
    ...(rounded && roundedJson(rounded, sure?.rounded, units)),
    ...(reasons && reasonsJson(reasons, units)),
    ...(ready && { ready: readyJson(ready, units) }),
    ...(steps && { steps: stepsJson(steps, units) }),
    ...(sure && { sure: sureJson(sure.plan, units) }),
  }
}

const noStages = {
  rounded: undefined,
  reasons: undefined,
  ready: undefined,
  steps: undefined,
  sure: undefined,
}

/** An answer as a program reads it, which finds a key there or not: every key that some status has. */
export type AnswerJson = Omit<Told, 'rounded'> & { rounded?: AsRead<NonNullable<Told['rounded']>> }

type Told = AsRead<ReturnType<typeof answerJson>>

type AsRead<Answers> = Pick<Answers, keyof Answers> & {
  [Key in KeyOf<Answers>]?: ValueAt<Answers, Key>
}
type KeyOf<Answers> = Answers extends unknown ? keyof Answers : never
type ValueAt<Answers, Key extends PropertyKey> = Answers extends { [At in Key]?: infer Value }
  ? Exclude<Value, undefined>
  : never
