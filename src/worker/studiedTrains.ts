import type { SureStage } from '../engine/chance/answer'
import type { ChanceAlong } from '../engine/chanceAlong'
import { PlanningRun } from '../engine/planningRun'
import type { HoldList } from '../text/holdList'
import type { Margin } from './analysisMessages'
import { KnownTrains } from './knownTrains'

/** A train that was asked for, its run, and what came out of analyses of it that went to their end. */
export interface StudiedTrain {
  readonly run: PlanningRun
  list?: HoldList
  margin?: Margin
  chances?: {
    readonly sure: NonNullable<SureStage['sure']>
    readonly along: readonly ChanceAlong[]
  }
}

/** Those of this thread. */
export const studiedTrains = new KnownTrains((read, solver, work): StudiedTrain => ({
  run: new PlanningRun(read, solver, work),
}))
