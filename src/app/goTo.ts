import { nextTick } from 'vue'
import type { useView } from './stores/view'

/** The band whose figures hold a place of the document. */
export const bandOf = (at: string): string => {
  if (/\.growth\b/.test(at) || at.startsWith('states')) return 'states'
  if (/^(machines|skids)\[\d+\]\.feet/.test(at)) return 'feet'
  if (/^couplings\[\d+\]\.found/.test(at)) return 'readings'
  if (at.startsWith('couplings')) return 'couplings'
  if (at.startsWith('plan')) return 'plan'
  return at.startsWith('machines') || at.startsWith('skids') ? 'train' : 'job'
}

/** Lays the band of a place open and puts the keyboard into its cell, or the nearest one before it. */
export async function goTo(
  at: string,
  band: string | undefined,
  view: ReturnType<typeof useView>,
): Promise<void> {
  const where = band ?? bandOf(at)
  view.lay(where, true)
  await nextTick()
  const cells = [...document.querySelectorAll<HTMLElement>('[data-at]')]
  const exact = cells.find((cell) => cell.dataset['at'] === at)
  const near = cells.find((cell) => cell.dataset['at']?.startsWith(at) === true)
  const figures = document.querySelector<HTMLElement>(`[data-figures="${where}"]`)
  const target =
    exact ??
    near ??
    figures?.querySelector<HTMLElement>('input, select, button:not(.figures-button)')
  target?.scrollIntoView({ block: 'center' })
  target?.focus()
}
