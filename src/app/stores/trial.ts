import { defineStore } from 'pinia'
import { shallowRef, watch } from 'vue'
import type { PlanAnswer } from '../../engine/fieldwork/answer'
import type { Remedy } from '../../engine/infeasible/remedies/answer'
import { applyRemedy } from '../../engine/infeasible/remedies/change'
import type { TrainDocument } from '../../document/schema'
import { useJob } from './job'
import { usePlan } from './plan'

/** A remedy tried on a copy: the copy is on the sheet, and the train as it is waits here. */
export const useTrial = defineStore('trial', () => {
  const job = useJob()
  const plan = usePlan()
  const before = shallowRef<{
    readonly document: TrainDocument
    readonly answer: PlanAnswer
    readonly remedy: Remedy
  }>()

  async function start(remedy: Remedy): Promise<void> {
    const { document } = job
    const answer = plan.drawing?.answer
    if (!document || !answer || before.value) return
    before.value = { document, answer, remedy }
    await job.tryOut(applyRemedy(document, remedy))
  }

  /** Puts the train as it is back on the sheet. */
  async function back(): Promise<void> {
    before.value = undefined
    await job.endTrial()
  }

  /** From here on the copy is the train. */
  function keep(): void {
    const remedy = before.value?.remedy
    before.value = undefined
    if (remedy) job.keepTrial(`took the remedy: ${remedy.kind}`)
  }

  // another train, an edit of the copy or an undo ends the trial
  watch(
    () => job.trying,
    (now) => {
      if (!now) before.value = undefined
    },
    { flush: 'sync' },
  )

  return { before, start, back, keep }
})
