import { defineStore } from 'pinia'
import { computed, shallowRef, watch } from 'vue'
import { type Waiver, workRecordOf } from '../../document/work'
import type { SureStage } from '../../engine/chance/answer'
import type { ChanceAlong } from '../../engine/chanceAlong'
import { readyName } from '../../engine/fieldwork/ready/readySentence'
import type { WorkCard } from '../../engine/fieldwork/steps/cards'
import { stepsDone } from '../../engine/fieldwork/loop/stepsDone'
import { withValue } from '../../document/place'
import type { TrainDocument } from '../../document/schema'
import type { Work } from '../../worker/analysisMessages'
import { Analyst } from '../services/analyst'
import { Later } from '../services/later'
import { useAllowance } from './allowance'
import { useJob } from './job'
import { usePlan } from './plan'

/** How sure a plan is, as far as it is worked out. */
interface SureSoFar {
  readonly stage: NonNullable<SureStage['sure']>
  readonly along: readonly ChanceAlong[]
  /** Whether nothing more of it is to come. */
  readonly whole: boolean
}

/** The words of the steps: without them there is nothing to read of the work. */
const telling = new Later(async () => ({
  ...(await import('../../engine/fieldwork/steps/instructions')),
  ...(await import('../../engine/fieldwork/steps/cards')),
}))

/** A plan that stood so long (ms) is turned into work. */
const settled = 250

/** From plan to work: real shims, the order of steps, whether it may begin; and what was agreed to or waived. */
export const useWork = defineStore('work', () => {
  const job = useJob()
  const plan = usePlan()
  const allowance = useAllowance()
  const work = shallowRef<Work>()
  /** What `work` belongs to, and what was last asked about. */
  const of = shallowRef<TrainDocument>()
  let about: TrainDocument | undefined
  const failure = shallowRef('')
  /** How sure the plan is, once it is known, and the chances along its trade-off. */
  const sure = shallowRef<SureSoFar>()
  let asked = 0
  let timer: ReturnType<typeof setTimeout> | undefined

  const analyst = new Analyst((reply) => {
    if (reply.id !== asked) return
    if (reply.kind === 'work') {
      void tell()
      of.value = about
      work.value = reply.work
      sure.value = undefined
      failure.value = ''
    }
    if (reply.kind === 'sure') {
      const { sure: stage, along, whole } = reply
      sure.value = { stage, along, whole }
    }
    if (reply.kind === 'failed') {
      if (of.value !== about) work.value = undefined
      of.value = about
      failure.value = reply.why
    }
  })

  async function tell(): Promise<void> {
    try {
      await telling.get()
    } catch {
      failure.value = `the words of the steps could not be loaded: ${telling.fault.value}; the next change tries again`
    }
  }

  /** True while what is known belongs to a document before. */
  const old = computed(() => of.value !== job.document)
  /**
   * True while what is shown belongs to another plan than the one on the sheet. While a newer plan is being worked out
   * the work stays beside the plan it belongs to: the sheet says of both at once that they wait.
   */
  const behind = computed(() => of.value !== (plan.working ? job.planned : job.document))

  watch([() => job.planned, () => plan.working], () => {
    clearTimeout(timer)
    timer = setTimeout(() => {
      const { document, planned } = job
      if (!document || document !== planned || plan.working || document === about) return
      about = document
      asked = analyst.ask({ kind: 'work', document, work: allowance.times })
    }, settled)
  })
  watch(
    () => allowance.times,
    () => {
      of.value = about = undefined
    },
    { flush: 'sync' },
  )
  watch(
    () => job.opened,
    () => {
      work.value = of.value = about = sure.value = undefined
      asked = 0
    },
    { flush: 'sync' },
  )

  /** The steps as every face tells them; none where there is no plan. */
  const instructions = computed(() => {
    const { steps } = work.value ?? {}
    const words = telling.value.value
    return plan.train && steps && words ? words.instructionsOf(plan.train, steps) : []
  })

  /** The same object while something else of the document changes, so that nothing of it is read anew. */
  const recorded = computed(() => job.document?.record)
  const record = computed(() => workRecordOf(recorded.value) ?? {})

  /** The same card by card, as they are shown at the machine, and how many steps are done. */
  const cards = computed<readonly WorkCard[]>(() =>
    plan.train ? (telling.value.value?.workCards(plan.train, instructions.value) ?? []) : [],
  )
  const done = computed(() =>
    stepsDone(cards.value, record.value.work ?? [], record.value.again ?? []),
  )

  /** Somebody agrees that a coupling's readings mean what the sheet says. */
  async function confirm(coupling: string, name: string, says: string, by: string): Promise<void> {
    const rest = (record.value.signs ?? []).filter((check) => check.coupling !== coupling)
    const sign = { coupling, says, ...(by !== '' && { by }), when: new Date().toISOString() }
    await job.change(`confirmed what ${name} reads`, (now) =>
      withValue(now, ['record', 'signs'], [...rest, sign]),
    )
  }

  async function unconfirm(coupling: string, name: string): Promise<void> {
    const rest = (record.value.signs ?? []).filter((check) => check.coupling !== coupling)
    await job.change(`took back that ${name} reads so`, (now) =>
      withValue(now, ['record', 'signs'], rest),
    )
  }

  /** Somebody goes without something, by name and with a reason. */
  async function waive(waiver: Waiver): Promise<void> {
    await job.change(`accepted without ${readyName(waiver.what)}`, (now) =>
      withValue(
        now,
        ['record', 'waivers'],
        [...(record.value.waivers ?? []), { ...waiver, when: new Date().toISOString() }],
      ),
    )
  }

  async function unwaive(what: Waiver['what'], where: string): Promise<void> {
    const rest = (record.value.waivers ?? []).filter(
      (one) => one.what !== what || (one.where !== undefined && one.where !== where),
    )
    await job.change(`took back: accepted without ${readyName(what)}`, (now) =>
      withValue(now, ['record', 'waivers'], rest),
    )
  }

  /** Puts the steps of the work in another order; none: the order the rules give. */
  async function reorder(order: readonly string[] | undefined): Promise<void> {
    await job.change(order ? 'changed the order of work' : 'took the usual order of work', (now) =>
      withValue(now, ['record', 'order'], order),
    )
  }

  return {
    ...{ work, sure, instructions, cards, done, old, behind, failure, record },
    ...{ confirm, unconfirm, waive, unwaive, reorder },
  }
})
