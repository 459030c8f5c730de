import { defineStore } from 'pinia'
import { computed, ref, shallowRef, watch } from 'vue'
import { conflictPlaces } from '../../scene/conflictMarks'
import type { HoldList } from '../../text/holdList'
import type { TrainDocument } from '../../document/schema'
import { alongKey } from '../../worker/shareSweepKey'
import type { ReasonsAnswer } from '../../engine/fieldwork/answer'
import type { AnalysisReply, Margin } from '../../worker/analysisMessages'
import { Analyst } from '../services/analyst'
import { useAllowance } from './allowance'
import { useJob } from './job'
import { usePlan } from './plan'

/** Choices of what to hold, as far as they are solved. */
export interface HoldsSoFar {
  readonly list: HoldList
  readonly done: number
  readonly total: number | undefined
  readonly finished: boolean
  readonly stopped: boolean
}

/** A change is studied when it has stood so long (ms): a point being dragged is not. */
const settled = 180

/**
 * What is worked out beside the plan and after it: choices, trade-off, reasons, remedies. What was
 * studied of the document before stays, and says so, until there is something newer.
 */
export const useAnalysis = defineStore('analysis', () => {
  const job = useJob()
  const plan = usePlan()
  const allowance = useAllowance()
  const holds = shallowRef<HoldsSoFar>()
  const margin = shallowRef<Margin>()
  /** True while the trade-off shown belongs to other limits or another hold. */
  const marginOld = ref(false)
  const reasons = shallowRef<ReasonsAnswer>()
  /** True while reasons are looked for with more work than before. */
  const further = ref(false)
  const failure = ref('')
  /** The document that the list and the reasons belong to. */
  const studied = shallowRef<TrainDocument>()
  let keptHolds = new WeakMap<TrainDocument, HoldsSoFar>()
  let keptReasons = new WeakMap<TrainDocument, ReasonsAnswer>()
  const keptMargins = new Map<string, Margin>()
  /** How many times the usual work reasons may take; more where somebody asks to go on. */
  let reasonsWork = 1
  let [listId, stoppedId, reasonsId, marginKey] = [0, 0, 0, '']
  let timer: ReturnType<typeof setTimeout> | undefined

  const work = () => ({ work: allowance.times })

  const lists = new Analyst(heard)
  const causes = new Analyst(heard)

  /** True while what is shown belongs to a document before. */
  const stale = computed(() => studied.value !== job.problem)

  /** Parts of the sheet that the conflict is about, where there is one. */
  const places = computed(() => {
    const members = reasons.value?.conflicts[0]?.members
    const train = plan.drawing?.train
    return members && train && !stale.value && !plan.working
      ? conflictPlaces(train, members)
      : undefined
  })

  function heard(reply: AnalysisReply): void {
    const document = studied.value
    if (!document) return
    if (reply.kind === 'failed' && (reply.id === listId || reply.id === reasonsId)) {
      failure.value = reply.why
      further.value = false
    }
    // what was on its way when somebody stopped the list does not set it going again
    if (reply.kind === 'holds' && reply.id === listId && reply.id !== stoppedId) {
      const { list, done, total, finished } = reply
      holds.value = { list, done, total, finished, stopped: false }
      if (finished) keptHolds.set(document, holds.value)
    }
    if (reply.kind === 'curve' && reply.id === listId) {
      margin.value = reply.margin
      marginOld.value = false
      keptMargins.set(marginKey, margin.value)
    }
    if (reply.kind === 'reasons' && reply.id === reasonsId && reply.reasons) {
      reasons.value = reply.reasons
      further.value = false
      keptReasons.set(document, reply.reasons)
    }
  }

  function begin(): void {
    const document = job.problem
    // a document that cannot be planned cannot be studied
    if (!document || job.document !== job.planned || plan.working || document === studied.value)
      return
    studied.value = document
    failure.value = ''
    marginKey = alongKey(document)
    const kept = keptMargins.get(marginKey)
    marginOld.value = kept === undefined
    margin.value = kept ?? margin.value
    const known = keptHolds.get(document)
    if (known) holds.value = known
    else if (holds.value)
      holds.value = { ...holds.value, done: 0, total: undefined, finished: false }
    if (!known || !kept)
      listId = lists.ask({ kind: 'analysis', document, curve: kept === undefined, ...work() })
    reasons.value = keptReasons.get(document)
    reasonsWork = allowance.times
    if (plan.drawing?.answer.status !== 'impossible') causes.end()
    else if (!reasons.value) askReasons(document)
  }

  function askReasons(document: TrainDocument): void {
    reasonsId = causes.ask({ kind: 'reasons', document, work: reasonsWork })
    further.value = reasonsWork > allowance.times
  }

  /** Looks for reasons and remedies again, with ten times the work that ran out; what is known stays meanwhile. */
  function lookFurther(): void {
    if (!studied.value || stale.value || further.value || !reasons.value?.unfinished) return
    reasonsWork *= 10
    askReasons(studied.value)
  }

  /** Leaves the list of choices as it is. */
  function stop(): void {
    stoppedId = listId
    lists.stop(listId)
    if (holds.value) holds.value = { ...holds.value, stopped: true }
  }

  watch(
    [() => job.planned, () => plan.drawing, () => plan.working],
    () => {
      clearTimeout(timer)
      timer = setTimeout(begin, studied.value ? settled : 0)
    },
    { immediate: true },
  )
  // with more work everything is studied again; what is shown stays until there is more of it
  watch(
    () => allowance.times,
    () => {
      keptHolds = new WeakMap()
      keptReasons = new WeakMap()
      keptMargins.clear()
      studied.value = undefined
    },
    { flush: 'sync' },
  )
  // what was studied of another train is of no use, and would be taken for this one's
  watch(
    () => job.opened,
    () => {
      holds.value = margin.value = reasons.value = studied.value = undefined
      ;[listId, reasonsId] = [0, 0]
    },
    { flush: 'sync' },
  )

  return { places, holds, margin, marginOld, reasons, further, failure, stale, stop, lookFurther }
})
