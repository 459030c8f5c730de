import { onBeforeUnmount, onMounted } from 'vue'

const pressable =
  'button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, a[href], [tabindex="0"]'
/** Parts of the page that a hand goes on working in; above them the headline is the place to go on from. */
const part = 'section, article, nav, aside, main, header'

interface Stand {
  readonly element: HTMLElement
  /** What can be pressed before the element in its part of the page, shown or not: asked for without a layout. */
  readonly before: readonly HTMLElement[]
  /** From the nearest parent outward: the parent, and how many of those are in it. */
  readonly around: readonly { readonly parent: Element; readonly count: number }[]
}

const pressables = (parent: Element): HTMLElement[] =>
  [...parent.querySelectorAll<HTMLElement>(pressable)].filter(
    (one) => one.tabIndex >= 0 || one.dataset['cell'] !== undefined,
  )

function standOf(element: HTMLElement): Stand {
  const parents: Element[] = []
  for (let parent = element.parentElement; parent; parent = parent.parentElement) {
    parents.push(parent)
    if (parent.matches(part)) break
  }
  const outermost = parents.at(-1)
  const all = outermost ? pressables(outermost) : []
  const before = all.slice(0, Math.max(0, all.indexOf(element)))
  const around = parents.map((parent) => ({
    parent,
    count: before.filter((one) => parent.contains(one)).length,
  }))
  return { element, before, around }
}

/** Where one goes on when what was pressed has gone: what took its place, else what stood next to it. */
function goOnFrom({ before, around }: Stand): HTMLElement | undefined {
  for (const { parent, count } of around) {
    if (!parent.isConnected) continue
    const left = pressables(parent).filter((one) => one.checkVisibility())
    const stayed = before.filter((one) => left.includes(one)).length
    // where all before it was drawn anew, its place is the one of the same number
    const next = left[Math.min(stayed > 0 ? stayed : count, left.length - 1)]
    if (next) return next
  }
  const headline = document.querySelector<HTMLElement>('.sentence h1, .machine-face h1')
  if (headline) headline.tabIndex = -1
  return headline ?? undefined
}

/**
 * Keeps the keyboard on the page: a press that takes away or bars the very thing that was pressed would drop the
 * focus, and whoever works by keys or by ear would begin again at the top.
 */
export function useKeptFocus(): void {
  let stand: Stand | undefined
  // nothing here may ask for a layout: it is looked at with every change that a drag makes
  const gone = ({ element }: Stand): boolean => !element.isConnected || element.matches(':disabled')
  /** Steps that change places are taken out and put in again, and the keyboard is not put in with them. */
  const moved = ({ element }: Stand, changes: readonly MutationRecord[]): boolean =>
    changes.some(({ addedNodes }) => [...addedNodes].some((node) => node.contains(element)))
  function look(changes: readonly MutationRecord[]): void {
    if (!stand) return
    const now = document.activeElement
    if (now && now !== document.body && now !== stand.element) return
    if (!gone(stand)) {
      if (now === document.body && moved(stand, changes))
        stand.element.focus({ preventScroll: true })
      return
    }
    // the other face of the sheet may still be on its way: it is looked for again when it is drawn
    const next = goOnFrom(stand)
    if (!next) return
    stand = undefined
    next.focus({ preventScroll: true })
  }
  const watch = new MutationObserver(look)
  const onFocus = ({ target }: FocusEvent): void => {
    stand = target instanceof HTMLElement ? standOf(target) : undefined
  }
  // a press on nothing means nothing
  const onPointer = ({ target }: PointerEvent): void => {
    if (target instanceof Element && !target.closest(pressable)) stand = undefined
  }
  onMounted(() => {
    document.addEventListener('focusin', onFocus)
    document.addEventListener('pointerdown', onPointer)
    watch.observe(document.body, {
      childList: true,
      subtree: true,
      attributeFilter: ['disabled'],
    })
  })
  onBeforeUnmount(() => {
    document.removeEventListener('focusin', onFocus)
    document.removeEventListener('pointerdown', onPointer)
    watch.disconnect()
  })
}
