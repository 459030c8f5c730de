import type { DocumentUnits } from '../mechanics/units'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { planJson } from './planJson'
import { readyJson } from './readyJson'
import { conflictsJson, membersJson, remediesJson } from './reasonsJson'
import { packsJson, roundedJson } from './roundedJson'
import { stepsJson } from './stepsJson'

/** What planning a train answers, in the document's units and under the keys of the output contract. */
export function answerJson(answer: PlanAnswer, units: DocumentUnits) {
  const { packs, rounded, conflict, conflictSentence, behind, remedies, holdsTried, ready, steps } =
    answer
  return {
    ...planJson(answer, units),
    ...(packs && { packs: packsJson(packs, units) }),
    ...(rounded && { rounded: roundedJson(rounded, units) }),
    ...(conflict && { conflict: membersJson(conflict, units) }),
    ...(conflictSentence !== undefined && { conflictSentence }),
    ...(behind && { behind: conflictsJson(behind, units) }),
    ...(remedies && { remedies: remediesJson(remedies, units) }),
    ...(holdsTried && { holdsTried }),
    ...(ready && { ready: readyJson(ready, units) }),
    ...(steps && { steps: stepsJson(steps, units) }),
  }
}

export type AnswerJson = ReturnType<typeof answerJson>
