import { trainMatch } from '../../document/trainMatch'
import type { Job } from './records'

export type JobLabel = Pick<Job, 'name' | 'site' | 'machines' | 'match'>

const record = (value: unknown): Record<string, unknown> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
const words = (value: unknown): string => (typeof value === 'string' ? value : '')

/**
 * What the shelf lists of a document, and what it knows it by. A train file carries no number of its
 * own, so a file is taken for a job when name, site and the ids of the machines, in their order, are
 * the same. Drafts that lack any of it are listed with what they have.
 */
export function labelOf(document: unknown): JobLabel {
  const { name, site, machines } = record(document)
  const bodies = Array.isArray(machines) ? machines.map(record) : []
  const ids = bodies.map(({ id }) => words(id))
  return {
    name: words(name),
    site: words(site),
    machines: bodies.map((body) => words(body['name'])),
    match: trainMatch(words(name), words(site), ids),
  }
}

/** The same, of a text; a text that is no JSON has no name and no machines. */
export function labelOfText(text: string): JobLabel {
  try {
    return labelOf(JSON.parse(text))
  } catch {
    return labelOf(undefined)
  }
}

/** Whether each word asked for stands in the job's name, site or a machine's name. */
export function answers(job: Pick<Job, 'name' | 'mark' | 'site' | 'machines'>, query: string) {
  const text = [job.name, job.mark, job.site, ...job.machines].join('\n').toLocaleLowerCase()
  const asked = query.toLocaleLowerCase().split(/\s+/)
  return asked.every((word) => text.includes(word))
}

/** The mark itself, or with the first number that no other job of that name has. */
export function freeMark(
  jobs: readonly Pick<Job, 'name' | 'mark'>[],
  name: string,
  mark: string,
): string {
  const taken = new Set(jobs.filter((job) => job.name === name).map((job) => job.mark))
  if (!taken.has(mark)) return mark
  for (let n = 2; ; n++) {
    const next = mark === '' ? String(n) : `${mark} ${n}`
    if (!taken.has(next)) return next
  }
}
