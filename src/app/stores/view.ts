import { useEventListener } from '@vueuse/core'
import { defineStore } from 'pinia'
import { ref, watchEffect } from 'vue'

export type Theme = 'day' | 'night'

const shelf = 'holdfast-theme'

/** How the sheet is looked at; nothing here changes the plan. */
export const useView = defineStore('view', () => {
  const system = window.matchMedia('(prefers-color-scheme: dark)')
  const ofSystem = (): Theme => (system.matches ? 'night' : 'day')
  const kept = localStorage.getItem(shelf)
  const theme = ref<Theme>(kept === 'day' || kept === 'night' ? kept : ofSystem())
  /** A state whose lines and gates are seen alone; undefined: all of them. */
  const chosen = ref<number>()
  /** What the gate last pressed or pointed at says. */
  const said = ref('')

  /** Whether a pointer is held down: something may be on its way with it. */
  const pressed = ref(false)
  useEventListener(window, 'pointerdown', () => (pressed.value = true), { capture: true })
  const letGo = () => (pressed.value = false)
  useEventListener(window, ['pointerup', 'pointercancel'], letGo, { capture: true })
  // of the window itself: a blur inside it does not come up so far
  useEventListener(window, 'blur', letGo)

  /** Bands whose figures are laid open to be entered. */
  const open = ref<ReadonlySet<string>>(new Set())

  /** Lays the figures of a band open, or puts them away. */
  function lay(band: string, whether: boolean): void {
    const now = new Set(open.value)
    if (whether) now.add(band)
    else now.delete(band)
    open.value = now
  }

  system.addEventListener('change', () => {
    if (localStorage.getItem(shelf) === null) theme.value = ofSystem()
  })
  watchEffect(() => {
    document.documentElement.dataset['theme'] = theme.value
  })

  function switchTheme(): void {
    theme.value = theme.value === 'day' ? 'night' : 'day'
    localStorage.setItem(shelf, theme.value)
  }

  return { theme, chosen, said, pressed, open, lay, switchTheme }
})
