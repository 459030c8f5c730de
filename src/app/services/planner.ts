import type { TrainDocument } from '../../document/schema'
import type { Train } from '../../mechanics/train'
import { alongKey, sameButShare } from '../../worker/shareSweepKey'
import {
  reaching,
  ready,
  type Ahead,
  type Drawing,
  type LifeSign,
  type Reply,
  type PlannerRequest,
} from '../../worker/messages'
import { startPlannerWorker } from './plannerWorker'
import { notLoaded, WorkerWatch } from './workerWatch'

type Question = {
  /** How many times the usual work it may take. */
  readonly work?: number
} & (
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'document' | 'along'; readonly document: TrainDocument }
)

interface Waiting {
  readonly request: PlannerRequest
  readonly settle: (reply: Reply | undefined) => void
}

/** The planner does not work: why, and whether it is started again by itself or waits to be. */
export interface PlannerTrouble {
  readonly why: string
  readonly restarts: boolean
}

/** How long (ms) it rests before each start by itself: what was missing may be there by then. */
const rests = [1000, 5000, 20_000]

/** A request that a newer one waits for is given up after this long (ms); starting anew takes about 60. */
const patience = 400

/**
 * Talks to the planner's worker. One request is under way at a time and at most one waits: a newer
 * one takes the place of the waiting one. A worker that keeps a newer request waiting is ended and
 * started afresh, but never while it still loads its solver: starting over would not be faster.
 * One that is lost is started again, a few times by itself, and what it was asked is asked again.
 * Once somebody has reached for the share the worker makes plans ahead, between two requests, for other
 * shares of the same train; a share that is dragged to one of those has its plan at once.
 */
export class Planner {
  private worker: Worker | undefined
  private watch: WorkerWatch | undefined
  /** Starts in a row that came to nothing. */
  private tries = 0
  private restart: ReturnType<typeof setTimeout> | undefined
  private readonly trouble: (trouble: PlannerTrouble | undefined) => void
  private loaded = false
  private busy: Waiting | undefined
  private next: Waiting | undefined
  private timer: ReturnType<typeof setTimeout> | undefined
  private count = 0
  private reached = false
  /** The train last drawn, and the one whose plans were made ahead, by share. */
  private drawn: { readonly key: string; readonly train: Train } | undefined
  private ahead:
    | { readonly key: string; readonly train: Train; readonly drawings: Map<number, Drawing> }
    | undefined
  /** A document whose key was asked for last: most often the next differs in the share alone. */
  private last: { readonly document: TrainDocument; readonly key: string } | undefined

  /** @param trouble is told when the planner does not work, and when it does again */
  constructor(trouble: (trouble: PlannerTrouble | undefined) => void) {
    this.trouble = trouble
  }

  /** The reply, or undefined when a newer request overtook this one; at once where the plan was made ahead. */
  ask(question: Question): Reply | Promise<Reply | undefined> {
    const request: PlannerRequest = { id: ++this.count, ...question }
    const known = question.kind === 'along' ? this.known(question.document) : undefined
    if (known) {
      this.overtake()
      return { id: request.id, ...known }
    }
    return new Promise((settle) => {
      this.next?.settle(undefined)
      this.next = { request, settle }
      if (this.busy) this.wait()
      // while it rests before its next start, that start asks
      else if (this.restart === undefined) this.send()
    })
  }

  /** Starts it before there is anything to ask, so that it is loaded by then. */
  wake(): void {
    this.worker ??= this.start()
  }

  /** Starts a planner again that is no longer started by itself. */
  startAgain(): void {
    this.tries = 0
    this.send()
  }

  /** Somebody is about to change the share. */
  reach(): void {
    if (this.reached) return
    this.reached = true
    this.worker?.postMessage(reaching)
  }

  /** The plan of a share, if it was made ahead. */
  private known(
    document: TrainDocument,
  ): Omit<Extract<Reply, { kind: 'drawn' }>, 'id'> | undefined {
    if (this.keyOf(document) !== this.ahead?.key) return undefined
    const drawing = this.ahead.drawings.get(document.plan?.share ?? 1)
    return drawing && { kind: 'drawn', document, drawing }
  }

  private keyOf(document: TrainDocument): string {
    const { last } = this
    const key = last && sameButShare(last.document, document) ? last.key : alongKey(document)
    this.last = { document, key }
    return key
  }

  /** What is still being worked out is older than what is known now. */
  private overtake(): void {
    clearTimeout(this.timer)
    this.timer = undefined
    this.next?.settle(undefined)
    this.next = undefined
    this.busy?.settle(undefined)
  }

  private keep({ key, drawing }: Ahead): void {
    if (key !== this.ahead?.key) {
      if (key !== this.drawn?.key) return
      this.ahead = { ...this.drawn, drawings: new Map() }
    }
    const { train, drawings } = this.ahead
    const { share } = drawing.answer
    drawings.set(share, { ...drawing, train: { ...train, plan: { ...train.plan, share } } })
  }

  private wait(): void {
    this.timer ??= setTimeout(() => {
      this.giveUp()
    }, patience)
  }

  private send(): void {
    clearTimeout(this.timer)
    this.timer = undefined
    clearTimeout(this.restart)
    this.restart = undefined
    this.busy = this.next
    this.next = undefined
    if (!this.busy) return
    this.worker ??= this.start()
    this.worker.postMessage(this.busy.request)
    this.watch?.sent()
  }

  private start(): Worker {
    const worker = startPlannerWorker()
    const watch = new WorkerWatch((why) => {
      this.lose(why)
    }, this.tries)
    this.watch = watch
    worker.addEventListener('message', ({ data }: MessageEvent<Reply | Ahead | LifeSign>) => {
      if (worker !== this.worker) return
      if (data === ready) {
        this.loaded = true
        watch.ready()
        return
      }
      if (data.kind === 'compiled') return
      if (data.kind === 'alive') {
        watch.holds(data.lock)
        return
      }
      if (data.kind === 'not loaded') {
        watch.lose(data.why)
        return
      }
      if (data.kind === 'ahead') {
        this.keep(data)
        return
      }
      if (data.id !== this.busy?.request.id) return
      watch.begun()
      if (data.kind === 'begun') return
      this.works()
      if (data.kind === 'drawn') {
        const { request } = this.busy
        // as the worker tells documents apart
        const document = request.kind === 'text' ? data.document : (request.document as object)
        this.drawn = { key: alongKey(document), train: data.drawing.train }
      }
      this.busy.settle(data)
      this.send()
    })
    worker.addEventListener('error', ({ message }) => {
      watch.lose(message || notLoaded)
    })
    if (this.reached) worker.postMessage(reaching)
    return worker
  }

  /** The worker is no more: what it was asked, or what came later, is asked of another. */
  private lose(why: string): void {
    const { busy } = this
    this.end()
    if (this.next) busy?.settle(undefined)
    else this.next = busy
    clearTimeout(this.timer)
    this.timer = undefined
    // one that was lost with nothing to do is started when there is something
    if (!this.next) return
    const rest = rests[this.tries++]
    if (rest !== undefined)
      this.restart = setTimeout(() => {
        this.send()
      }, rest)
    this.trouble({ why, restarts: rest !== undefined })
  }

  private works(): void {
    this.trouble(undefined)
    this.tries = 0
  }

  private giveUp(): void {
    this.timer = undefined
    if (!this.loaded) {
      this.wait()
      return
    }
    const { busy } = this
    this.end()
    busy?.settle(undefined)
    this.send()
  }

  private end(): void {
    this.watch?.end()
    this.worker?.terminate()
    this.worker = undefined
    this.loaded = false
    this.busy = undefined
  }
}
