import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { TrainDocument } from '../../engine/train/document'
import type { Refusal } from '../../engine/train/refusal'
import { examples } from '../examples'
import { usePlan } from './plan'

/** A file that could not be read: what it holds stays to be looked at, the sheet keeps the last good one. */
export interface RefusedFile {
  readonly file: string
  readonly text: string
  readonly refused: readonly Refusal[]
}

interface Bodylike {
  readonly id: string
  readonly held?: boolean | undefined
  readonly anchored?: string | undefined
}

/** A share that stood so long (ms) is planned with all that goes with a plan; before, at once and without prices. */
const settled = 250

/** The document on the sheet, as opened and as changed since. */
export const useJob = defineStore('job', () => {
  const plan = usePlan()
  const document = shallowRef<TrainDocument>()
  const file = ref('')
  const refusal = shallowRef<RefusedFile>()
  /** Files opened so far: a change of it says that another train is on the sheet. */
  const opened = ref(0)
  let settling: ReturnType<typeof setTimeout> | undefined

  const share = computed(() => document.value?.plan?.share ?? 1)
  const held = computed(
    () =>
      new Set(
        [...(document.value?.machines ?? []), ...(document.value?.skids ?? [])]
          .filter((body) => body.held === true || body.anchored !== undefined)
          .map(({ id }) => id),
      ),
  )

  async function openText(name: string, text: string): Promise<void> {
    clearTimeout(settling)
    const reply = await plan.work({ kind: 'text', text })
    if (reply?.kind === 'refused') refusal.value = { file: name, text, refused: reply.refused }
    if (reply?.kind !== 'drawn') return
    document.value = reply.document
    opened.value++
    file.value = name
    refusal.value = undefined
  }

  async function openExample(name: string): Promise<void> {
    const example = examples.find((candidate) => candidate.file === name)
    if (example) await openText(name, await example.text())
  }

  async function openFile(picked: File): Promise<void> {
    await openText(picked.name, await picked.text())
  }

  /** Puts a changed document on the sheet and plans it. */
  async function change(next: TrainDocument): Promise<void> {
    clearTimeout(settling)
    document.value = next
    await plan.work({ kind: 'document', document: next })
  }

  async function hold(body: string, whether: boolean): Promise<void> {
    await setHeld((id) => (id === body ? whether : undefined))
  }

  /** Holds these bodies and no others; what is anchored stays as it is. */
  async function holdOnly(bodies: readonly string[]): Promise<void> {
    await setHeld((id, anchored) => (anchored ? undefined : bodies.includes(id)))
  }

  async function setHeld(
    whether: (id: string, anchored: boolean) => boolean | undefined,
  ): Promise<void> {
    const now = document.value
    if (!now) return
    const set = <T extends Bodylike>(bodies: T[]): T[] =>
      bodies.map((one) => {
        const held = whether(one.id, one.anchored !== undefined)
        return held === undefined ? one : { ...one, held }
      })
    await change({
      ...now,
      machines: set(now.machines),
      ...(now.skids && { skids: set(now.skids) }),
    })
  }

  async function setShare(next: number): Promise<void> {
    const now = document.value
    if (!now || next === share.value) return
    const changed = { ...now, plan: { ...now.plan, share: next } }
    document.value = changed
    clearTimeout(settling)
    settling = setTimeout(() => {
      if (document.value === changed) void plan.work({ kind: 'document', document: changed })
    }, settled)
    await plan.work({ kind: 'along', document: changed })
  }

  return {
    document,
    file,
    refusal,
    opened,
    share,
    held,
    openText,
    openExample,
    openFile,
    change,
    hold,
    holdOnly,
    setShare,
  }
})
