import { computed, ref, shallowRef, watch } from 'vue'
import type { HandPlan } from '../../engine/studies/hand/handPlan'
import { askedOf } from '../../document/asked'
import { unchanged } from '../../scene/unchanged'
import type { TrainDocument } from '../../document/schema'
import { valueAt } from '../../document/place'
import type { Refusal } from '../../document/refusal'
import type { DocumentUnits } from '../../mechanics/units'
import { heldBodies } from './holding'
import type { SheetState } from './history'

/** A file that could not be read: what it holds stays to be looked at, the sheet keeps the last good one. */
export interface RefusedFile {
  readonly file: string
  readonly text: string
  readonly refused: readonly Refusal[]
}

/** All that is known of the job on the sheet; `useJob` alone changes it. */
export function useJobState() {
  const document = shallowRef<TrainDocument>()
  const entries = shallowRef<Readonly<Record<string, string>>>({})
  /** Where machines were put by hand, while that is on the sheet instead of the plan. */
  const hand = shallowRef<HandPlan>()
  const byHand = computed(() => hand.value !== undefined)
  const file = ref('')
  const refusal = shallowRef<RefusedFile>()
  /** The document as far as plans depend on it: the same object while only the record changes. */
  const problem = shallowRef<TrainDocument>()
  watch(
    document,
    (now) => {
      if (!now || !problem.value || !samePlan(now, problem.value)) problem.value = now
    },
    { flush: 'sync' },
  )
  /** Why the document as it stands cannot be planned, by place; none while it can. */
  const faults = shallowRef<readonly Refusal[]>([])
  /** The document that the plan on the sheet belongs to. */
  const planned = shallowRef<TrainDocument>()
  /** Files opened so far: a change of it says that another train is on the sheet. */
  const opened = ref(0)
  /** Grows with every edit. */
  const revision = ref(0)
  const lastEdit = ref('')
  /** The train as it is, while something is tried out on a copy. */
  const trying = shallowRef<SheetState>()
  const share = computed(() => document.value?.plan?.share ?? 1)
  const held = computed(() => heldBodies.heldOf(document.value))
  /** The plan on the sheet is of an earlier document: this one cannot be planned, or holds wrong entries. */
  const stale = computed(
    () => faults.value.length > 0 || Object.keys(entries.value).length > 0 || !planned.value,
  )
  /** Values that look like slips, and of which nobody has said that they are right. */
  const asked = computed(() => (document.value ? askedOf(document.value) : []))
  const units = computed<DocumentUnits>((before) =>
    unchanged(before, {
      length: document.value?.units.length ?? 'mm',
      fine: document.value?.units.fine ?? 'mm',
      temperature: document.value?.units.temperature ?? 'C',
    }),
  )

  return {
    ...{ document, problem, entries, hand, byHand, file, refusal, faults, planned },
    ...{ opened, revision, lastEdit, trying, share, held, stale, asked, units },
  }
}

/** What no plan depends on: it is kept and printed, and typing it plans nothing. */
const beside: ReadonlySet<string> = new Set<keyof TrainDocument>(['record', 'note', 'site'])

/** Whether two documents differ in nothing that a plan depends on, or tells. */
export function samePlan(a: TrainDocument, b: TrainDocument): boolean {
  const sure = ({ record }: TrainDocument) => valueAt(record, ['sure'])
  if (sure(a) !== sure(b)) return false
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof TrainDocument>
  return [...keys].every((key) => beside.has(key) || a[key] === b[key])
}
