import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import { unchanged } from '../../scene/unchanged'
import type { Train } from '../../mechanics/train'
import type { Drawing, Reply } from '../../worker/messages'
import { useAllowance } from './allowance'
import { Planner, type PlannerTrouble } from '../services/planner'

/** The plan on the sheet. It is replaced whole; while a newer one is worked out it stays, and says so. */
export const usePlan = defineStore('plan', () => {
  /** The planner does not work; undefined while it does. */
  const trouble = shallowRef<PlannerTrouble>()
  const planner = new Planner((now) => (trouble.value = now))
  planner.wake()
  const allowance = useAllowance()
  const drawing = shallowRef<Drawing>()
  const working = ref(false)
  const failure = ref('')
  let latest = 0

  /**
   * The train of the plan, for all that does not depend on the share asked for: the same object for as
   * long as nothing else changes.
   */
  const train = computed<Train | undefined>((before) => {
    const now = drawing.value?.train
    if (!now || !before) return now
    return unchanged(before, { ...now, plan: { ...now.plan, share: before.plan.share } })
  })

  /**
   * Asks for a plan and shows it; whoever asked takes the reply at once, so that all that it changes is drawn
   * together. A plan that was made ahead is on the sheet when this returns.
   */
  function work(
    question: Parameters<Planner['ask']>[0],
    take: (reply: Reply | undefined) => void,
  ): Promise<void> | undefined {
    const turn = ++latest
    const reply = planner.ask({ ...question, work: allowance.times })
    const hear = (now: Reply | undefined): void => {
      heard(now, turn)
      take(now)
    }
    if (!(reply instanceof Promise)) {
      hear(reply)
      return undefined
    }
    working.value = true
    return reply.then(hear)
  }

  function heard(reply: Reply | undefined, turn: number): void {
    if (turn === latest) working.value = false
    if (reply?.kind === 'drawn') {
      drawing.value = reply.drawing
      failure.value = ''
    }
    if (reply?.kind === 'failed') failure.value = reply.why
  }

  /** Takes the plan away: another job is on the sheet. */
  function clear(): void {
    drawing.value = undefined
    failure.value = ''
  }

  /** Somebody is about to change the share: its plans are made ahead from now on. */
  const reach = (): void => {
    planner.reach()
  }

  const startAgain = (): void => {
    planner.startAgain()
  }

  return { drawing, train, working, failure, trouble, work, clear, reach, startAgain }
})
