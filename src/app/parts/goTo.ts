import { nextTick } from 'vue'
import { partsUnderWay } from '../services/later'
import type { useView } from '../stores/view'

/** The band whose figures hold a place of the document. */
const bandOf = (at: string): string => {
  if (/\.growth\b/.test(at) || /^(states|hotChecks)\b/.test(at)) return 'states'
  if (/^(machines|skids)\[\d+\]\.feet/.test(at)) return 'feet'
  if (/^couplings\[\d+\]\.found/.test(at)) return 'readings'
  if (at.startsWith('couplings')) return 'couplings'
  if (at.startsWith('plan')) return 'plan'
  if (at.startsWith('surveys')) return 'surveys'
  return at.startsWith('machines') || at.startsWith('skids') ? 'train' : 'job'
}

const pressable = 'input, select, textarea, button'

/** The cell of a place, or the first one of what is under it, or the first that adds something there. */
function cellOf(at: string): HTMLElement | undefined {
  const places = [...document.querySelectorAll<HTMLElement>('[data-at]')]
  const cells = places.filter((place) => place.matches(pressable))
  const room = places.find((place) => place.dataset['at'] === at)
  return (
    cells.find((cell) => cell.dataset['at'] === at) ??
    cells.find((cell) => cell.dataset['at']?.startsWith(at) === true) ??
    room?.querySelector<HTMLElement>(pressable) ??
    room
  )
}

/** Lays the band of a place open, all its columns if need be, and puts the keyboard into its cell. */
export async function goTo(
  at: string,
  band: string | undefined,
  view: ReturnType<typeof useView>,
): Promise<void> {
  const where = band ?? bandOf(at)
  view.lay(where, true)
  await nextTick()
  await partsUnderWay()
  await nextTick()
  const figures = document.querySelector<HTMLElement>(`[data-figures="${where}"]`)
  if (!cellOf(at)) {
    const more = figures?.querySelectorAll<HTMLElement>('[data-more][aria-pressed="false"]')
    for (const button of more ?? []) button.click()
    await nextTick()
  }
  const target = cellOf(at) ?? figures?.querySelector<HTMLElement>('input, select, button')
  for (let fold = target?.closest('details'); fold; fold = fold.parentElement?.closest('details'))
    fold.open = true
  target?.scrollIntoView({ block: 'center' })
  target?.focus()
}

/** Bands of the sheet from top to bottom, as one would ask for them. */
export const bandNames = [
  ['each-foot', 'each foot'],
  ['train', 'the train'],
  ['rise', 'rise'],
  ['side', 'side'],
  ['feet', 'feet and packs'],
  ['couplings', 'couplings'],
  ['next', 'what is next'],
  ['ready', 'what has to be in before moving'],
  ['order', 'the order of work'],
  ['record', 'what comes after the work'],
] as const
type Band = (typeof bandNames)[number][0]

const nameOf = (band: Band): HTMLElement | null => document.getElementById(`band-${band}`)

/** Puts the keyboard at the name of a band, which the window then shows from its top. */
export function goToBand(band: Band): void {
  const name = nameOf(band)
  if (!name) return
  name.tabIndex = -1
  name.scrollIntoView({ block: 'start' })
  name.focus({ preventScroll: true })
}

/** The same for the next band down (1) or up (-1) from where the keyboard is. */
export function goToNextBand(by: 1 | -1): void {
  const here = document.activeElement
  const drawn = bandNames.map(([band]) => band).filter((band) => nameOf(band))
  const passed = drawn.filter((band) => {
    const name = nameOf(band)
    return (
      name && here && (name.compareDocumentPosition(here) & Node.DOCUMENT_POSITION_FOLLOWING) > 0
    )
  }).length
  const on = drawn.findIndex((band) => nameOf(band) === here)
  const next = drawn[on >= 0 ? on + by : by > 0 ? passed : passed - 1]
  if (next) goToBand(next)
}
