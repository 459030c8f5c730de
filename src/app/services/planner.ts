import type { TrainDocument } from '../../document/schema'
import type { Train } from '../../mechanics/train'
import { alongKey, sameButShare } from '../../worker/shareSweepKey'
import {
  reaching,
  ready,
  type Ahead,
  type Drawing,
  type Reply,
  type PlannerRequest,
} from '../../worker/messages'

type Question =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'document' | 'along'; readonly document: TrainDocument }

interface Waiting {
  readonly request: PlannerRequest
  readonly settle: (reply: Reply | undefined) => void
}

/** A request that a newer one waits for is given up after this long (ms); starting anew takes about 60. */
const patience = 400

/**
 * Talks to the planner's worker. One request is under way at a time and at most one waits: a newer
 * one takes the place of the waiting one. A worker that keeps a newer request waiting is ended and
 * started afresh, but never while it still loads its solver: starting over would not be faster.
 * Once somebody has reached for the share the worker makes plans ahead, between two requests, for other
 * shares of the same train; a share that is dragged to one of those has its plan at once.
 */
export class Planner {
  private worker: Worker | undefined
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
      if (!this.busy) this.send()
      else this.wait()
    })
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
    this.busy = this.next
    this.next = undefined
    if (!this.busy) return
    this.worker ??= this.start()
    this.worker.postMessage(this.busy.request)
  }

  private start(): Worker {
    const worker = new Worker(new URL('../../worker/planner.worker.ts', import.meta.url), {
      type: 'module',
    })
    worker.addEventListener('message', ({ data }: MessageEvent<Reply | Ahead | typeof ready>) => {
      if (data === ready) {
        this.loaded = true
        return
      }
      if (data.kind === 'ahead') {
        this.keep(data)
        return
      }
      if (data.id !== this.busy?.request.id) return
      if (data.kind === 'drawn') {
        const { request } = this.busy
        // as the worker tells documents apart
        const document = request.kind === 'text' ? data.document : (request.document as object)
        this.drawn = { key: alongKey(document), train: data.drawing.train }
      }
      this.busy.settle(data)
      this.send()
    })
    worker.addEventListener('error', (event) => {
      if (!this.busy) return
      const { busy } = this
      this.end()
      busy.settle({ id: busy.request.id, kind: 'failed', why: event.message })
      this.send()
    })
    if (this.reached) worker.postMessage(reaching)
    return worker
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
    this.worker?.terminate()
    this.worker = undefined
    this.loaded = false
    this.busy = undefined
  }
}
