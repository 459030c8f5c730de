import { computed, shallowRef, watch } from 'vue'
import { readCode, type CodePlace } from '../../document/typedCode'
import { findCode, type CodeFound } from '../shelf/code'
import { useMachine } from '../stores/machine'
import { useShelf } from '../stores/shelf'

/** A code from a paper in the search of the shelf: what it leads to, and going there. */
export function useTypedCode() {
  const shelf = useShelf()
  const machine = useMachine()
  const read = computed(() => readCode(shelf.query))
  const found = shallowRef<CodeFound>()
  let turn = 0
  const look = (place: CodePlace) => shelf.looked((jobs) => findCode(jobs, place))

  watch(
    read,
    ({ is }) => {
      shelf.coded = is !== 'none'
    },
    { immediate: true, flush: 'sync' },
  )
  watch(
    [read, () => shelf.jobs, () => shelf.removed],
    async () => {
      const mine = ++turn
      const answer = read.value.is === 'code' ? await look(read.value.place) : undefined
      if (mine === turn) found.value = answer
    },
    { immediate: true },
  )

  /** The step that the paper says comes next; 0 where none does. */
  const step = computed(() => (read.value.is === 'code' ? read.value.place.step : 0))

  /** Opens what was found, at its step. */
  async function open(): Promise<void> {
    const at = step.value
    // asked again: whoever types it and presses Enter at once, as a hand scanner does, is ahead of what was looked up
    const now = read.value.is === 'code' ? await look(read.value.place) : undefined
    if (now?.is !== 'job' || !(await shelf.openJob(now.job.id))) return
    shelf.query = ''
    shelf.shown = false
    if (at > 0) machine.comeToStep(at)
  }

  return { read, found, step, open }
}
