import { afterAll, beforeEach, vi } from 'vitest'
import type { WorkerScope } from './workerScopes'

/** What a worker of the page is asked for, beside plans: what a test does not want is never begun. */
export type Asked = 'analysis' | 'reasons' | 'why' | 'work' | 'from here' | 'ahead'

const always = ['solver', 'text', 'document', 'along', 'stop']
let wanted: ReadonlySet<string> = new Set()

/** Says what workers may answer from now on; plans always. */
export function answering(...kinds: readonly Asked[]): void {
  wanted = new Set<string>(kinds)
}

/** Somebody reaching for the share asks for plans ahead, by a word alone. */
const isWanted = (data: Message | string): boolean =>
  typeof data === 'string'
    ? wanted.has('ahead')
    : always.includes(data.kind) || wanted.has(data.kind)

/** Workers that were begun: a file of tests ends them, and does not end while a script is still being loaded. */
const begun: WorkerHere[] = []

/** A file of tests has ended: whatever still asks for a worker gets one that never comes to anything. */
let over = false

const scopes = new Map<string, WorkerScope>()
globalThis.workerScopes = scopes

interface Message {
  readonly id: number
  readonly kind: string
}

/** A worker whose own script runs in this thread; messages are copied, and come later, as from another. */
class WorkerHere extends EventTarget {
  private readonly inside = new EventTarget()
  readonly loaded: Promise<unknown>
  private readonly plans: boolean
  private ended = false

  constructor(script: URL | string) {
    super()
    const [file] = /[^/]+\.worker\.ts/.exec(String(script)) ?? []
    if (file === undefined) throw new Error(`no script of a worker: ${String(script)}`)
    this.plans = file === 'planner.worker.ts'
    const scope = String(scopes.size)
    scopes.set(scope, {
      self: {
        addEventListener: this.inside.addEventListener.bind(this.inside),
        postMessage: (data: unknown) => {
          this.tell(this, data)
        },
      },
      setTimeout: (later, ms) => (wanted.has('ahead') ? setTimeout(later, ms) : undefined),
    })
    if (over) {
      this.loaded = new Promise(() => undefined)
      return
    }
    this.loaded = scripts[file]?.(scope) ?? Promise.reject(new Error(`not known here: ${file}`))
    begun.push(this)
  }

  postMessage(data: Message | string): void {
    if (this.plans && !isWanted(data)) {
      if (typeof data !== 'string') this.tell(this, { id: data.id, kind: 'begun' })
      return
    }
    void this.loaded.then(() => {
      this.tell(this.inside, data)
    })
  }

  terminate(): void {
    this.ended = true
  }

  private tell(whom: EventTarget, data: unknown): void {
    const copy: unknown = structuredClone(data)
    setTimeout(() => {
      if (!this.ended) whom.dispatchEvent(new MessageEvent('message', { data: copy }))
    }, 0)
  }
}

const scripts: Readonly<Record<string, (scope: string) => Promise<unknown>>> = {
  'planner.worker.ts': (scope) =>
    import(/* @vite-ignore */ `../../src/worker/planner.worker.ts?scope=${scope}`),
  'paper.worker.ts': (scope) =>
    import(/* @vite-ignore */ `../../src/worker/paper.worker.ts?scope=${scope}`),
}

/** Has the tests of a file answered by workers here. */
export function useWorkersHere(): void {
  beforeEach(() => {
    over = false
    answering()
    vi.stubGlobal('Worker', WorkerHere)
  })
  afterAll(async () => {
    over = true
    await Promise.allSettled(begun.map(({ loaded }) => loaded))
    // what is still on its way would come when the page of these tests is gone
    for (const worker of begun.splice(0)) worker.terminate()
  }, 60_000)
}
