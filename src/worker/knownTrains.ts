import type { SureStage } from '../engine/chance/answer'
import type { ChanceAlong } from '../engine/chanceAlong'
import type { Solver } from '../engine/lp/solver'
import { PlanningRun, type ReadTrain } from '../engine/planningRun'
import type { HoldList } from '../text/holdList'
import type { Margin } from './analysisMessages'

/** A train that was asked for, its run, and what came out of analyses of it that went to their end. */
export interface KnownTrain {
  readonly run: PlanningRun
  list?: HoldList
  margin?: Margin
  chances?: {
    readonly sure: NonNullable<SureStage['sure']>
    readonly along: readonly ChanceAlong[]
  }
}

/** A run keeps its draws, some megabytes each. */
const mostKnown = 4

/**
 * The trains asked for last, by their documents: what is undone and made again, and a second question about one train,
 * need no second plan.
 */
export class KnownTrains {
  private readonly known = new Map<string, KnownTrain>()

  /** @param work how many times the usual work each question of it may take */
  of(read: ReadTrain, solver: Solver, work = 1): KnownTrain {
    const key = `${work} ${JSON.stringify(read.document)}`
    const train = this.known.get(key) ?? { run: new PlanningRun(read, solver, work) }
    // the last one asked for goes last
    this.known.delete(key)
    this.known.set(key, train)
    for (const oldest of this.known.keys()) {
      if (this.known.size <= mostKnown) break
      this.known.delete(oldest)
    }
    return train
  }
}

/** Those of this thread. */
export const knownTrains = new KnownTrains()
