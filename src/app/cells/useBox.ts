import { computed, ref, watch, type ComputedRef } from 'vue'
import { editCell, editing, takeCell, typedOver } from './cellGrid'

type Field = HTMLInputElement | HTMLTextAreaElement

/** What a cell with text in it says to its box. */
interface Asked {
  /** What stands there while nobody types. */
  readonly shown: () => string
  /** Takes the text as it is after a key. */
  readonly take: (text: string) => void
  /** Takes back all that was typed since one came here. */
  readonly giveUp: () => void
  readonly entered?: () => void
  readonly left?: () => void
}

interface Box {
  /** Whether one is in it. */
  readonly inside: () => boolean
  /** What stands in it. */
  readonly text: ComputedRef<string>
  /** Lets go of what was typed, for what stands there now: somebody else changed it after it was taken. */
  readonly follow: () => void
  readonly on: {
    readonly focus: (event: FocusEvent) => void
    readonly blur: () => void
    readonly mousedown: (event: MouseEvent) => void
    readonly input: (event: Event) => void
    readonly keydown: (event: KeyboardEvent) => void
  }
}

/** Keys that move a caret. */
const caretKeys: ReadonlySet<string> = new Set([
  ...['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'],
])

/**
 * How every box with text behaves, as a spreadsheet's: whoever comes to it has all of it chosen, and typing
 * replaces it; a second click, F2 or Enter edits it with a caret; Escape gives back what stood before. A caret
 * that nobody asked for would put what is typed beside what stands there: 7 before 500 is 7500.
 */
export function useBox(asked: Asked): Box {
  /** The field of the page, known once somebody has come to it. */
  let box: Field | undefined
  /** What was typed since one came here, as it was typed. */
  const typed = ref<string>()
  const text = computed(() => typed.value ?? asked.shown())
  const isLong = () => box instanceof HTMLTextAreaElement
  const inside = () => box !== undefined && document.activeElement === box

  /** Neither typed over nor edited any more. */
  function rest(): void {
    typed.value = undefined
    if (!box) return
    editCell(box, false)
    delete box.dataset['typed']
    delete box.dataset['pressed']
  }

  function choose(): void {
    rest()
    box?.select()
  }

  function edit(at: Field): void {
    editCell(at, true)
    at.setSelectionRange(at.value.length, at.value.length)
  }

  function focus(event: FocusEvent): void {
    box = event.currentTarget as Field
    choose()
    asked.entered?.()
  }

  function blur(): void {
    rest()
    asked.left?.()
  }

  /** The first press chooses; the next one, or one into what is being typed, sets the caret where it points. */
  function mousedown(event: MouseEvent): void {
    if (event.button === 1) return
    const at = event.currentTarget as Field
    if (inside() && (typedOver(at) || at.dataset['pressed'] === 'true')) editCell(at, true)
    if (inside() && editing(at)) return
    event.preventDefault()
    if (inside()) at.select()
    else at.focus()
    if (event.button === 0) at.dataset['pressed'] = 'true'
  }

  function input(event: Event): void {
    const at = event.currentTarget as Field
    typed.value = at.value
    at.dataset['typed'] = 'true'
    // lines of text are walked with the same keys as cells
    if (isLong()) editCell(at, true)
    asked.take(at.value)
  }

  function escape(event: KeyboardEvent, at: Field): void {
    if (!editing(at) && !typedOver(at)) return
    event.stopPropagation()
    if (typedOver(at)) asked.giveUp()
    choose()
  }

  function keydown(event: KeyboardEvent): void {
    const at = event.currentTarget as Field
    if (event.ctrlKey || event.metaKey || event.altKey) {
      // no caret beside what is chosen or typed over; Alt with an arrow is the browser's own
      if (caretKeys.has(event.key) && !event.altKey && !editing(at)) event.preventDefault()
      return
    }
    if (event.key === 'Escape') escape(event, at)
    else if (event.key === 'F2') {
      edit(at)
      event.preventDefault()
    } else if (event.key === 'Enter') enter(event, at)
    // the table walks; where it cannot, all stays chosen
    else if (caretKeys.has(event.key) && !editing(at)) event.preventDefault()
  }

  /** Enter begins to edit; what is typed or edited is taken by the table, or here where there is none. */
  function enter(event: KeyboardEvent, at: Field): void {
    if (!editing(at) && !typedOver(at) && !at.closest('form')) {
      edit(at)
      event.preventDefault()
    } else if (!at.closest('.cell-grid, form') && !isLong()) {
      takeCell(at)
      event.preventDefault()
    }
  }

  // an undo, another tab or a picture that is dragged changes what stands in the box
  watch(asked.shown, () => {
    if (box && !typedOver(box)) typed.value = undefined
  })
  watch(
    text,
    () => {
      if (box && inside() && !editing(box) && !typedOver(box)) box.select()
    },
    { flush: 'post' },
  )

  return { inside, text, follow: rest, on: { focus, blur, mousedown, input, keydown } }
}
