import { useElementVisibility, useRafFn, type MaybeComputedElementRef } from '@vueuse/core'
import { defineStore } from 'pinia'
import {
  computed,
  onScopeDispose,
  ref,
  shallowRef,
  watch,
  type ComputedRef,
  type Ref,
  type ShallowRef,
} from 'vue'
import { unchanged } from '../../scene/unchanged'
import type { Train } from '../../mechanics/train'
import { useHand } from './hand'
import { usePlan } from './plan'
import { useView } from './view'

/** A hand that has not moved for so long (ms) rests. */
const rest = 250
/** A frame in which a change took longer than this (ms) gives no turn, but so many in a row at most. */
const [enough, mostPassed] = [4, 2]
/** What is nearer to the window than this is drawn as if it were in it, so that scrolling finds it drawn. */
const near = '48px 0px'

/** What there is to show. */
export interface Shown {
  /** The same object for as long as nothing but the share asked for changes. */
  readonly train: Train
  readonly drawing: NonNullable<ReturnType<typeof useHand>['drawing']>
}

/** A part of the page, and what it shows as of its last turn. */
interface Part {
  readonly seen: Readonly<Ref<boolean>>
  readonly as: ShallowRef<Shown | undefined>
  readonly held: () => boolean
}

/**
 * What the sheet shows while a hand drags: what the hand holds follows at every frame; the other parts in the
 * window take turns, one a frame, so that no frame has all to do. What is out of the window follows when the
 * hand rests or lets go, and at once when it comes near: nobody sees it stand behind.
 */
export const useFollowing = defineStore('following', () => {
  const hand = useHand()
  const plan = usePlan()
  const view = useView()
  const shown = computed<Shown | undefined>(() => {
    const { drawing } = hand
    return drawing && plan.train && { train: plan.train, drawing }
  })
  /** From the first change while a pointer is held down until it is let go. */
  const dragged = ref(false)
  const resting = ref(true)
  const late = computed(() => dragged.value && !resting.value)
  const parts: Part[] = []
  let timer: ReturnType<typeof setTimeout> | undefined
  /** The part that had the last turn. */
  let last = 0
  /** When the last change came, and how many turns were passed over since one was given. */
  let [began, passed] = [0, 0]

  /**
   * Gives the next part that stands behind its turn.
   * @param frame when the frame began
   */
  function turn(frame: number): void {
    const waiting = parts.map((_, i) => parts[(last + 1 + i) % parts.length])
    const next = waiting.find((part) => part?.as.value !== shown.value)
    if (!next) turns.pause()
    else if (began >= frame && performance.now() - began > enough && passed < mostPassed) passed++
    else {
      passed = 0
      next.as.value = shown.value
      last = parts.indexOf(next)
    }
  }
  const turns = useRafFn(
    ({ timestamp }) => {
      turn(timestamp)
    },
    { immediate: false },
  )

  function catchUp(): void {
    turns.pause()
    for (const { as } of parts) as.value = shown.value
  }

  watch(
    shown,
    (now, before) => {
      began = performance.now()
      // parts that wait for their turns may only show the same train
      if (!view.pressed || now?.train !== before?.train) catchUp()
      if (!view.pressed) return
      dragged.value = true
      resting.value = false
      clearTimeout(timer)
      timer = setTimeout(() => (resting.value = true), rest)
      // what is out of the window has no turn: it does not follow now
      for (const { seen, as, held } of parts) if (!seen.value || held()) as.value = now
      turns.resume()
    },
    { flush: 'sync' },
  )
  watch(
    () => view.pressed,
    (pressed) => {
      if (pressed) return
      dragged.value = false
      catchUp()
    },
    { flush: 'sync' },
  )

  /**
   * A part of the page that follows.
   * @param element where it stands on the page; undefined: always in the window
   * @param value what it shows; what did not change stays the same object, and is not drawn again
   * @param held whether a hand holds it
   */
  function following<Value>(
    element: MaybeComputedElementRef | undefined,
    value: (now: Shown, before: Value | undefined) => Value,
    held: () => boolean = () => false,
  ): ComputedRef<Value | undefined> {
    const seen = element
      ? useElementVisibility(element, { rootMargin: near, initialValue: true })
      : ref(true)
    const part: Part = { seen, as: shallowRef(shown.value), held }
    parts.push(part)
    onScopeDispose(() => parts.splice(parts.indexOf(part), 1))
    return computed<Value | undefined>((before) => {
      if (before !== undefined && late.value && !seen.value) return before
      return part.as.value && unchanged(before, value(part.as.value, before))
    })
  }

  return { shown, dragged, following }
})
