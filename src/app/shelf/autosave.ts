import { storageErrorText } from './database'

/** Whether what is on the sheet would be there after the machine went dark now. */
export type KeptState =
  | { readonly kind: 'nothing' }
  /** `upTo`: the time of the newest change that is kept; `when`: the time it was. */
  | { readonly kind: 'kept'; readonly when: number; readonly upTo: number }
  | { readonly kind: 'not yet kept'; readonly upTo: number | undefined }
  | { readonly kind: 'cannot be kept'; readonly reason: string }

/** Between two writings (ms): changes that come quickly are written together. */
export const gap = 50
/** The same while a hand drags, which changes something at every frame. */
export const dragGap = 200
/** A writing that takes longer (ms) is called out; it may still come through. */
export const slow = 5000
/** After a failure it is tried again so often (ms). */
export const again = 4000

/**
 * Writes the newest sheet of each job, one at a time and the first at once. Nothing counts as kept
 * before its writing has ended, and a change that comes meanwhile is not kept until its own has.
 */
export class Autosaver<Item extends { readonly when: number }> {
  private readonly waiting = new Map<string, Item>()
  private writing: Promise<boolean> | undefined
  private timer: ReturnType<typeof setTimeout> | undefined
  /** When the last writing ended. */
  private ended = 0
  private trouble = ''
  private when = 0
  private upTo: number | undefined

  private readonly write: (key: string, item: Item) => Promise<void>
  private readonly show: (state: KeptState) => void
  private readonly dragging: () => boolean

  /**
   * @param write resolves when the item is on the disk; `show` hears of every change of state
   * @param dragging whether a hand is dragging what changes
   */
  constructor(
    write: (key: string, item: Item) => Promise<void>,
    show: (state: KeptState) => void,
    dragging: () => boolean = () => false,
  ) {
    this.write = write
    this.show = show
    this.dragging = dragging
  }

  /** A job has a new sheet, which is to be kept. */
  changed(key: string, item: Item): void {
    this.waiting.set(key, item)
    this.tell()
    if (this.writing || this.timer !== undefined) return
    const rest = this.dragging() ? this.ended + dragGap - Date.now() : 0
    if (rest > 0) this.timer = setTimeout(() => void this.start(), rest)
    else void this.start()
  }

  /** What of a job is not kept yet. */
  unkept(key: string): Item | undefined {
    return this.waiting.get(key)
  }

  get unkeptKeys(): string[] {
    return [...this.waiting.keys()]
  }

  get idle(): boolean {
    return this.waiting.size === 0
  }

  /** Counts everything so far as kept at this time: it was read from the disk. */
  settle(when: number): void {
    this.when = this.upTo = when
    this.tell()
  }

  /** Writes at once what is not kept; resolves to whether everything is. */
  async flush(): Promise<boolean> {
    await this.writing
    while (!this.idle && (await this.start()));
    return this.idle
  }

  /** One turn of writing; what changes meanwhile has its own. Resolves to whether it went well. */
  private start(): Promise<boolean> {
    clearTimeout(this.timer)
    this.timer = undefined
    this.writing ??= this.writeAll([...this.waiting]).then((well) => {
      this.writing = undefined
      this.ended = Date.now()
      const wait = !well ? again : this.dragging() ? dragGap : gap
      if (!this.idle) this.timer = setTimeout(() => void this.start(), wait)
      return well
    })
    return this.writing
  }

  private async writeAll(items: [string, Item][]): Promise<boolean> {
    for (const [key, item] of items) {
      const late = setTimeout(() => {
        this.fail(new DOMException('', 'TimeoutError'))
      }, slow)
      try {
        await this.write(key, item)
      } catch (error) {
        this.fail(error)
        return false
      } finally {
        clearTimeout(late)
      }
      this.trouble = ''
      if (this.waiting.get(key) === item) this.waiting.delete(key)
      this.when = Date.now()
      this.upTo = item.when
      this.tell()
    }
    return true
  }

  private fail(error: unknown): void {
    this.trouble = storageErrorText(error)
    this.tell()
  }

  private tell(): void {
    if (this.trouble !== '' && !this.idle)
      this.show({ kind: 'cannot be kept', reason: this.trouble })
    else if (!this.idle) this.show({ kind: 'not yet kept', upTo: this.upTo })
    else if (this.upTo === undefined) this.show({ kind: 'nothing' })
    else this.show({ kind: 'kept', when: this.when, upTo: this.upTo })
  }
}
