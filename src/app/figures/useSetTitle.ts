import { computed, type ComputedRef } from 'vue'
import type { DraftSet } from '../../document/edits/readingPresets'
import { setTitle, setUp } from '../../document/words/setWords'
import { useJob } from '../stores/job'

/** What a reading set of a coupling is headed, and how it is set up, in words; "" while there is no such coupling. */
export function useSetTitle(props: Readonly<{ coupling: number; index: number; set: DraftSet }>): {
  readonly heading: ComputedRef<string>
  readonly words: ComputedRef<string>
} {
  const job = useJob()
  const joint = computed(() => job.document?.couplings[props.coupling])
  const heading = computed(() =>
    job.document && joint.value
      ? setTitle(job.document, joint.value, props.set, props.index, job.units)
      : '',
  )
  const words = computed(() =>
    job.document && joint.value ? setUp(job.document, joint.value, props.set) : '',
  )
  return { heading, words }
}
