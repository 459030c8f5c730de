import type { TrainDocument } from '../../document/schema'
import type { NamedEdit } from '../../document/edits/machines'
import { useJob } from '../stores/job'

/** Makes changes that know their own name; one without a name changes nothing. */
export function useChanges(): (make: (document: TrainDocument) => NamedEdit, key?: string) => void {
  const job = useJob()
  return (make, key) => {
    if (!job.document) return
    const { document, name } = make(job.document)
    if (name !== '') void job.change(name, () => document, key)
  }
}
