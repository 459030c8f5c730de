import { onBeforeUnmount, onMounted, ref, type Ref } from 'vue'

/** Width of an element's content box, kept up to date; 0 until it is on the page. */
export function useRoom(element: Readonly<Ref<HTMLElement | null>>): Readonly<Ref<number>> {
  const room = ref(0)
  const observer = new ResizeObserver(([entry]) => {
    room.value = Math.floor(entry?.contentRect.width ?? 0)
  })
  onMounted(() => {
    if (element.value) observer.observe(element.value)
  })
  onBeforeUnmount(() => {
    observer.disconnect()
  })
  return room
}
