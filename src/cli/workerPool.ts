import { Worker } from 'node:worker_threads'

/** What came of a task: its answer, or why the worker that had it gave none. */
export type Done<Answer> =
  | { readonly kind: 'answered'; readonly answer: Answer }
  | { readonly kind: 'died'; readonly why: string }

interface Waiting<Task, Answer> {
  readonly task: Task
  readonly done: (result: Done<Answer>) => void
}

/**
 * Worker threads that each take one task at a time, as a message, and answer with one. A worker that dies is told as the
 * answer of its task, and the next task starts another in its place.
 */
export class WorkerPool<Task, Answer> {
  private readonly waiting: Waiting<Task, Answer>[] = []
  private readonly idle: Worker[] = []
  private readonly all = new Set<Worker>()

  /** @param script what each worker runs */
  constructor(
    private readonly script: URL,
    private readonly size: number,
  ) {}

  ask(task: Task): Promise<Done<Answer>> {
    return new Promise((done) => {
      this.waiting.push({ task, done })
      this.next()
    })
  }

  async close(): Promise<void> {
    await Promise.all([...this.all].map((worker) => worker.terminate()))
  }

  private next(): void {
    if (this.waiting.length === 0) return
    const worker = this.idle.pop() ?? (this.all.size < this.size ? this.start() : undefined)
    const first = worker && this.waiting.shift()
    if (first) this.give(worker, first)
  }

  private start(): Worker {
    const worker = new Worker(this.script)
    this.all.add(worker)
    // an error is followed by the exit; without a listener it would end the whole command
    worker.on('error', () => undefined)
    worker.on('exit', () => {
      this.all.delete(worker)
      const at = this.idle.indexOf(worker)
      if (at >= 0) this.idle.splice(at, 1)
      this.next()
    })
    return worker
  }

  private give(worker: Worker, { task, done }: Waiting<Task, Answer>): void {
    let why = ''
    const failed = (error: unknown): void => {
      why = error instanceof Error ? error.message : String(error)
    }
    const answered = (answer: Answer): void => {
      worker.off('error', failed).off('exit', ended)
      this.idle.push(worker)
      done({ kind: 'answered', answer })
      this.next()
    }
    const ended = (code: number): void => {
      worker.off('message', answered)
      done({ kind: 'died', why: why === '' ? `it ended with ${code}` : why })
    }
    worker.once('message', answered).once('error', failed).once('exit', ended)
    worker.postMessage(task)
  }
}
