import { canonicalJson } from '../../document/canonicalJson'
import type { HandPlan } from '../../engine/studies/hand/handPlan'

/** Wrong entries that are kept as typed, by their place in the document. */
export type Entries = Readonly<Record<string, string>>

/** What stands on a sheet: the text of its document, and what was typed that is no value. */
export interface SavedSheet {
  readonly text: string
  readonly entries: Entries
  /** Where machines were put by hand; absent while the sheet shows the plan. */
  readonly hand?: HandPlan | undefined
}

/** The change a sheet came about by, and when (ms since 1970). */
export interface SavedEdit {
  readonly what: string
  readonly when: number
}

/** A job as the shelf lists it. */
export interface Job {
  readonly id: string
  /** The document's own name. */
  readonly name: string
  /** Tells jobs of one name apart: "copy", "other tab, 14:02"; "" for the first of them. */
  readonly mark: string
  readonly site: string
  /** Names of its machines, left to right. */
  readonly machines: readonly string[]
  /** Name, site and machine ids: files with the same are taken for this job. */
  readonly match: string
  readonly made: number
  readonly changed: number
  readonly revision: number
  /** When it was taken off the shelf; it can be put back until it is cleared out. */
  readonly removed?: number
}

/** The newest sheet of a job. Its revision grows by one with every writing. */
export interface Head extends SavedSheet, SavedEdit {
  readonly job: string
  readonly revision: number
  /** The page that wrote it. */
  readonly page: string
}

/** A sheet as it was after an edit; of each job the last ones stay. */
export interface Version extends SavedSheet, SavedEdit {
  readonly job: string
  readonly n: number
  /** Of what the document says, whatever its layout. */
  readonly print: string
}

/** A sheet that a page wrote down in one go while it was closed, on top of a revision. */
export interface Left extends SavedSheet, SavedEdit {
  readonly job: string
  readonly page: string
  readonly base: number
}

/** A picture that belongs to a job. */
export interface Photo {
  readonly id: string
  readonly job: string
  readonly made: number
  readonly blob: Blob
}

/**
 * A job as it is listed, whatever stands in its row: the row says nothing that its sheet does not, so that one that
 * is damaged is listed with what is left of it, opens, and is written anew with the next change.
 */
export function jobOfRow(
  row: { readonly id: string } & { readonly [Key in keyof Job]?: unknown },
): Job {
  const text = (value: unknown) => (typeof value === 'string' ? value : '')
  const number = (value: unknown) => (Number.isFinite(value) ? (value as number) : 0)
  const machines = Array.isArray(row.machines) ? row.machines.map(text) : []
  return {
    id: row.id,
    name: text(row.name),
    mark: text(row.mark),
    site: text(row.site),
    machines,
    match: text(row.match),
    made: number(row.made),
    changed: number(row.changed),
    revision: number(row.revision),
    // one that nobody can tell when it was taken off stays: it would be cleared out
    ...(Number.isFinite(row.removed) && { removed: number(row.removed) }),
  }
}

/** The job's name as people read it. */
export const called = ({ name, mark }: Pick<Job, 'name' | 'mark'>): string =>
  mark === '' ? name || 'without a name' : `${name || 'without a name'} (${mark})`

/** Whether two sheets hold the same, entry by entry. */
export const sameSheet = (one: SavedSheet, other: SavedSheet): boolean =>
  one.text === other.text &&
  canonicalJson([one.entries, one.hand]) === canonicalJson([other.entries, other.hand])
