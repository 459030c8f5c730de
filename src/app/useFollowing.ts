import { useElementVisibility, type MaybeComputedElementRef } from '@vueuse/core'
import { computed, onBeforeUnmount, ref, watch, type ComputedRef } from 'vue'
import { unchanged } from '../engine/scene/unchanged'
import { useView } from './stores/view'

/** A hand that has not moved for so long (ms) rests. */
const rest = 250
/** What is nearer to the window than this is drawn as if it were in it, so that scrolling finds it drawn. */
const near = '48px 0px'

/**
 * While a hand drags, only what is in the window is drawn at every frame. The rest follows when the hand
 * rests or lets go, and at once when it comes near the window: nobody sees it stand behind.
 * @param changes what the hand changes
 */
export function useFollowing(changes: () => unknown) {
  const view = useView()
  /** From the first change while a pointer is held down until it is let go. */
  const dragged = ref(false)
  const resting = ref(true)
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = computed(() => dragged.value && !resting.value)

  watch(
    changes,
    () => {
      if (!view.pressed) return
      dragged.value = true
      resting.value = false
      clearTimeout(timer)
      timer = setTimeout(() => (resting.value = true), rest)
    },
    { flush: 'sync' },
  )
  watch(
    () => view.pressed,
    (pressed) => {
      if (!pressed) dragged.value = false
    },
    { flush: 'sync' },
  )
  onBeforeUnmount(() => {
    clearTimeout(timer)
  })

  /** What a part of the page shows; what did not change stays the same object, and is not drawn again. */
  function following<Value>(
    part: MaybeComputedElementRef,
    value: (before: Value | undefined) => Value,
  ): ComputedRef<Value> {
    const seen = useElementVisibility(part, { rootMargin: near, initialValue: true })
    return computed((before) =>
      before !== undefined && late.value && !seen.value ? before : unchanged(before, value(before)),
    )
  }

  return { following, dragged }
}
