import { strict, rowsOf, type Database } from './database'
import { labelOfText } from './label'
import { sameSheet, type SavedEdit, type Head, type Job, type SavedSheet } from './records'
import { olderVersions, numberAfter, versionOf } from './versions'

/** A sheet to be kept. */
export interface Kept extends SavedSheet, SavedEdit {
  /** The page that writes it. */
  readonly page: string
  /** Tells a new job from others of its name. */
  readonly mark?: string
  /** What the sheet was before its first edit: the first version of a new job. */
  readonly origin?: SavedSheet & SavedEdit
}

export type Keeping =
  | { readonly kept: true; readonly revision: number }
  /** Another page has changed the job meanwhile; nothing was written. */
  | { readonly kept: false; readonly head: Head }

/**
 * Writes a sheet as the newest of a job, in one transaction with the look at what was newest: of two
 * pages that write on top of one revision, one is told no. Resolves when it is on the disk.
 */
export async function keepIn(
  database: Database,
  id: string,
  sheet: Kept,
  base: number,
): Promise<Keeping> {
  const tx = database.transaction(['jobs', 'heads', 'versions'], 'readwrite', strict)
  // an error of a request also ends the transaction, and is told where it is awaited
  const done = tx.done.catch((error: unknown) => {
    throw tx.error ?? error
  })
  done.catch(() => undefined)
  try {
    const [jobs, heads] = [tx.objectStore('jobs'), tx.objectStore('heads')]
    const versions = tx.objectStore('versions')
    // asked for at once: on a busy page every answer waits its turn
    const [job, head, last] = await Promise.all([
      jobs.get(id),
      heads.get(id),
      versions.openCursor(rowsOf(id), 'prev'),
    ])
    if (head && head.revision !== base) {
      await done
      const { revision } = head
      return sameSheet(head, sheet) ? { kept: true, revision } : { kept: false, head }
    }
    const revision = base + 1
    const { text, entries, hand, what, when, page, origin } = sheet
    const writing: Promise<unknown>[] = []
    let n = numberAfter(last?.value, sheet)
    if (!last && origin) writing.push(versions.put(versionOf(id, n++, origin)))
    writing.push(
      versions.put(versionOf(id, n, sheet)),
      heads.put({ job: id, revision, text, entries, hand, what, when, page }),
      jobs.put(jobOf(id, job, sheet, revision)),
    )
    const old = olderVersions(id, n)
    if (old) writing.push(versions.delete(old))
    tx.commit()
    await Promise.all([...writing, done])
    return { kept: true, revision }
  } catch (error) {
    try {
      tx.abort()
    } catch {
      // it has ended by itself
    }
    throw error
  }
}

/** The listed job after a change; one that was taken off the shelf comes back with it. */
function jobOf(id: string, before: Job | undefined, sheet: Kept, revision: number): Job {
  const { name, site, machines, match } = labelOfText(sheet.text)
  return {
    id,
    name,
    mark: before?.mark ?? sheet.mark ?? '',
    site,
    machines,
    match,
    made: before?.made ?? sheet.when,
    changed: sheet.when,
    revision,
  }
}

/** A sheet to be written, as it is sent to the worker that writes. */
export interface Writing {
  readonly n: number
  readonly id: string
  readonly sheet: Kept
  readonly base: number
}

export type Written =
  | { readonly n: number; readonly keeping: Keeping }
  | { readonly n: number; readonly failed: { readonly name: string; readonly message: string } }
