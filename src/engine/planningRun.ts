import type { TrainDocument } from '../document/schema'
import { once } from '../mechanics/once'
import type { Train } from '../mechanics/train'
import { conflictsOf, contradictionOf } from './infeasible/conflict/conflict'
import { remediesOf } from './infeasible/remedies/remedies'
import type { Solver } from './lp/solver'
import { PlanRun } from './plan/planRun'
import { roundedAnswer } from './rounding/roundedAnswer'
import type { PlanAnswer } from './fieldwork/answer'
import { orderFor } from './fieldwork/orderFor'
import { readiness } from './fieldwork/ready/readiness'

/** A train with the document it was read from. */
export interface ReadTrain {
  readonly document: TrainDocument
  readonly train: Train
}

/** Which stages an answer carries beside the plan itself. */
export interface Wanted {
  /** What each limit that binds is worth, which takes as long again as the plan. */
  readonly prices?: boolean
  /** The plan rounded to the shims of the store, where the train names them. */
  readonly rounding?: boolean
  /** Why an impossible train is impossible, and what would help. */
  readonly reasons?: boolean
  /** Whether the plan may be carried out, and in which order. */
  readonly work?: boolean
}

/**
 * The whole story of a plan: a train that was read, a solver, and stages that are each worked out
 * once, when first asked for. Command line, worker and paper ask it, so that no two can tell
 * different plans of one train.
 */
export class PlanningRun extends PlanRun {
  readonly document: TrainDocument

  constructor({ document, train }: ReadTrain, solver: Solver) {
    super(train, solver)
    this.document = document
  }

  /** Packs and the rounded plan; nothing for a train without a store of shims, or without a plan. */
  readonly rounding = once(() => {
    const solved = this.solved()
    if (solved.status !== 'planned') return {}
    const { train, solver } = this
    return roundedAnswer(
      train,
      this.found(),
      this.plan(),
      this.motions(),
      solved.least.share,
      solver,
    )
  })

  /** Soft foot, pipe strain, signs and closures: in, waived, missing or bad. */
  readonly ready = once(() => readiness(this.document, this.train, this.found(), this.solver))

  /** The order of work: by the real packs, after the soft feet, as the record of the train asks. */
  readonly steps = once(() =>
    orderFor(this, this.found(), { ...this.plan(), ...this.rounding(), ready: this.ready() }),
  )

  /** What cannot be had together in an impossible train, and what could be changed. */
  readonly reasons = once((): Partial<PlanAnswer> => {
    const plan = this.plan()
    if (plan.status !== 'impossible') return {}
    const contradiction = contradictionOf(this.train, this.found(), this.solver)
    const [first, ...behind] = conflictsOf(contradiction, this.solver)
    return {
      ...(first && { conflict: first.members, conflictSentence: first.sentence, behind }),
      ...remediesOf(this.document, contradiction, plan.floor, this.solver),
    }
  })

  /** The plan with the stages that are wanted, as one answer. */
  answer({ prices, rounding, reasons, work }: Wanted): PlanAnswer {
    const steps = work ? this.steps() : undefined
    return {
      ...(prices ? this.priced() : this.plan()),
      ...(rounding && this.rounding()),
      ...(reasons && this.reasons()),
      ...(work && { ready: this.ready() }),
      ...(steps && { steps }),
    }
  }
}

/** Everything that can be told of a train at once. */
export const everyStage: Wanted = { prices: true, rounding: true, reasons: true, work: true }
