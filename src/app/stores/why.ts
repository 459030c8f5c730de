import { defineStore } from 'pinia'
import { ref, shallowRef, watch } from 'vue'
import type { WhyFoot } from '../../engine/studies/why/whyFootSentence'
import { Analyst } from '../services/analyst'
import { useAllowance } from './allowance'
import { useJob } from './job'
import { usePlan } from './plan'

/** The foot that was asked about, and what keeps it there. */
export const useWhy = defineStore('why', () => {
  const job = useJob()
  const plan = usePlan()
  const allowance = useAllowance()
  /** "body foot", as the cards name it; empty when none was asked about. */
  const key = ref('')
  const whys = shallowRef<readonly WhyFoot[]>()
  let id = 0

  const analyst = new Analyst((reply) => {
    if (reply.id !== id) return
    if (reply.kind === 'why') whys.value = reply.whys
    if (reply.kind === 'failed') whys.value = []
  })

  /** Asks about a foot, or puts its answer away. */
  function ask(body: string, foot: string): void {
    const now = `${body} ${foot}`
    const { document } = job
    if (key.value === now || !document) {
      key.value = ''
      return
    }
    key.value = now
    whys.value = undefined
    id = analyst.ask({ kind: 'why', document, body, foot, work: allowance.times })
  }

  // an answer about another plan would mislead
  watch(
    () => plan.drawing,
    () => {
      key.value = ''
      whys.value = undefined
    },
  )

  return { key, whys, ask }
})
