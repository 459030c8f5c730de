import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { Drawing, Reply } from '../../worker/messages'
import { Planner } from '../planner'

/** The plan on the sheet. It is replaced whole; while a newer one is worked out it stays, and says so. */
export const usePlan = defineStore('plan', () => {
  const planner = new Planner()
  const drawing = shallowRef<Drawing>()
  const working = ref(false)
  const failure = ref('')
  let latest = 0

  /** Asks for a plan and shows it; the reply also goes back to whoever asked. */
  async function work(question: Parameters<Planner['ask']>[0]): Promise<Reply | undefined> {
    const turn = ++latest
    working.value = true
    const reply = await planner.ask(question)
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

  return { drawing, working, failure, work, clear, reach }
})
