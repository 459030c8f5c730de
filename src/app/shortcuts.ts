import { useEventListener } from '@vueuse/core'
import { useNext } from './parts/useNext'
import { useJob } from './stores/job'
import { useMachine } from './stores/machine'

/**
 * Undo and redo for everything on the sheet, also while one is in a cell; the usual key to open a file; and one
 * that leads to what the plan needs next.
 */
export function useShortcuts(): void {
  const job = useJob()
  const machine = useMachine()
  const goNext = useNext()
  useEventListener(window, 'keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key === 'o') {
      event.preventDefault()
      document.querySelector<HTMLInputElement>('[data-opens-files]')?.click()
      return
    }
    if (key === 'enter' && machine.face !== 'machine') {
      event.preventDefault()
      goNext()
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
