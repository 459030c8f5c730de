import type { TrainDocument } from '../../document/schema'
import type { KeptState } from './autosave'
import { DamagedError, type Damaged } from './damaged'
import { Keeper, type Parting, type Unkept } from './keeper'
import type { JobPort, OnSheet } from './port'
import { called, type Head } from './records'
import { onSheet, savedSheetOf } from './sheet'
import { Shelf, type Loaded } from './shelf'
import { Tabs, type Word } from './tabs'
import { Writer } from './writer'

/** Where a page remembers its job over a reload, and any page the last one. */
const mine = 'holdfast-job'
const last = 'last job'

/** What the sheet belongs to: a job of the shelf, or a train that nobody has changed yet. */
export type Current =
  | { readonly kind: 'job'; readonly id: string }
  | { readonly kind: 'untouched'; readonly origin: string }

export interface Hearer {
  state: (state: KeptState) => void
  /** Whether a hand is dragging what changes: it is written less often. */
  dragging: () => boolean
  current: (current: Current | undefined) => void
  /** The list of jobs, or versions of one, are no longer what they were. */
  changed: () => void
  parted: (parting: Parting) => void
  /** Another page changed the job, and the sheet has followed. */
  followed: (head: Head) => void
  removed: (job: string, whether: boolean) => void
  others: (count: number) => void
  leftBehind: (names: readonly string[]) => void
  /** Something kept is no train; it stays where it is. */
  damaged: (all: readonly Damaged[]) => void
  trouble: (error: unknown) => void
}

/** One page's work with the shelf: which job is on the sheet, and that it is kept and stays the newest. */
export class Session {
  readonly shelf = new Shelf(new Writer(), () => {
    this.unsure = true
    this.keepAgain()
  })
  /** The database was lost since the sheet was kept: it may be kept no more. */
  private unsure = false
  readonly tabs: Tabs
  readonly keeper: Keeper
  private readonly port: JobPort
  private readonly hear: Hearer
  private current: Current | undefined
  /** The sheet as the shelf put it there: seeing it come is no edit. */
  private handed: TrainDocument | undefined
  private handing = false

  constructor(port: JobPort, hear: Hearer) {
    this.port = port
    this.hear = hear
    this.tabs = new Tabs((word) => void this.heard(word))
    this.keeper = new Keeper(this.shelf, this.tabs, {
      state: hear.state,
      dragging: hear.dragging,
      parted: (parting) => {
        if (this.job === parting.from.id) this.setCurrent({ kind: 'job', id: parting.to.id })
        hear.parted(parting)
      },
      kept: () => {
        hear.changed()
        void this.catchUp()
      },
    })
  }

  /** The job on the sheet. */
  get job(): string | undefined {
    return this.current?.kind === 'job' ? this.current.id : undefined
  }

  /** Opens the job that this page, or the last page there was, had on its sheet; false: there is none. */
  async resume(): Promise<boolean> {
    await inTime(this.shelf.open())
    try {
      const { apart, damaged } = await this.keeper.takeIn()
      if (apart.length > 0) this.hear.leftBehind(apart)
      if (damaged.length > 0) this.hear.damaged(damaged)
    } catch (error) {
      // what could not be taken in waits for the next start; the jobs can be opened all the same
      this.hear.trouble(error)
    }
    // what cannot be cleared out now waits for the next start
    await this.shelf.clearOut(Date.now()).catch(() => undefined)
    const id = sessionStorage.getItem(mine) ?? (await this.shelf.note(last))
    const job = id === undefined ? undefined : (await this.shelf.load(id))?.job
    if (this.current) return true
    const there = job && job.removed === undefined
    return (there && (await this.open(job.id))) || this.openNewest(job?.id)
  }

  /** Opens the job changed last that can be opened, but not this one; false: there is none. */
  async openNewest(but?: string): Promise<boolean> {
    for (const { id } of await this.shelf.list())
      if (id !== but && (await this.open(id))) return true
    return false
  }

  /** A train came to the sheet by another way than the shelf: nothing is written over for it. */
  arrived(name: string): void {
    if (this.handing) return
    this.handed = this.port.document
    this.setCurrent({ kind: 'untouched', origin: `opened: ${name}` })
  }

  /** Something was edited on the sheet: it is to be kept. */
  edited(): void {
    const { document, entries, hand, lastEdit: what } = this.port
    if (this.handing || !document) return
    const when = Date.now()
    const from = this.current?.kind === 'job' ? undefined : this.current
    if (from || !this.current) this.setCurrent({ kind: 'job', id: crypto.randomUUID() })
    const origin = from &&
      this.handed && {
        ...savedSheetOf({ document: this.handed, entries: {} }),
        what: from.origin,
        when,
      }
    this.keep({ document, entries, hand, what, when, ...(origin && { origin }) })
  }

  /** Keeps the sheet once more, unless a copy is tried out on it: then when that has ended. */
  private keepAgain(): void {
    const { document, entries, hand, trying, lastEdit } = this.port
    if (!this.unsure || this.job === undefined || !document || trying) return
    this.unsure = false
    this.keep({ document, entries, hand, what: lastEdit || 'kept again', when: Date.now() })
  }

  private keep(sheet: Unkept): void {
    const { job } = this
    if (job === undefined) return
    // until a new job is on the shelf, every sheet of it says what it began with
    const before = this.keeper.unkept(job)
    const origin = sheet.origin ?? before?.origin
    const mark = sheet.mark ?? before?.mark
    this.keeper.changed(job, { ...sheet, ...(origin && { origin }), ...(mark && { mark }) })
  }

  /** Puts a job of the shelf on the sheet; false when there is no such job, or it is damaged, which is said. */
  async open(id: string): Promise<boolean> {
    await this.keeper.flush()
    const unkept = this.keeper.unkept(id)
    const loaded = unkept ? undefined : await this.shelf.load(id)
    const sheet = unkept ?? (loaded && this.soundSheet(loaded))
    if (!sheet) return false
    if (loaded) this.keeper.standsOn(id, loaded.head.revision, loaded.head.when)
    this.setCurrent({ kind: 'job', id })
    this.adopt(sheet, loaded ? called(loaded.job) : sheet.document.name)
    return true
  }

  private soundSheet({ job, head }: Loaded): OnSheet | undefined {
    try {
      return onSheet(head)
    } catch (error) {
      if (!(error instanceof DamagedError)) throw error
      this.hear.damaged([{ name: called(job), why: error.message, text: head.text }])
      return undefined
    }
  }

  /** Puts a train on the sheet that becomes a job when it is first changed. */
  async openUntouched(sheet: OnSheet, name: string, origin: string): Promise<void> {
    await this.keeper.flush()
    this.setCurrent({ kind: 'untouched', origin })
    this.adopt(sheet, name)
  }

  /** Puts a train on the sheet and on the shelf, as a job of its own. */
  async openNew(sheet: OnSheet, name: string, what: string, mark?: string): Promise<void> {
    await this.keeper.flush()
    this.setCurrent({ kind: 'job', id: crypto.randomUUID() })
    this.adopt(sheet, name)
    this.keep({ ...sheet, what, when: Date.now(), ...(mark && { mark }) })
    await this.keeper.flush()
  }

  /** Makes a sheet the newest of this job, as an edit that can be undone. */
  takeOver(sheet: OnSheet, name: string): void {
    void this.port.restore(sheet, name)
  }

  /** Makes a version of this job its newest sheet, as an edit that can be undone. */
  async takeBack(n: number, name: string): Promise<void> {
    const { job } = this
    const version = job === undefined ? undefined : await this.shelf.version(job, n)
    if (version && job === this.job) this.takeOver(onSheet(version), name)
  }

  /** Follows another page that has changed this page's job, unless there is a change here as well. */
  async catchUp(): Promise<void> {
    this.keepAgain()
    const { job } = this
    if (job === undefined || this.port.trying || this.keeper.unkept(job)) return
    const loaded = await this.shelf.load(job)
    const free = this.job === job && !this.keeper.unkept(job) && !this.port.trying
    if (!loaded || !free || loaded.head.revision <= this.keeper.base(job)) return
    const sheet = this.soundSheet(loaded)
    if (!sheet) return
    this.keeper.standsOn(job, loaded.head.revision, loaded.head.when)
    this.hand(sheet, (given) => this.port.restore(given, 'change in another tab'))
    this.hear.followed(loaded.head)
  }

  /** Counts the other pages that have this job on their sheets. */
  async count(): Promise<void> {
    this.hear.others(await this.tabs.others())
  }

  private async heard(word: Word): Promise<void> {
    if (word.kind === 'pages') return this.count()
    if (word.kind === 'kept' && word.job === this.job) await this.catchUp()
    if (word.kind === 'removed' || word.kind === 'restored')
      this.hear.removed(word.job, word.kind === 'removed')
    this.hear.changed()
  }

  /** The page is being closed. */
  leave(): void {
    this.keeper.leave()
  }

  private adopt(sheet: OnSheet, name: string): void {
    this.hand(sheet, () => this.port.adopt({ ...sheet, name }))
  }

  private hand(sheet: OnSheet, give: (sheet: OnSheet) => unknown): void {
    this.handed = sheet.document
    this.handing = true
    try {
      give(sheet)
    } finally {
      this.handing = false
    }
  }

  private setCurrent(current: Current | undefined): void {
    this.current = current
    const { job } = this
    if (job === undefined) sessionStorage.removeItem(mine)
    else {
      sessionStorage.setItem(mine, job)
      this.shelf.setNote(last, job).catch(() => undefined)
    }
    this.hear.current(current)
    void this.tabs.at(job).then(() => this.count())
  }
}

/** A shelf that does not open within this (ms) is done without; it is tried again with every writing. */
const patience = 3000

const inTime = <Result>(opening: Promise<Result>): Promise<Result> =>
  Promise.race([
    opening,
    new Promise<never>((_, refuse) => {
      setTimeout(() => {
        refuse(new DOMException('', 'TimeoutError'))
      }, patience)
    }),
  ])
