import { whyFoot } from '../engine/studies/why/whyFoot'
import { floorReason } from '../engine/infeasible/floor/floorReason'
import { bestFromHere } from '../engine/studies/hand/fromHere'
import { choiceNow } from '../engine/studies/holds/choice'
import { holdRows, rankedHolds, solvesAll, theBest } from '../engine/studies/holds/holdRows'
import { madeOf } from '../engine/rounding/answer'
import { HoldSolver } from '../engine/studies/holds/holdSolver'
import type { HoldRow } from '../engine/studies/holds/row'
import { PlanningRun, type ReadTrain } from '../engine/planningRun'
import { holdList } from '../text/holdList'
import type { Solver } from '../engine/lp/solver'
import { tradeoffSteps } from '../engine/studies/tradeoff/tradeoff'

import { readTrain } from '../document/readTrain'
import { pause } from './pause'
import type { AnalysisReply, AnalysisRequest, Work } from './analysisMessages'

/** Work between two looks at the messages that came in meanwhile (ms). */
const slice = 30
/** A longer list is ranked and sent again no sooner than this (ms) ... */
const often = 200
/** ... and never so often that ranking takes more than this part of the time. */
const ranking = 5

type Post = (reply: AnalysisReply) => void

/** Analyses one train at a time: a newer request ends the one under way. */
export class Analyses {
  /** The analysis that is under way; an older one ends at its next breath. */
  private latest = 0

  /** Answers one request, bit by bit; a request that was overtaken or stopped just ends. */
  async analysis(request: AnalysisRequest, solver: Solver, post: Post): Promise<void> {
    const { id } = request
    post({ id, kind: 'begun' })
    try {
      if (request.kind === 'stop') {
        if (this.latest === id) this.latest = 0
        return
      }
      const read = readTrain(request.document)
      if (!read.ok) return
      if (request.kind === 'why') {
        const run = new PlanningRun(read, solver)
        const { body, foot } = request
        const row = madeOf(run.rounding())?.feet.find(
          (one) => one.body === body && one.foot === foot,
        )
        const whys = (['shim', 'slide'] as const).flatMap((way) => {
          const rounded = way === 'shim' ? row?.shim : row?.side
          const options = rounded === undefined ? {} : { rounded }
          return whyFoot(run, { body, foot, way }, options) ?? []
        })
        post({ id, kind: 'why', whys })
      } else if (request.kind === 'work') post({ id, kind: 'work', work: work(read, solver) })
      else if (request.kind === 'from here')
        post({ id, kind: 'from here', from: bestFromHere(read.train, request.hand, solver) })
      else if (request.kind === 'reasons')
        post({ id, kind: 'reasons', reasons: new PlanningRun(read, solver).reasons() })
      else {
        this.latest = id
        await this.studied(id, read, request.curve, solver, post)
      }
    } catch (error) {
      post({ id, kind: 'failed', why: error instanceof Error ? error.message : String(error) })
    }
  }

  /** First the choice that is held now, then the curve and its floor, then every other choice. */
  private async studied(
    id: number,
    { train }: ReadTrain,
    curve: boolean,
    solver: Solver,
    post: Post,
  ): Promise<void> {
    const breath = this.breathing(id)
    const holds = new HoldSolver(train, solver)
    const rows: HoldRow[] = []
    const complete = solvesAll(train)
    const tell = (done: number, total: number | undefined, finished: boolean) => {
      const list = holdList(
        train,
        rankedHolds(holds, complete ? rows : theBest(train, rows)),
        complete,
      )
      post({ id, kind: 'holds', list, done, total, finished })
    }
    const choices = holdRows(holds, { prices: false })
    const first = choices.next()
    if (!first.done) {
      rows.push(first.value.row)
      tell(1, first.value.total, false)
    }
    if (curve) {
      const steps = tradeoffSteps(holds)
      let step = steps.next()
      while (!step.done) {
        if (!(await breath())) return
        step = steps.next()
      }
      const floor = floorReason(holds, holds.free(choiceNow(train)))?.sentence ?? ''
      post({ id, kind: 'curve', tradeoff: step.value, floor })
    }
    let told = performance.now()
    let rest = often
    let total: number | undefined
    for (const progress of choices) {
      rows.push(progress.row)
      ;({ total } = progress)
      if (!(await breath())) return
      const now = performance.now()
      if (now - told < rest) continue
      tell(rows.length, total, false)
      told = performance.now()
      rest = Math.max(often, ranking * (told - now))
    }
    tell(rows.length, rows.length, true)
  }

  /** Lets messages in after each slice of work; false when the analysis is no longer wanted. */
  private breathing(id: number): () => Promise<boolean> {
    let since = performance.now()
    return async () => {
      if (performance.now() - since > slice) {
        await pause()
        since = performance.now()
      }
      return this.latest === id
    }
  }
}

function work(read: ReadTrain, solver: Solver): Work {
  const run = new PlanningRun(read, solver)
  return { rounded: run.rounding(), ready: run.ready(), steps: run.steps() }
}
