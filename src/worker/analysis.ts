import { whyFoot } from '../engine/studies/why/whyFoot'
import { floorReason } from '../engine/infeasible/floor/floorReason'
import { bestFromHere } from '../engine/studies/hand/fromHere'
import { choiceNow } from '../engine/studies/holds/choice'
import {
  holdRows,
  rankedHolds,
  solvesAll,
  theBest,
  type HoldProgress,
} from '../engine/studies/holds/holdRows'
import { madeOf } from '../engine/rounding/answer'
import { chanceOfHold, ownRows } from '../engine/sureHolds'
import type { Budget } from '../engine/lp/budget'
import { rankHolds } from '../engine/studies/holds/rank'
import type { HoldRow } from '../engine/studies/holds/row'
import { holdList } from '../text/holdList'
import type { Solver } from '../engine/lp/solver'
import { TradeoffPlanner, tradeoffSteps } from '../engine/studies/tradeoff/tradeoff'
import { chancesAt, sharesAlong, type ChanceAlong } from '../engine/chanceAlong'

import { readTrain } from '../document/readTrain'
import type { KnownTrains } from './knownTrains'
import { pause } from './pause'
import type { StudiedTrain } from './studiedTrains'
import type { AnalysisReply, AnalysisRequest } from './analysisMessages'

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
  /** The plan that is being turned into work; what is worked out of an older one ends likewise. */
  private latestWork = 0
  private readonly trains: KnownTrains<StudiedTrain>

  constructor(trains: KnownTrains<StudiedTrain>) {
    this.trains = trains
  }

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
      const train = this.trains.of(read, solver, request.work)
      const { run } = train
      if (request.kind === 'why') {
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
      } else if (request.kind === 'work') await this.worked(id, train, post)
      else if (request.kind === 'from here')
        post({ id, kind: 'from here', from: bestFromHere(read.train, request.hand, solver) })
      else if (request.kind === 'reasons') post({ id, kind: 'reasons', reasons: run.reasons() })
      else {
        this.latest = id
        await this.studied(id, train, request.curve, post)
      }
    } catch (error) {
      post({ id, kind: 'failed', why: error instanceof Error ? error.message : String(error) })
    }
  }

  /** First the choice that is held now, then the curve and its floor, then every other choice. */
  private async studied(
    id: number,
    known: StudiedTrain,
    curve: boolean,
    post: Post,
  ): Promise<void> {
    const breath = breathing(() => this.latest === id)
    if (known.list && (known.margin || !curve)) {
      if (curve && known.margin) post({ id, kind: 'curve', margin: known.margin })
      const done = known.list.solved
      post({ id, kind: 'holds', list: known.list, done, total: done, finished: true })
      return
    }
    // where a chance is asked for, choices are compared from the share asked for down
    const { wanted } = known.run
    const holds = wanted ? known.run.holds().at(wanted.asked) : known.run.holds()
    const { train } = holds
    let rows: HoldRow[] = []
    const complete = solvesAll(train)
    const study = known.run.chances()
    let ranOut = false
    const apart = holds.within(holds.budget.anew())
    const tell = (done: number, total: number | undefined, finished: boolean) => {
      const list = holdList(
        train,
        {
          rows: rankedHolds(holds, complete ? rows : theBest(train, rows)),
          complete: complete && !ranOut,
          ...(ranOut && { ranOut }),
        },
        // the list first, and what is worked out of it when it stands
        (row) => (finished ? chanceOfHold(apart, study, row) : undefined),
      )
      post({ id, kind: 'holds', list, done, total, finished })
      if (finished) known.list = list
    }
    const choices = holdRows(holds, { prices: false })
    const first = choices.next()
    if (!first.done) {
      rows.push(first.value.row)
      tell(1, first.value.total, false)
    }
    if (curve) {
      const budget = known.run.budget()
      const own = known.run.holdsNow()
      const within = (wanted ? own.at(wanted.asked) : own).within(budget)
      const tradeoff = await ended(tradeoffSteps(within), breath, budget)
      if (this.latest !== id) return
      const now = choiceNow(train)
      const reason = () => ({ of: floorReason(within.setting(now), within.free(now)) })
      known.margin =
        tradeoff === 'ran out'
          ? { ranOut: true }
          : { ranOut: false, tradeoff, floor: budget.attempt(reason)?.of?.sentence ?? '' }
      post({ id, kind: 'curve', margin: known.margin })
    }
    let told = performance.now()
    let rest = often
    const take = (next: HoldProgress) => {
      rows.push(next.row)
      const now = performance.now()
      if (now - told < rest) return
      tell(rows.length, next.total, false)
      told = performance.now()
      rest = Math.max(often, ranking * (told - now))
    }
    const whole = first.done ? first.value : await taken(choices, breath, take)
    if (whole === undefined) return
    ranOut = !whole
    // where a chance is asked for, every choice is planned at the share at which it reaches that
    if (wanted) {
      const own: HoldRow[] = []
      const beside = holds.within(holds.budget.anew())
      const pieces = beside.budget.pieces(ownRows(beside, study, rows, wanted, false))
      const all = await taken(pieces, breath, (row) => own.push(row))
      if (all === undefined) return
      ranOut ||= !all
      rows = [...own, ...rankHolds(train, rows).slice(own.length)]
    }
    tell(rows.length, rows.length, true)
  }

  /** Steps and shims first, then how sure the plan is, and last the chances along its trade-off. */
  private async worked(id: number, known: StudiedTrain, post: Post): Promise<void> {
    this.latestWork = id
    const breath = breathing(() => this.latestWork === id)
    const { run } = known
    const work = { rounded: run.rounding(), ready: run.ready(), steps: run.steps() }
    post({ id, kind: 'work', work })
    await pause()
    if (!(await breath())) return
    const { status, share } = run.plan()
    if (status === 'unproven' || status === 'stopped') return
    const told = (
      closer: readonly ChanceAlong[],
      along: readonly ChanceAlong[],
      whole: boolean,
      open = false,
    ) => {
      const sure = run.sureBeside(closer, open)
      if (whole) known.chances = { sure, along }
      post({ id, kind: 'sure', sure, along, whole })
    }
    if (known.chances) {
      post({ id, kind: 'sure', ...known.chances, whole: true })
      return
    }
    told([], [], status === 'impossible')
    if (status === 'impossible') return
    const budget = run.budget()
    const planner = await ended(
      TradeoffPlanner.steps(run.holdsNow().within(budget)),
      breath,
      budget,
    )
    if (this.latestWork !== id) return
    if (!planner || planner === 'ran out') {
      told([], [], true, planner === 'ran out')
      return
    }
    const { down, up } = sharesAlong(share, planner.curve)
    let open = false
    const chances = async (shares: readonly number[]): Promise<ChanceAlong[] | undefined> => {
      const out: ChanceAlong[] = []
      const pieces = budget.pieces(chancesAt(run.chances(), planner, shares))
      const all = await taken(pieces, breath, (one) => out.push(one))
      if (all === undefined) return undefined
      open ||= !all
      return out
    }
    const closer = await chances(down)
    // what lies above the share asked for is no closer plan
    const closerOpen = open
    const wider = closer && (await chances(up))
    if (!wider) return
    const along = [...closer].reverse().concat(wider)
    told(closer, along, true, closerOpen)
  }
}

/** Lets messages in after each slice of work; false when the analysis is no longer wanted. */
function breathing(wanted: () => boolean): () => Promise<boolean> {
  let since = performance.now()
  return async () => {
    if (performance.now() - since > slice) {
      await pause()
      since = performance.now()
    }
    return wanted()
  }
}

/** Takes what comes bit by bit: whether it came to its end, undefined when it is no longer wanted. */
async function taken<Piece>(
  pieces: Generator<Piece, boolean>,
  breath: () => Promise<boolean>,
  take: (piece: Piece) => void,
): Promise<boolean | undefined> {
  for (;;) {
    const next = pieces.next()
    if (next.done) return next.value
    if (!(await breath())) return undefined
    take(next.value)
  }
}

/** What a worker of steps comes to; undefined when it is no longer wanted. */
async function ended<Outcome>(
  steps: Generator<void, Outcome>,
  breath: () => Promise<boolean>,
  budget: Budget,
): Promise<Outcome | 'ran out' | undefined> {
  for (;;) {
    const step = budget.attempt(() => steps.next())
    if (!step) return 'ran out'
    if (step.done) return step.value
    if (!(await breath())) return undefined
  }
}
