import { planRead } from '../engine/planTrain'
import { figuresOf } from '../engine/scene/figures'
import { sentenceOf } from '../engine/sheet/sentence'
import { readTrain, readTrainText } from '../engine/train/readTrain'
import { glpkSolver } from '../solvers/glpk'
import { ready, type Reply, type Request } from './messages'
import { study } from './study'
import type { StudyRequest } from './studyMessages'

/**
 * The planner of the page: reads, plans and draws away from the main thread. The page runs it more
 * than once: one instance plans, so that a plan never waits, others study choices and reasons.
 */
const solver = glpkSolver()
solver.then(
  () => {
    self.postMessage(ready)
  },
  () => {
    // whoever asks for a plan is told why there is none
  },
)

async function answer(request: Request): Promise<Reply> {
  const { id } = request
  try {
    const read = request.kind === 'text' ? readTrainText(request.text) : readTrain(request.document)
    if (!read.ok) return { id, kind: 'refused', refused: read.refused }
    const { document, train } = read
    const planned = planRead(train, await solver)
    return {
      id,
      kind: 'drawn',
      document,
      drawing: {
        train,
        answer: planned,
        sentence: sentenceOf(train, planned),
        figures: figuresOf(train, planned),
      },
    }
  } catch (error) {
    return { id, kind: 'failed', why: error instanceof Error ? error.message : String(error) }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<Request | StudyRequest>) => {
  if (data.kind === 'text' || data.kind === 'document')
    void answer(data).then((reply) => {
      self.postMessage(reply)
    })
  else
    void solver.then((ready) =>
      study(data, ready, (reply) => {
        self.postMessage(reply)
      }),
    )
})
