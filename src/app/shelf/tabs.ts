/** What pages of this browser tell each other. */
export type Word =
  | { readonly kind: 'kept'; readonly job: string; readonly revision: number }
  | { readonly kind: 'removed' | 'restored'; readonly job: string }
  /** The shelf has changed in some other way, or a page came to a job or left it. */
  | { readonly kind: 'shelf' | 'pages' }

const channel = 'holdfast-shelf'
const lock = 'holdfast job '

/**
 * The other pages of this browser. Each holds a lock that names its job while that is on its sheet: the
 * browser lets go of it even when a page crashes, so that nobody is counted who is gone.
 */
export class Tabs {
  private readonly page = crypto.randomUUID()
  private readonly channel = new BroadcastChannel(channel)
  private letGo: (() => void) | undefined
  private job: string | undefined

  /** Locks of other pages that this one waits for, to hear when they are let go of. */
  private readonly watched = new Set<string>()
  private readonly heard: (word: Word) => void

  constructor(heard: (word: Word) => void) {
    this.heard = heard
    this.channel.onmessage = ({ data }: MessageEvent<Word>) => {
      heard(data)
    }
  }

  say(word: Word): void {
    this.channel.postMessage(word)
  }

  /** Says that this job, or none, is on this page's sheet. */
  async at(job: string | undefined): Promise<void> {
    if (job === this.job) return
    this.job = job
    this.letGo?.()
    this.letGo = undefined
    if (job !== undefined && 'locks' in navigator)
      await new Promise<void>((there) => {
        void navigator.locks.request(`${lock}${job} ${this.page}`, () => {
          there()
          return new Promise<void>((go) => {
            if (this.job === job) this.letGo = go
            else go()
          })
        })
      })
    this.say({ kind: 'pages' })
  }

  /** How many other pages have this page's job on their sheets. */
  async others(): Promise<number> {
    if (this.job === undefined || !('locks' in navigator)) return 0
    const { held = [] } = await navigator.locks.query()
    const names = held.map(({ name = '' }) => name)
    const others = names.filter(
      (name) => name.startsWith(`${lock}${this.job ?? ''} `) && !name.endsWith(this.page),
    )
    for (const name of others) void this.watch(name)
    return others.length
  }

  private async watch(name: string): Promise<void> {
    if (this.watched.has(name)) return
    this.watched.add(name)
    await navigator.locks.request(name, () => undefined)
    this.watched.delete(name)
    this.heard({ kind: 'pages' })
  }
}
