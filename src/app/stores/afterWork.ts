import { computed, type ComputedRef } from 'vue'
import { afterWork, type AfterWork } from '../../engine/fieldwork/loop/afterWork'
import { useJob } from './job'
import { usePlan } from './plan'
import { useWork } from './work'

/** What the loop says of the plan on the sheet; undefined before anything was done and read again, and of a hand plan. */
export function useAfterWork(): ComputedRef<AfterWork | undefined> {
  const job = useJob()
  const plan = usePlan()
  const work = useWork()
  return computed(() => {
    const { document, byHand } = job
    const { drawing } = plan
    if (!document || !drawing || byHand) return undefined
    // until the work is worked out anew nobody knows whether the sheet is ready
    const ready = work.old ? undefined : work.work?.ready
    return afterWork(document, drawing.train, drawing.answer, ready)
  })
}
