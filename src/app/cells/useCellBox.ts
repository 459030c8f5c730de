import { useJob } from '../stores/job'
import { useSpeaking } from './speaking'
import { useBox } from './useBox'

/**
 * The box of a cell of the document: what it says of its value while one is in it, what Escape gives back, and that
 * one edit ends when one leaves.
 */
export function useCellBox(
  place: () => string,
  cell: {
    readonly shown: () => string
    readonly take: (text: string) => void
    readonly says: () => string
  },
) {
  const job = useJob()
  const said = useSpeaking()
  const speak = (): void => {
    said.value = cell.says()
  }
  const box = useBox({
    shown: cell.shown,
    take: cell.take,
    giveUp: () => void job.giveUp(place()),
    entered: speak,
    left: () => {
      said.value = ''
      job.closeEdit()
    },
  })
  return { ...box, speak }
}
