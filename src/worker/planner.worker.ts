import { planRead } from '../engine/planTrain'
import { figuresOf } from '../engine/scene/figures'
import { sentenceOf } from '../engine/sheet/sentence'
import { readTrain, readTrainText } from '../engine/train/readTrain'
import { glpkSolver } from '../solvers/glpk'
import { ready, type Reply, type Request } from './messages'
import { planAlong, readyAlong } from './along'
import { pause } from './pause'
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

/** The newest request for a plan. */
let latest = 0

async function answer(request: Request): Promise<Reply> {
  const { id } = request
  latest = id
  try {
    const read = request.kind === 'text' ? readTrainText(request.text) : readTrain(request.document)
    if (!read.ok) return { id, kind: 'refused', refused: read.refused }
    const { document, train } = read
    const along = request.kind === 'along'
    const ready = await solver
    const planned = along ? planAlong(document, train, ready) : planRead(train, ready)
    // between two requests, what plans along the trade-off start from
    void readyAlong(document, train, ready, async () => {
      await pause()
      return latest === id
    }).catch(() => undefined) // without it plans are made anew, which takes longer
    return {
      id,
      kind: 'drawn',
      document,
      drawing: {
        train,
        answer: planned,
        priced: !along,
        sentence: sentenceOf(train, planned),
        figures: figuresOf(train, planned),
      },
    }
  } catch (error) {
    return { id, kind: 'failed', why: error instanceof Error ? error.message : String(error) }
  }
}

self.addEventListener('message', ({ data }: MessageEvent<Request | StudyRequest>) => {
  if (data.kind === 'text' || data.kind === 'document' || data.kind === 'along')
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
