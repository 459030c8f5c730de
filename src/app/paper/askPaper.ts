import { compiledSolver } from '../services/plannerWorker'
import { notLoaded } from '../services/workerWatch'
import type { PaperReply, PaperRequest } from '../../worker/paperMessages'

/** Has a work sheet laid out by a worker of its own, which is ended when it has answered. */
export function askPaper(request: Omit<PaperRequest, 'solver'>): Promise<PaperReply> {
  const worker = new Worker(new URL('../../worker/paper.worker.ts', import.meta.url), {
    type: 'module',
  })
  return new Promise<PaperReply>((answered) => {
    worker.addEventListener('message', ({ data }: MessageEvent<PaperReply>) => {
      answered(data)
    })
    worker.addEventListener('error', (event) => {
      answered({ kind: 'none', why: event.message || notLoaded })
    })
    worker.postMessage({ ...request, solver: compiledSolver() })
  }).finally(() => {
    worker.terminate()
  })
}
