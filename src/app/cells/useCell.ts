import { questionWords } from '../../document/asked'
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
  /** What is asked about the value, or about one in its list, and is not answered; "" where nothing is. */
  readonly asks: ComputedRef<string>
  /** Answers that it is right. */
  readonly sayRight: () => void
}

export function useCell(path: () => Path): CellFacts {
  const job = useJob()
  const place = computed(() => placeOf(path()))
  const asked = computed(() =>
    job.asked.find(({ at }) => at === place.value || at.startsWith(`${place.value}[`)),
  )
  return {
    place,
    value: computed(() => valueAt(job.document, path())),
    typed: computed(() => job.entries[place.value]),
    fault: computed(() => {
      const fault = job.faults.find(({ at }) => at === place.value)
      return fault && job.document ? faultWords(job.document, fault) : ''
    }),
    asks: computed(() => (asked.value ? questionWords(asked.value) : '')),
    sayRight: () => {
      if (asked.value) void job.sayRight(asked.value)
    },
  }
}
