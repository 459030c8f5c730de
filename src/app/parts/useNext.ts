import { nextStep } from '../../document/edits/nextStep'
import { useJob } from '../stores/job'
import { useView } from '../stores/view'
import { goTo } from './goTo'

/** Leads from anywhere to what the plan needs next: what is missing, else what is no value, else what is wrong. */
export function useNext(): () => void {
  const job = useJob()
  const view = useView()
  return () => {
    if (!job.document || !job.stale) return
    // asked of the document itself: the planner answers later than the next key
    const step = nextStep(job.document)
    const at = step?.at ?? Object.keys(job.entries)[0] ?? job.faults[0]?.at
    if (at !== undefined) void goTo(at, step?.band, view)
  }
}
