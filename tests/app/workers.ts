import { afterEach, beforeEach, vi } from 'vitest'
import type { PaperRequest } from '../../src/worker/paperMessages'
import { layPaper } from '../../src/worker/layPaper'
import { servePlanner, type PlannerScope } from '../../src/worker/servePlanner'

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

/** Workers that were begun: they end with the test, and what they know goes with them. */
const begun: WorkerHere[] = []

interface Message {
  readonly id: number
  readonly kind: string
}

/** A worker whose own script runs in this thread; messages are copied, and come later, as from another. */
class WorkerHere extends EventTarget {
  private inside = new EventTarget()
  private readonly plans: boolean
  private ended = false

  constructor(script: URL | string) {
    super()
    const [file] = /[^/]+\.worker\.ts/.exec(String(script)) ?? []
    this.plans = file === 'planner.worker.ts'
    if (this.plans) servePlanner(this.scope())
    else if (file === 'paper.worker.ts') this.layPapers()
    else throw new Error(`no script of a worker that is known here: ${String(script)}`)
    begun.push(this)
  }

  /** What a planner finds around it. */
  private scope(): PlannerScope {
    return {
      postMessage: (data: unknown) => {
        this.tell(this, data)
      },
      addEventListener: (kind, hear) => {
        this.inside.addEventListener(kind, hear as (event: Event) => void)
      },
      setTimeout: (later: () => void, ms?: number) =>
        wanted.has('ahead') ? Number(setTimeout(later, ms)) : 0,
    }
  }

  private layPapers(): void {
    this.inside.addEventListener('message', (event) => {
      void layPaper((event as MessageEvent<PaperRequest>).data).then((reply) => {
        this.tell(this, reply)
      })
    })
  }

  postMessage(data: Message | string): void {
    if (this.plans && !isWanted(data)) {
      if (typeof data !== 'string') this.tell(this, { id: data.id, kind: 'begun' })
      return
    }
    this.tell(this.inside, data)
  }

  terminate(): void {
    this.ended = true
    // what the script knows goes with it, whoever still holds this worker
    this.inside = new EventTarget()
  }

  private tell(whom: EventTarget, data: unknown): void {
    const copy: unknown = structuredClone(data)
    setTimeout(() => {
      if (!this.ended) whom.dispatchEvent(new MessageEvent('message', { data: copy }))
    }, 0)
  }
}

/** Has the tests of a file answered by workers here. */
export function useWorkersHere(): void {
  beforeEach(() => {
    answering()
    vi.stubGlobal('Worker', WorkerHere)
  })
  afterEach(() => {
    for (const worker of begun.splice(0)) worker.terminate()
  })
}
