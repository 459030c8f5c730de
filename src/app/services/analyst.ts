import type { AnalysisReply, AnalysisRequest } from '../../worker/analysisMessages'
import { ready, type LifeSign } from '../../worker/messages'
import { startPlannerWorker } from './plannerWorker'
import { notLoaded } from './workerWatch'

type WithoutId<T> = T extends unknown ? Omit<T, 'id'> : never
type Question = WithoutId<Exclude<AnalysisRequest, { kind: 'stop' }>>

/** A planner that has not begun what it was asked after this long (ms) is ended and started afresh. */
const patience = 500

/** Talks to a planner that answers bit by bit. What is asked later overtakes what is under way. */
export class Analyst {
  private worker: Worker | undefined
  private timer: ReturnType<typeof setTimeout> | undefined
  private asked: AnalysisRequest | undefined
  private count = 0
  private readonly told: (reply: AnalysisReply) => void

  constructor(told: (reply: AnalysisReply) => void) {
    this.told = told
  }

  ask(question: Question): number {
    const request = { id: ++this.count, ...question }
    this.asked = request
    this.send(request)
    return request.id
  }

  /** Ends what is under way; what was answered stays as it is. */
  stop(id: number): void {
    this.worker?.postMessage({ id, kind: 'stop' } satisfies AnalysisRequest)
  }

  end(): void {
    clearTimeout(this.timer)
    this.worker?.terminate()
    this.worker = undefined
    this.asked = undefined
  }

  private send(request: AnalysisRequest): void {
    const fresh = this.worker === undefined
    this.worker ??= this.start()
    this.worker.postMessage(request)
    clearTimeout(this.timer)
    // a worker just started loads its solver first, and has nothing to be torn from
    if (!fresh)
      this.timer = setTimeout(() => {
        this.worker?.terminate()
        this.worker = undefined
        this.send(request)
      }, patience)
  }

  private start(): Worker {
    const worker = startPlannerWorker()
    const lost = (why: string): void => {
      if (worker !== this.worker || !this.asked) return
      const { id } = this.asked
      // the next question starts another
      this.end()
      this.told({ id, kind: 'failed', why })
    }
    worker.addEventListener('message', ({ data }: MessageEvent<AnalysisReply | LifeSign>) => {
      if (data === ready || data.kind === 'alive' || data.kind === 'compiled') return
      if (data.kind === 'not loaded') {
        lost(data.why)
        return
      }
      if (data.id === this.asked?.id) clearTimeout(this.timer)
      if (worker === this.worker) this.told(data)
    })
    worker.addEventListener('error', ({ message }) => {
      lost(message || notLoaded)
    })
    return worker
  }
}
