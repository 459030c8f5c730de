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
   * Asks for a plan and shows it; the reply also goes back to whoever asked. A plan that was made ahead is
   * on the sheet when this returns, so that it is drawn together with what asked for it.
   */
  function work(question: Parameters<Planner['ask']>[0]): ReturnType<Planner['ask']> {
    const turn = ++latest
    const reply = planner.ask({ ...question, work: allowance.times })
    if (!(reply instanceof Promise)) return heard(reply, turn)
    working.value = true
    return reply.then((later) => heard(later, turn))
  }

  function heard<Heard extends Reply | undefined>(reply: Heard, turn: number): Heard {
    if (turn === latest) working.value = false
    if (reply?.kind === 'drawn') {
      drawing.value = reply.drawing
      failure.value = ''
    }
    if (reply?.kind === 'failed') failure.value = reply.why
    return reply
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
