import { canonicalJson } from '../../document/canonicalJson'
import { printOf } from '../../document/contentPrint'
import { matchMark } from '../../document/paperCode'
import { sheetMark, type CodePlace } from '../../document/typedCode'
import type { Job, SavedSheet } from './records'
import type { Shelf } from './shelf'
import type { VersionLine } from './versions'

/** What a code on paper leads to on this shelf. */
export type CodeFound =
  | {
      readonly is: 'job'
      readonly job: Job
      /** How the printed sheet stands to the newest one here; 'elsewhere': this shelf does not have it. */
      readonly sheet: 'newest' | 'older' | 'elsewhere'
      /** Changes since the printed sheet, newest first. */
      readonly since: readonly VersionLine[]
      /** Whether those only wrote down what was done: the plan is then the one on the paper. */
      readonly samePlan: boolean
    }
  /** The train was taken off the shelf. */
  | { readonly is: 'off'; readonly job: Job }
  | { readonly is: 'nowhere' }

/** Looks a code up: the job that has its very sheet before others of the same train, else the one changed last. */
export async function findCode(shelf: Shelf, { train, sheet }: CodePlace): Promise<CodeFound> {
  const ofTrain = ({ match }: Job) => matchMark(match) === train
  const jobs = (await shelf.list()).filter(ofTrain)
  const all = await Promise.all(jobs.map((job) => standing(shelf, job, sheet)))
  const best =
    all.find((one) => one.sheet === 'newest') ?? all.find((one) => one.sheet === 'older') ?? all[0]
  if (best) return best
  const off = (await shelf.list('', true)).find(ofTrain)
  return off ? { is: 'off', job: off } : { is: 'nowhere' }
}

async function standing(shelf: Shelf, job: Job, mark: string) {
  const none = { is: 'job', job, since: [], samePlan: false } as const
  const head = (await shelf.load(job.id))?.head
  if (head && sheetMark(printOf(head.text)) === mark)
    return { ...none, sheet: 'newest', samePlan: true } as const
  const versions = await shelf.allVersions(job.id)
  const at = versions.findIndex(({ print }) => sheetMark(print) === mark)
  const printed = versions[at]
  if (!head || !printed) return { ...none, sheet: 'elsewhere' } as const
  const since = versions.slice(0, at).map(({ n, what, when }) => ({ n, what, when }))
  const samePlan = withoutRecord(head) === withoutRecord(printed)
  return { ...none, sheet: 'older', since, samePlan } as const
}

/** What a sheet is planned from: all of it but what was written down of the work. */
function withoutRecord({ text }: SavedSheet): string {
  try {
    const { record: _, ...planned } = JSON.parse(text) as Record<string, unknown>
    return canonicalJson(planned)
  } catch {
    return text
  }
}
