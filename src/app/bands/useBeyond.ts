import { useEventListener } from '@vueuse/core'
import { computed, onMounted, ref, watch, type Ref } from 'vue'
import { counted } from '../../language/names'
import type { MachineSlot } from '../../scene/sheet'

/** Less of its middle than this (px) inside the window is out of sight. */
const edge = 8

/**
 * Machines of a long train that lie beyond the sides of the window, where the sheet scrolls sideways.
 * @param drawn what begins where x is 0 px in `slots`
 */
export function useBeyond(drawn: Ref<HTMLElement | null>, slots: () => readonly MachineSlot[]) {
  /** The part of what is drawn that is in sight (px). */
  const seen = ref<readonly [from: number, to: number]>([0, Infinity])
  const page = () => drawn.value?.closest<HTMLElement>('.page')
  function look(): void {
    const [at, window] = [drawn.value, page()].map((one) => one?.getBoundingClientRect())
    if (!at || !window) return
    const name = drawn.value?.closest<HTMLElement>('.band-body')?.offsetLeft ?? 0
    seen.value = [window.left + name - at.left, window.right - at.left]
  }
  useEventListener(page, 'scroll', look, { passive: true })
  useEventListener('resize', look)
  onMounted(look)
  watch(slots, look, { flush: 'post' })

  const middle = ({ head }: MachineSlot): number => head.left + head.width / 2
  const beyond = computed(() => {
    const [from, to] = seen.value
    return [
      { by: -1, way: 'left', count: slots().filter((one) => middle(one) < from + edge).length },
      { by: 1, way: 'right', count: slots().filter((one) => middle(one) > to - edge).length },
    ].flatMap(({ by, way, count }) =>
      count === 0
        ? []
        : [{ by, words: `${counted(count, 'more machine', 'more machines')} to the ${way}` }],
    )
  })
  /** Brings what lies beyond one side into sight, some of what was seen with it. */
  function go(by: number): void {
    const room = page()
    const [from, to] = seen.value
    room?.scrollBy({ left: by * 0.75 * (to - from) })
  }
  return { beyond, go }
}
