import { useEventListener } from '@vueuse/core'
import { useJob } from './stores/job'

/** Undo and redo for everything on the sheet, also while one is in a cell; and the usual key to open a file. */
export function useShortcuts(): void {
  const job = useJob()
  useEventListener(window, 'keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key === 'o') {
      event.preventDefault()
      document.querySelector<HTMLInputElement>('[data-opens-files]')?.click()
      return
    }
    const again = key === 'y' || (key === 'z' && event.shiftKey)
    if (key !== 'z' && !again) return
    event.preventDefault()
    job.closeEdit()
    // the cell one is in shows what comes back, not what was typed
    if (document.activeElement instanceof HTMLElement)
      delete document.activeElement.dataset['typed']
    if (again) void job.redo()
    else void job.undo()
  })
}
