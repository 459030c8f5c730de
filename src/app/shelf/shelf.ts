import { openDatabase, StorageError, rowsOf, strict, type Database } from './database'
import { keepIn, type Kept, type Keeping } from './keep'
import { answers, freeMark } from './label'
import { contentOf, printOf } from '../../document/contentPrint'
import { called, jobOfRow, type Head, type Job, type SavedSheet, type Version } from './records'
import type { VersionLine } from './versions'
import type { Writer } from './writer'

/** A job that was taken off stays in the database this long (ms): 30 days. */
export const clearedAfter = 30 * 24 * 3600 * 1000

export interface Loaded {
  readonly job: Job
  readonly head: Head
}

/** A job on the shelf that a file may be another copy of. */
export interface Known {
  readonly job: Job
  readonly head: Head
  /** The version whose contents the file has, if any. */
  readonly version: Version | undefined
}

/** Opens the shelf; rejects with an error whose message says why nothing can be kept. */
export async function openShelf(): Promise<Shelf> {
  const shelf = new Shelf()
  await shelf.open()
  return shelf
}

/** Jobs in this browser's own database. Everything resolves when it is written, not before. */
export class Shelf {
  private database: Promise<Database> | undefined
  private readonly writer: Writer | undefined

  private readonly gone: () => void

  /**
   * @param writer what writes sheets instead of this page
   * @param gone is told when the database is lost under the page: it may have been deleted
   */
  constructor(writer?: Writer, gone: () => void = () => undefined) {
    this.writer = writer
    this.gone = gone
  }

  async open(): Promise<Database> {
    this.database ??= openDatabase(() => {
      this.database = undefined
      this.gone()
    })
    try {
      return await this.database
    } catch (error) {
      this.database = undefined
      throw new StorageError(error)
    }
  }

  /** Jobs on the shelf that a query names, last changed first; `removed`: those taken off it. */
  async list(query = '', removed = false): Promise<Job[]> {
    return (await this.all())
      .filter((job) => (job.removed !== undefined) === removed && answers(job, query))
      .sort((a, b) => b.changed - a.changed)
  }

  /** A job with its newest sheet; undefined when there is no such job. */
  async load(id: string): Promise<Loaded | undefined> {
    const tx = (await this.open()).transaction(['jobs', 'heads'])
    const [job, head] = await Promise.all([
      tx.objectStore('jobs').get(id),
      tx.objectStore('heads').get(id),
    ])
    return job && head && { job: jobOfRow(job), head }
  }

  /**
   * Makes a sheet the newest of a job, on top of the revision it was changed from; resolves when it is
   * on the disk. Where the job has gone on meanwhile nothing is written, and its sheet comes back.
   */
  async keep(id: string, sheet: Kept, base: number): Promise<Keeping> {
    const database = await this.open()
    return this.writer ? this.writer.keep(id, sheet, base) : keepIn(database, id, sheet, base)
  }

  /** Versions of a job, newest first. */
  async versions(id: string): Promise<VersionLine[]> {
    return (await this.allVersions(id)).map(({ n, what, when }) => ({ n, what, when }))
  }

  /** The same with what stands in them. */
  async allVersions(id: string): Promise<Version[]> {
    return (await (await this.open()).getAll('versions', rowsOf(id))).reverse()
  }

  async version(id: string, n: number): Promise<Version | undefined> {
    return (await this.open()).get('versions', [id, n])
  }

  /** A copy of a job as it is now, with a history of its own. */
  async copy(id: string, mark: string, when: number): Promise<Job | undefined> {
    const loaded = await this.load(id)
    if (!loaded) return undefined
    const { text, entries, hand, page } = loaded.head
    const what = `copied from ${called(loaded.job)}`
    const copy = crypto.randomUUID()
    await this.keep(copy, { text, entries, hand, what, when, page, mark }, 0)
    return (await this.open()).get('jobs', copy)
  }

  /** The mark itself, or numbered where a job of that name has it. */
  async freeMark(name: string, mark: string): Promise<string> {
    return freeMark(await this.all(), name, mark)
  }

  private async all(): Promise<Job[]> {
    return (await (await this.open()).getAll('jobs')).map(jobOfRow)
  }

  /** Takes a job off the shelf; it can be put back until it is cleared out. */
  async remove(id: string, when: number): Promise<void> {
    await this.mark(id, (job) => ({ ...job, removed: when }))
  }

  async restore(id: string): Promise<void> {
    await this.mark(id, (job) => {
      const back: Job & { removed?: number } = { ...job }
      delete back.removed
      return back
    })
  }

  private async mark(id: string, change: (job: Job) => Job): Promise<void> {
    const tx = (await this.open()).transaction('jobs', 'readwrite', strict)
    const job = await tx.store.get(id)
    await Promise.all([job && tx.store.put(change(jobOfRow(job))), tx.done])
  }

  /** Ends a job and all that belongs to it, for good. */
  async clear(id: string): Promise<void> {
    const tables = ['jobs', 'heads', 'versions', 'photos'] as const
    const tx = (await this.open()).transaction(tables, 'readwrite', strict)
    const photos = await tx.objectStore('photos').index('job').getAllKeys(id)
    await Promise.all([
      tx.objectStore('jobs').delete(id),
      tx.objectStore('heads').delete(id),
      tx.objectStore('versions').delete(rowsOf(id)),
      ...photos.map((photo) => tx.objectStore('photos').delete(photo)),
      tx.done,
    ])
  }

  /** Ends jobs that were taken off long ago. */
  async clearOut(now: number): Promise<void> {
    for (const { id, removed = now } of await this.list('', true))
      if (now - removed > clearedAfter) await this.clear(id)
  }

  /** Jobs that a file of this match and text may be another copy of, the likeliest first. */
  async known(match: string, text: string): Promise<Known[]> {
    const database = await this.open()
    const [alike, same] = await Promise.all([
      database.getAllFromIndex('jobs', 'match', match),
      database.getAllFromIndex('versions', 'print', printOf(text)),
    ])
    const content = contentOf(text)
    const versions = same.filter((version) => contentOf(version.text) === content)
    const ids = new Set([...versions.map(({ job }) => job), ...alike.map(({ id }) => id)])
    const found: Known[] = []
    for (const id of ids) {
      const loaded = await this.load(id)
      const version = versions.findLast(({ job }) => job === id)
      if (loaded && loaded.job.removed === undefined)
        found.push({ job: loaded.job, head: loaded.head, version })
    }
    const likely = ({ head, version }: Known) =>
      contentOf(head.text) === content ? 2 : version ? 1 : 0
    return found.sort((a, b) => likely(b) - likely(a) || b.job.changed - a.job.changed)
  }

  /** A short note of the page itself, such as the job it had open last. */
  async note(key: string): Promise<string | undefined> {
    return (await this.open()).get('meta', key)
  }

  async setNote(key: string, value: string): Promise<void> {
    await (await this.open()).put('meta', value, key)
  }
}

export type { Kept, Keeping, SavedSheet }
