import type { AnalysisReply } from '../../worker/analysisMessages'
import type { Ahead, LifeSign, Reply, SolverHanded } from '../../worker/messages'

/** The solver's program, once a planner of this page has compiled it. */
let solver: WebAssembly.Module | undefined

/** What other workers of the page need not compile again; undefined while none has. */
export const compiledSolver = (): WebAssembly.Module | undefined => solver

/** Starts a planner and hands it the solver that another has compiled; its own goes to those who come after. */
export function startPlannerWorker(): Worker {
  const worker = new Worker(new URL('../../worker/planner.worker.ts', import.meta.url), {
    type: 'module',
  })
  worker.addEventListener(
    'message',
    ({ data }: MessageEvent<LifeSign | Reply | Ahead | AnalysisReply>) => {
      if (typeof data !== 'string' && data.kind === 'compiled') solver = data.module
    },
  )
  worker.postMessage({ kind: 'solver', module: solver } satisfies SolverHanded)
  return worker
}
