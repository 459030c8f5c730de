import { shallowRef, type ShallowRef } from 'vue'

/** What is done when something is taken hold of, moved and let go. */
export interface DragWork<Held, What extends readonly unknown[]> {
  /** Answers what is to be known until the end; undefined where there is nothing to hold. */
  readonly begin: (event: PointerEvent, ...what: What) => Held | undefined
  readonly move: (event: PointerEvent, held: Held) => void
  readonly end: (held: Held) => void
}

/** A drag as a component binds it: `take` to pointerdown, `on` to where the pointer moves and ends. */
export interface Drag<Held, What extends readonly unknown[]> {
  /** What is held, by a pointer or by keys that put it here; undefined while nothing is. */
  readonly held: ShallowRef<Held | undefined>
  readonly take: (event: PointerEvent, ...what: What) => void
  readonly release: () => void
  readonly on: Readonly<
    Record<'pointermove' | 'pointerup' | 'pointercancel', (event: PointerEvent) => void>
  >
}

/**
 * Something to be dragged by mouse, pen or finger. The pointer is captured, so that a drag goes on outside
 * of what is dragged; it ends when the pointer is let go or taken away, once and only if it had begun.
 */
export function useDrag<Held, What extends readonly unknown[] = []>(
  work: DragWork<Held, What>,
): Drag<Held, What> {
  const held = shallowRef<Held>()

  function take(event: PointerEvent, ...what: What): void {
    if (event.button !== 0 || !(event.currentTarget instanceof Element)) return
    event.currentTarget.setPointerCapture(event.pointerId)
    held.value = work.begin(event, ...what) ?? held.value
  }

  function pointermove(event: PointerEvent): void {
    if (held.value !== undefined) work.move(event, held.value)
  }

  function release(): void {
    const was = held.value
    if (was === undefined) return
    held.value = undefined
    work.end(was)
  }

  return { held, take, release, on: { pointermove, pointerup: release, pointercancel: release } }
}
