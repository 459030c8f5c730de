import { Autosaver, type KeptState } from './autosave'
import type { Damaged } from './damaged'
import type { OnSheet } from './port'
import { labelOfText } from './label'
import { called, type SavedEdit, type Job, type SavedSheet } from './records'
import type { Kept, Shelf } from './shelf'
import type { Tabs } from './tabs'
import { leftSheets } from './left'
import { savedSheetOf } from './sheet'
import { clockOf } from './times'

/** A sheet on its way to the shelf. */
export interface Unkept extends OnSheet, SavedEdit {
  /** How a new job is told from others of its name; without it by a number. */
  readonly mark?: string
  /** What stood on the sheet before the first edit of a new job. */
  readonly origin?: SavedSheet & SavedEdit
}

/** What is said when a job that was changed here turned out to be changed by another page as well. */
export interface Parting {
  readonly from: Job
  readonly to: Job
}

/**
 * Brings sheets to the shelf, each on top of the revision it was changed from. Where another page was
 * faster, this page's sheet becomes a job of its own, and what follows goes to that one.
 */
export class Keeper {
  private readonly saver: Autosaver<Unkept>
  /** Revisions that this page's sheets stand on. */
  private readonly bases = new Map<string, number>()
  private readonly partings = new Map<string, string>()
  private readonly page = crypto.randomUUID()
  private readonly wroteLeft = new Set<string>()

  private readonly shelf: Shelf
  private readonly tabs: Tabs
  private readonly parted: (parting: Parting) => void
  private readonly keptOne: (job: string) => void

  constructor(
    shelf: Shelf,
    tabs: Tabs,
    hear: {
      state: (state: KeptState) => void
      parted: (parting: Parting) => void
      kept: (job: string) => void
      dragging: () => boolean
    },
  ) {
    this.shelf = shelf
    this.tabs = tabs
    this.parted = hear.parted
    this.keptOne = hear.kept
    this.saver = new Autosaver((key, item) => this.write(key, item), hear.state, hear.dragging)
  }

  changed(job: string, sheet: Unkept): void {
    this.saver.changed(job, sheet)
  }

  flush(): Promise<boolean> {
    return this.saver.flush()
  }

  unkept(job: string): Unkept | undefined {
    return this.saver.unkept(job)
  }

  get idle(): boolean {
    return this.saver.idle
  }

  base(job: string): number {
    return this.bases.get(job) ?? 0
  }

  /** The sheet of a job was read from the shelf at this revision. */
  standsOn(job: string, revision: number, when: number): void {
    this.partings.delete(job)
    this.bases.set(job, revision)
    this.saver.settle(when)
  }

  private async write(key: string, item: Unkept): Promise<void> {
    const id = this.partings.get(key) ?? key
    const base = this.base(id)
    const mark = base > 0 ? '' : await this.shelf.freeMark(item.document.name, item.mark ?? '')
    const outcome = await this.shelf.keep(
      id,
      { ...this.keptOf(item), mark, ...(item.origin && { origin: item.origin }) },
      base,
    )
    if (outcome.kept) {
      this.bases.set(id, outcome.revision)
      this.tabs.say({ kind: 'kept', job: id, revision: outcome.revision })
      if (this.wroteLeft.delete(id)) leftSheets.drop({ job: id, page: this.page })
    } else await this.part(id, item)
    this.keptOne(id)
  }

  private keptOf(item: Unkept): Kept {
    return { ...savedSheetOf(item), what: item.what, when: item.when, page: this.page }
  }

  private async part(id: string, item: Unkept): Promise<void> {
    const copy = crypto.randomUUID()
    const mark = await this.shelf.freeMark(item.document.name, `other tab, ${clockOf(item.when)}`)
    await this.shelf.keep(copy, { ...this.keptOf(item), mark }, 0)
    this.partings.set(id, copy)
    this.bases.set(copy, 1)
    if (this.wroteLeft.delete(id)) leftSheets.drop({ job: id, page: this.page })
    this.tabs.say({ kind: 'shelf' })
    const [from, to] = await Promise.all([this.shelf.load(id), this.shelf.load(copy)])
    if (from && to) this.parted({ from: from.job, to: to.job })
  }

  /** The page is being closed: what is not kept is written down in one go, to be found again. */
  leave(): void {
    for (const job of this.saver.unkeptKeys) {
      const unkept = this.saver.unkept(job)
      if (!unkept) continue
      const id = this.partings.get(job) ?? job
      leftSheets.write({ ...this.keptOf(unkept), job: id, base: this.base(id) })
      this.wroteLeft.add(id)
    }
  }

  /**
   * Takes in what closed pages wrote down: as the newest sheet where the job stands as they knew it,
   * as a job of its own where another page has gone on. Resolves with the names of the latter, and
   * with what is damaged and was set aside.
   */
  async takeIn(): Promise<{ apart: readonly string[]; damaged: readonly Damaged[] }> {
    const apart: string[] = []
    const { sound, damaged } = leftSheets.read()
    for (const row of sound) {
      if (row.page === this.page) continue
      const { job, base, ...sheet } = row
      const head = (await this.shelf.load(job))?.head
      // the writing that was under way when its page was closed may have come through
      const own = head?.page === row.page
      if (!head || !own || head.when < row.when) {
        const outcome = await this.shelf.keep(job, sheet, own ? head.revision : base)
        if (!outcome.kept) apart.push(await this.setApart(sheet))
      }
      leftSheets.drop(row)
    }
    return { apart, damaged }
  }

  private async setApart(sheet: Kept): Promise<string> {
    const { name } = labelOfText(sheet.text)
    const mark = await this.shelf.freeMark(name, `left behind, ${clockOf(sheet.when)}`)
    await this.shelf.keep(crypto.randomUUID(), { ...sheet, mark }, 0)
    return called({ name, mark })
  }
}
