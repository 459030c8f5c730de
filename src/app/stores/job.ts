import { defineStore } from 'pinia'
import { answersFollowed, followed } from '../../document/edits/followed'
import { valueAt, withValue, type Path } from '../../document/place'
import { switchUnits } from '../../document/edits/switchUnits'
import { withPagesOf } from '../../engine/fieldwork/loop/record'
import type { TrainDocument } from '../../document/schema'
import type { RecordPage } from '../../document/work'
import { saidRight } from '../../document/asked'
import type { Unusual } from '../../document/unusual'
import { placeOf } from '../../document/refusal'
import type { DocumentUnits } from '../../mechanics/units'
import type { Reply } from '../../worker/messages'
import { useAllowance } from './allowance'
import { heldBodies } from './holding'
import { useHistory, type SheetState } from './history'
import { samePlan, useJobState } from './jobState'
import { usePlan } from './plan'

/** A share that stood so long (ms) is planned with all that goes with a plan; before, at once and without prices. */
const settled = 250

/**
 * The job on the sheet: its document as it stands, finished or not, what was typed and is no value
 * yet, and what was done to it. Every change goes through `edit`, is planned at once and can be undone.
 */
export const useJob = defineStore('job', () => {
  const plan = usePlan()
  const history = useHistory()
  const allowance = useAllowance()
  const state = useJobState()
  const { document, entries, hand, file, refusal, faults, planned } = state
  const { opened, revision, lastEdit, trying, share } = state
  let settling: ReturnType<typeof setTimeout> | undefined

  async function work(kind: 'document' | 'along' = 'document'): Promise<void> {
    const asked = document.value
    if (!asked) return
    await plan.work({ kind, document: asked }, (reply) => {
      take(asked, reply)
    })
  }

  /** Plans again with twice the work, and has everything beside the plan asked again with that. */
  async function goOn(): Promise<void> {
    allowance.times *= 2
    await work()
  }

  function take(asked: TrainDocument, reply: Reply | undefined): void {
    if (document.value !== asked) return
    if (reply?.kind === 'refused') faults.value = reply.refused
    if (reply?.kind !== 'drawn') return
    faults.value = []
    planned.value = asked
  }

  /** Makes a change that can be undone; one that changes nothing leaves no trace. */
  async function edit(
    name: string,
    change: (state: SheetState) => Partial<SheetState>,
    {
      key,
      along = false,
    }: {
      readonly key?: string
      readonly along?: boolean
    } = {},
  ): Promise<void> {
    if (!document.value) return
    keepTrial()
    const before: SheetState = {
      document: document.value,
      entries: entries.value,
      hand: hand.value,
    }
    const after: SheetState = { ...before, ...change(before) }
    if (
      after.document === before.document &&
      after.entries === before.entries &&
      after.hand === before.hand
    )
      return
    history.add({ name, key, before, after })
    await show(after, name, along)
  }

  async function show(state: SheetState, name: string, along = false): Promise<void> {
    clearTimeout(settling)
    const was = document.value
    const same = state.document === was
    document.value = state.document
    entries.value = state.entries
    hand.value = state.hand
    lastEdit.value = name
    revision.value++
    if (along) settling = setTimeout(() => void work(), settled)
    // the plan does not depend on the record
    if (was && planned.value === was && samePlan(was, state.document))
      planned.value = state.document
    else if (!same) await work(along ? 'along' : 'document')
  }

  /**
   * Writes a value, or takes it away with undefined; a wrong entry that stood there, or at the place that
   * is its key, is gone.
   */
  async function set(path: Path, value: unknown, name: string, key?: string): Promise<void> {
    await edit(
      name,
      (state) => ({
        document: Object.is(valueAt(state.document, path), value)
          ? state.document
          : withValue(state.document, path, value),
        entries: withoutEntry(withoutEntry(state.entries, placeOf(path)), key ?? ''),
      }),
      key === undefined ? {} : { key },
    )
  }

  /**
   * Keeps what was typed and is no value; the value that stood there before stays planned, not the one that
   * the first keys made.
   */
  async function mistype(path: Path, text: string, name: string, key: string): Promise<void> {
    const before = history.begun(key)
    await edit(
      name,
      (state) => ({
        document: before?.document ?? state.document,
        entries: { ...state.entries, [placeOf(path)]: text },
      }),
      { key },
    )
  }

  /** Changes the document as a whole; entries that are no values yet go with what they were typed for. */
  async function change(
    name: string,
    next: (document: TrainDocument) => TrainDocument,
    key?: string,
  ): Promise<void> {
    await edit(
      name,
      (state) => {
        const after = answersFollowed(state.document, next(state.document))
        return { document: after, entries: followed(state.entries, state.document, after) }
      },
      key === undefined ? {} : { key },
    )
  }

  /** Somebody says that a value that looks like a slip is right. */
  async function sayRight(asked: Unusual): Promise<void> {
    await change(`said that ${asked.said} is right`, (now) => saidRight(now, asked))
  }

  async function undo(): Promise<void> {
    if (trying.value) return endTrial()
    const edited = history.undo()
    if (edited) await show(withPages(edited.before), `took back: ${edited.name}`)
  }

  async function redo(): Promise<void> {
    const edited = history.redo()
    if (edited) await show(withPages(edited.after), edited.name)
  }

  /** Gives up what is being typed at a place. */
  async function giveUp(key: string): Promise<void> {
    const edited = history.drop(key)
    if (edited) await show(withPages(edited.before), `left: ${edited.name}`)
  }

  /** Puts a state on the sheet as one edit: an earlier version, another tab's. */
  async function restore(state: SheetState, name: string): Promise<void> {
    await edit(name, () => withPages(state))
  }

  const withPages = (state: SheetState): SheetState => ({
    ...state,
    document: withPagesOf(state.document, document.value),
  })

  /** Writes pages into the record. They stay: nothing takes them back. */
  async function writePages(name: string, pages: readonly RecordPage[]): Promise<void> {
    if (!document.value) return
    keepTrial()
    history.close()
    const next = withValue(document.value, ['record', 'pages'], pages)
    await show({ document: next, entries: entries.value, hand: hand.value }, name)
  }

  /** Puts another job on the sheet; what was done before belongs to the other one. */
  async function adopt(state: SheetState & { readonly name: string }): Promise<void> {
    clearTimeout(settling)
    history.clear()
    allowance.times = 1
    trying.value = undefined
    planned.value = undefined
    plan.clear()
    document.value = state.document
    entries.value = state.entries
    hand.value = state.hand
    file.value = state.name
    refusal.value = undefined
    faults.value = []
    lastEdit.value = ''
    opened.value++
    await work()
  }

  async function hold(body: string, whether: boolean): Promise<void> {
    const name = heldBodies.nameOf(document.value, body)
    await change(`${whether ? 'fixed' : 'released'} ${name}`, (now) =>
      heldBodies.set(now, (id) => (id === body ? whether : undefined)),
    )
  }

  /** Holds these bodies and no others; what is anchored stays as it is. */
  async function holdOnly(bodies: readonly string[]): Promise<void> {
    await change('chose what is fixed', (now) =>
      heldBodies.set(now, (id, anchored) => (anchored ? undefined : bodies.includes(id))),
    )
  }

  async function setShare(next: number): Promise<void> {
    if (next === share.value) return
    await edit(
      'changed the tolerance to use',
      (state) => ({ document: withValue(state.document, ['plan', 'share'], next) }),
      { key: 'plan.share', along: true },
    )
  }

  async function useUnits(to: DocumentUnits): Promise<void> {
    await change('switched units', (now) => switchUnits(now, to))
  }

  /** Puts a changed copy on the sheet; the train as it is waits, and nothing is kept of the copy. */
  async function tryOut(next: TrainDocument): Promise<void> {
    if (!document.value) return
    trying.value ??= { document: document.value, entries: entries.value, hand: hand.value }
    document.value = next
    // what is tried is seen as it is planned
    hand.value = undefined
    await work()
  }

  /** Puts the train as it is back on the sheet. */
  async function endTrial(): Promise<void> {
    const was = trying.value
    trying.value = undefined
    if (!was) return
    document.value = was.document
    hand.value = was.hand
    await work()
  }

  /** From here on the copy is the train. */
  function keepTrial(name = 'kept what was tried'): void {
    const was = trying.value
    trying.value = undefined
    if (!was || !document.value) return
    history.add({
      name,
      key: undefined,
      before: was,
      after: { document: document.value, entries: entries.value },
    })
    lastEdit.value = name
    revision.value++
  }

  return {
    ...state,
    ...{ undoes: history.undoes, redoes: history.redoes, count: history.count },
    ...{ edit, set, mistype, change, sayRight, undo, redo, giveUp, closeEdit: history.close },
    ...{ restore, adopt, writePages, goOn },
    ...{ hold, holdOnly, setShare, useUnits, tryOut, endTrial, keepTrial },
  }
})

function withoutEntry(
  entries: Readonly<Record<string, string>>,
  place: string,
): Readonly<Record<string, string>> {
  if (!(place in entries)) return entries
  return Object.fromEntries(Object.entries(entries).filter(([key]) => key !== place))
}
