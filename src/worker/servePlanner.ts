import type { PlanAnswer } from '../engine/fieldwork/answer'
import { figuresOf } from '../scene/figures'
import { sentenceOf } from '../engine/plan/sentence'
import type { Train } from '../mechanics/train'
import { readTrain, readTrainText } from '../document/readTrain'
import { glpkSolver } from '../solvers/glpk'
import { offStraight } from '../engine/offStraight'
import { PlanRun } from '../engine/plan/planRun'
import { alongKey } from './shareSweepKey'
import { fetchedOnce } from './fetchedOnce'
import { KnownTrains } from './knownTrains'
import {
  reaching,
  ready,
  type Ahead,
  type Drawing,
  type LifeSign,
  type Reply,
  type PlannerRequest,
  type SolverHanded,
} from './messages'
import { pause } from './pause'
import type { AnalysisReply, AnalysisRequest } from './analysisMessages'

/** What a planner sees of the worker it runs in: messages, a clock, locks where the browser has them. */
export type PlannerScope = Pick<DedicatedWorkerGlobalScope, 'postMessage' | 'setTimeout'> & {
  addEventListener: (kind: 'message', hear: (event: MessageEvent<Heard>) => void) => void
  readonly navigator?: WorkerNavigator
}

type Heard = SolverHanded | PlannerRequest | AnalysisRequest | typeof reaching

/** A train that nobody has touched for so long (ms) has its plans made ahead before anybody reaches for its share. */
const untouched = 4000

const whyOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

const drawingOf = (train: Train, answer: PlanAnswer): Drawing => ({
  train,
  answer,
  sentence: sentenceOf(train, answer),
  figures: figuresOf(train, answer),
})

const studies = fetchedOnce(() =>
  import('./studies').catch(() => {
    throw new Error('a part of its program could not be loaded; the next change tries again')
  }),
)

/**
 * The planner of the page: reads, plans and draws away from the main thread. The page runs it more
 * than once: one instance plans, so that a plan never waits, others analysis choices and reasons.
 * All that an instance knows goes with its scope.
 */
export function servePlanner(scope: PlannerScope): void {
  let handed: (module: WebAssembly.Module | undefined) => void = () => undefined
  const solver = new Promise<WebAssembly.Module | undefined>((hand) => (handed = hand)).then(
    (module) =>
      glpkSolver(module, (compiled) => {
        tell({ kind: 'compiled', module: compiled })
      }),
  )
  const tell = (sign: LifeSign): void => {
    scope.postMessage(sign)
  }
  solver.then(
    () => {
      tell(ready)
    },
    (error: unknown) => {
      tell({ kind: 'not loaded', why: `its solver could not be loaded (${whyOf(error)})` })
    },
  )

  // a lock is let go of by the browser when this worker is no more, even in the middle of a computation
  if ('navigator' in scope && 'locks' in scope.navigator) {
    const lock = `holdfast planner ${crypto.randomUUID()}`
    void scope.navigator.locks.request(lock, () => {
      tell({ kind: 'alive', lock })
      return new Promise(() => undefined)
    })
  }

  const plans = new KnownTrains(
    (read, ready, work) => new PlanRun(offStraight(read.train, ready, work), ready, { work }),
  )
  /** The newest request for a plan. */
  let latest = 0
  /** Whether anybody has reached for the share, and what makes the plans of the newest train ahead. */
  let reached = false
  let prepare: (() => void) | undefined

  async function answer(request: PlannerRequest): Promise<Reply> {
    const { id } = request
    latest = id
    tell({ kind: 'begun', id })
    try {
      const read =
        request.kind === 'text' ? readTrainText(request.text) : readTrain(request.document)
      if (!read.ok) return { id, kind: 'refused', refused: read.refused }
      const { document, train } = read
      const along = request.kind === 'along'
      const ready = await solver
      // as the page has it, which compares by the same key
      const key = alongKey(request.kind === 'text' ? document : (request.document as object))
      // a chance that is asked for decides the share
      const chosen = train.plan.sure?.chance !== undefined
      const run = chosen
        ? (await studies()).studiedTrains.of(read, ready, request.work).run
        : plans.of(read, ready, request.work)
      const planned =
        along && !chosen ? (await studies()).alongPlanner.plan(key, train, ready) : run.priced()
      // between two requests, what plans along the trade-off start from
      const wanted = async () => {
        await pause()
        return latest === id
      }
      const made = (next: Train, answer: PlanAnswer) => {
        const { answer: told, sentence, figures } = drawingOf(next, answer)
        const ahead: Ahead = { kind: 'ahead', key, drawing: { answer: told, sentence, figures } }
        scope.postMessage(ahead)
      }
      prepare = () =>
        void studies()
          .then(({ alongPlanner }) => alongPlanner.ready(key, train, ready, wanted, made))
          .catch(() => undefined) // without it plans are made anew, which takes longer
      if (reached) prepare()
      else
        scope.setTimeout(() => {
          if (!reached && latest === id) prepare?.()
        }, untouched)
      return {
        id,
        kind: 'drawn',
        document,
        drawing: drawingOf(along && !chosen ? train : run.train, planned),
      }
    } catch (error) {
      return { id, kind: 'failed', why: whyOf(error) }
    }
  }

  async function study(request: AnalysisRequest): Promise<void> {
    // that the solver is not loaded is said already
    const ready = await solver.catch(() => undefined)
    if (!ready) return
    const post = (reply: AnalysisReply) => {
      scope.postMessage(reply)
    }
    try {
      await (await studies()).analyses.analysis(request, ready, post)
    } catch (error) {
      post({ id: request.id, kind: 'failed', why: whyOf(error) })
    }
  }

  scope.addEventListener('message', ({ data }: MessageEvent<Heard>) => {
    if (data === reaching) {
      reached = true
      prepare?.()
      return
    }
    if (data.kind === 'solver') handed(data.module)
    else if (data.kind === 'text' || data.kind === 'document' || data.kind === 'along')
      void answer(data).then((reply) => {
        scope.postMessage(reply)
      })
    else void study(data)
  })
}
