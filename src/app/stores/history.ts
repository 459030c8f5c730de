import { computed, shallowRef } from 'vue'
import type { HandPlan } from '../../engine/studies/hand/handPlan'
import type { TrainDocument } from '../../document/schema'

/** All that stands on the sheet: the document, and entries that are no values yet, by place, as typed. */
export interface SheetState {
  readonly document: TrainDocument
  readonly entries: Readonly<Record<string, string>>
  /** Where machines were put by hand; absent while the sheet shows the plan. */
  readonly hand?: HandPlan | undefined
}

/** One thing somebody did, with its name in the past tense: "changed the pack at gear foot 2". */
export interface Edit {
  readonly name: string
  /** Edits with one key that follow each other are one, until it is closed: a number being typed. */
  readonly key: string | undefined
  readonly before: SheetState
  readonly after: SheetState
}

/** Edits that were made, and those taken back, which can be made again. States are kept whole: they share what did not change. */
export function useHistory() {
  const past = shallowRef<readonly Edit[]>([])
  const future = shallowRef<readonly Edit[]>([])
  let open = false

  /** Adds an edit, or widens the one being made. */
  function add(edit: Edit): void {
    const last = past.value.at(-1)
    const same = open && edit.key !== undefined && last?.key === edit.key
    past.value = same
      ? [...past.value.slice(0, -1), { ...edit, before: last.before }]
      : [...past.value, edit]
    future.value = []
    open = edit.key !== undefined
  }

  /** The next edit is one of its own. */
  function close(): void {
    open = false
  }

  /** Takes the last edit back; undefined where there is none. */
  function undo(): Edit | undefined {
    const edit = past.value.at(-1)
    if (!edit) return undefined
    past.value = past.value.slice(0, -1)
    future.value = [edit, ...future.value]
    open = false
    return edit
  }

  function redo(): Edit | undefined {
    const [edit, ...rest] = future.value
    if (!edit) return undefined
    past.value = [...past.value, edit]
    future.value = rest
    open = false
    return edit
  }

  /** The sheet before the edit that is being made under a key. */
  const begun = (key: string): SheetState | undefined => {
    const last = past.value.at(-1)
    return open && last?.key === key ? last.before : undefined
  }

  /** Gives the edit being made up, as if it had never begun. */
  function drop(key: string): Edit | undefined {
    const last = past.value.at(-1)
    if (!open || last?.key !== key) return undefined
    past.value = past.value.slice(0, -1)
    open = false
    return last
  }

  function clear(): void {
    past.value = []
    future.value = []
    open = false
  }

  return {
    add,
    close,
    undo,
    redo,
    drop,
    begun,
    clear,
    /** Name of what undo takes back; "" where there is nothing. */
    undoes: computed(() => past.value.at(-1)?.name ?? ''),
    redoes: computed(() => future.value[0]?.name ?? ''),
    count: computed(() => past.value.length),
  }
}
