import { computed, type ComputedRef } from 'vue'
import { faultWords } from '../../document/words/faultWords'
import { valueAt, type Path } from '../../document/place'
import { placeOf } from '../../document/refusal'
import { useJob } from '../stores/job'

/** What a cell knows of its place: the value, what was typed and is none, and why it cannot be planned. */
export interface CellFacts {
  readonly place: ComputedRef<string>
  readonly value: ComputedRef<unknown>
  readonly typed: ComputedRef<string | undefined>
  readonly fault: ComputedRef<string>
}

export function useCell(path: () => Path): CellFacts {
  const job = useJob()
  const place = computed(() => placeOf(path()))
  return {
    place,
    value: computed(() => valueAt(job.document, path())),
    typed: computed(() => job.entries[place.value]),
    fault: computed(() => {
      const fault = job.faults.find(({ at }) => at === place.value)
      return fault && job.document ? faultWords(job.document, fault) : ''
    }),
  }
}
