import type { Ref } from 'vue'
import { useBox } from './useBox'

/** A text that is asked for on the way and is no part of the document, in a box that behaves as every other. */
export function useFreeBox(words: Ref<string>): Pick<ReturnType<typeof useBox>, 'text' | 'on'> {
  /** What stood there when one came to it. */
  let before = ''
  return useBox({
    shown: () => words.value,
    take: (now) => {
      words.value = now
    },
    giveUp: () => {
      words.value = before
    },
    entered: () => {
      before = words.value
    },
  })
}
