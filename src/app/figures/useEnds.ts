import { computed, type ComputedRef } from 'vue'
import { valueAt, type Path } from '../../document/place'
import { placeOf } from '../../document/refusal'
import { useJob } from '../stores/job'

/** Low and high end of a pair of numbers, a cell each; taken away as a whole when both are empty. */
export function useEnds(props: { readonly path: Path; readonly label: string }): {
  readonly ends: readonly { readonly index: 0 | 1; readonly word: string }[]
  /** Undefined while neither end is given. */
  readonly given: ComputedRef<readonly unknown[] | undefined>
  readonly write: (index: 0 | 1, value: number | undefined) => void
} {
  const job = useJob()
  const given = computed(() => valueAt(job.document, props.path) as readonly unknown[] | undefined)
  return {
    ends: [
      { index: 0, word: 'low end' },
      { index: 1, word: 'high end' },
    ],
    given,
    write: (index, value) => {
      const now: unknown[] = [given.value?.[0] ?? undefined, given.value?.[1] ?? undefined]
      now[index] = value
      const none = now.every((end) => end === undefined)
      void job.set(
        [...props.path],
        none ? undefined : now,
        `changed ${props.label}`,
        placeOf([...props.path, index]),
      )
    },
  }
}
