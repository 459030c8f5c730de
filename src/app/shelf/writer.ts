import type { Kept, Keeping, Writing, Written } from './keep'

interface Waiting {
  readonly settle: (keeping: Keeping) => void
  readonly refuse: (error: Error) => void
}

/** Has sheets written to the shelf by a worker: a page in which a hand drags has no time for it. */
export class Writer {
  private worker: Worker | undefined
  private readonly waiting = new Map<number, Waiting>()
  private count = 0

  /** As `keepIn`; rejects with an error of the same name as the database's. */
  keep(id: string, sheet: Kept, base: number): Promise<Keeping> {
    this.worker ??= this.start()
    const n = ++this.count
    this.worker.postMessage({ n, id, sheet, base } satisfies Writing)
    return new Promise((settle, refuse) => this.waiting.set(n, { settle, refuse }))
  }

  private start(): Worker {
    const worker = new Worker(new URL('./keep.worker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<Written>) => {
      const waiting = this.waiting.get(data.n)
      this.waiting.delete(data.n)
      if ('keeping' in data) waiting?.settle(data.keeping)
      else waiting?.refuse(new DOMException(data.failed.message, data.failed.name))
    })
    worker.addEventListener('error', ({ message }) => {
      worker.terminate()
      if (this.worker === worker) this.worker = undefined
      for (const { refuse } of this.waiting.values()) refuse(new Error(message))
      this.waiting.clear()
    })
    return worker
  }
}
