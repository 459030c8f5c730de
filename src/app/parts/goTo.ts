import { nextTick } from 'vue'
import type { useView } from '../stores/view'

/** The band whose figures hold a place of the document. */
const bandOf = (at: string): string => {
  if (/\.growth\b/.test(at) || at.startsWith('states')) return 'states'
  if (/^(machines|skids)\[\d+\]\.feet/.test(at)) return 'feet'
  if (/^couplings\[\d+\]\.found/.test(at)) return 'readings'
  if (at.startsWith('couplings')) return 'couplings'
  if (at.startsWith('plan')) return 'plan'
  return at.startsWith('machines') || at.startsWith('skids') ? 'train' : 'job'
}

/** The cell of a place, or the first one of what is under it. */
function cellOf(at: string): HTMLElement | undefined {
  const cells = [...document.querySelectorAll<HTMLElement>('[data-at]')]
  return (
    cells.find((cell) => cell.dataset['at'] === at) ??
    cells.find((cell) => cell.dataset['at']?.startsWith(at) === true)
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
  const figures = document.querySelector<HTMLElement>(`[data-figures="${where}"]`)
  if (!cellOf(at)) {
    const more = figures?.querySelectorAll<HTMLElement>('[data-more][aria-pressed="false"]')
    for (const button of more ?? []) button.click()
    await nextTick()
  }
  const target =
    cellOf(at) ?? figures?.querySelector<HTMLElement>('input, select, button:not(.figures-button)')
  for (let fold = target?.closest('details'); fold; fold = fold.parentElement?.closest('details'))
    fold.open = true
  target?.scrollIntoView({ block: 'center' })
  target?.focus()
}
