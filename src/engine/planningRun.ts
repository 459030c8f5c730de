import type { TrainDocument } from '../document/schema'
import { once } from '../mechanics/once'
import type { Train } from '../mechanics/train'
import type { Micrometres } from '../mechanics/units'
import type { SureStage, WantedAnswer } from './chance/answer'
import { offStraight } from './offStraight'
import { atChance } from './atChance'
import { chancesAt, closerPlan, sharesAlong, type ChanceAlong } from './chanceAlong'
import { ChanceStudy } from './chance/chanceStudy'
import { sureAnswer } from './chance/sureAnswer'
import { reasonsOf } from './reasons'
import type { Solver } from './lp/solver'
import type { InToleranceAnswer, PlanFigures, PlannedAnswer } from './plan/answer'
import { PlanRun } from './plan/planRun'
import { madeOf, type RoundedAnswer } from './rounding/answer'
import { roundedAnswer } from './rounding/roundedAnswer'
import { holdsBudget } from './studies/holds/holdRows'
import { HoldSolver } from './studies/holds/holdSolver'
import { tradeoffPlanner } from './studies/tradeoff/tradeoff'
import { withStages, type PlanAnswer, type ReasonsAnswer } from './fieldwork/answer'
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
  /** How sure the plan is; worked out also where the train asks for it. */
  readonly sure?: boolean
}

/** Chances along the trade-off as far as they are known. */
interface ChancesAlong {
  readonly along: readonly ChanceAlong[]
  /** The work allowed ran out before its end. */
  readonly open?: true | undefined
}

interface CloserRounded {
  readonly closer: { readonly exact: number; readonly cost: Micrometres } | undefined
}

/**
 * The whole story of a plan: a train that was read, a solver, and stages that are each worked out
 * once, when first asked for. Command line, worker and paper ask it, so that no two can tell
 * different plans of one train.
 */
export class PlanningRun extends PlanRun {
  readonly document: TrainDocument

  /** Where a chance is asked for: at which share of tolerance the plan reaches it. */
  readonly wanted: WantedAnswer | undefined

  /** @param work how many times the usual work each question may take */
  constructor({ document, train }: ReadTrain, solver: Solver, work = 1) {
    const at = atChance(train, solver, work)
    super(offStraight(at.train, solver, work), solver, { work })
    this.document = document
    this.wanted = at.wanted
  }

  /** Solver of choices of held bodies; what it has solved for one of them it need not solve for another. */
  readonly holds = once(() => new HoldSolver(this.train, holdsBudget(this.solver, this.work)))

  /** The same for what is held now alone: the plan's own sides of gear couplings count, along its trade-off too. */
  readonly holdsNow = once(() => {
    const sided = this.train.couplings.some(({ gear }) => (gear?.sides ?? []).length > 0)
    return sided
      ? new HoldSolver(this.train, holdsBudget(this.solver, this.work), 'sides')
      : this.holds()
  })

  /** Chances of this train's plans, all by the same draws. */
  readonly chances = once(() => new ChanceStudy(this.train, this.found()))

  /** The chance along the trade-off, from the share asked for down; empty without a plan. */
  readonly along = once(() => this.alongSoFar().along)

  private readonly alongSoFar = once((): ChancesAlong => {
    if (!hasPlan(this.plan())) return { along: [] }
    const budget = this.budget()
    const found = budget.attempt((solver) => ({ planner: tradeoffPlanner(this.train, solver) }))
    if (!found) return { along: [], open: true }
    const { planner } = found
    if (!planner) return { along: [] }
    const { down } = sharesAlong(this.train.plan.share, planner.curve)
    const along: ChanceAlong[] = []
    const pieces = budget.pieces(chancesAt(this.chances(), planner, down))
    for (;;) {
      const next = pieces.next()
      if (next.done) return next.value ? { along } : { along, open: true }
      along.push(next.value)
    }
  })

  /** How sure the plan is, and how sure it is as rounded. */
  readonly sure = once(() => this.sureBeside(this.along(), this.alongSoFar().open))

  /** The same beside the plans along the trade-off as far as they are known. */
  sureBeside(along: readonly ChanceAlong[], open = false): NonNullable<SureStage['sure']> {
    const plan = this.plan()
    const study = this.chances()
    const closer = hasPlan(plan) ? closerPlan(along, plan.cost) : undefined
    const whole = sureAnswer(
      study,
      hasPlan(plan) ? this.motions() : undefined,
      closer && { exact: closer.exact, cost: closer.cost },
    )
    const rounded = madeOf(this.rounding())
    const asRounded =
      rounded && closer ? this.closerRounded(closer.share, rounded.cost) : { closer: undefined }
    return {
      ...((open || asRounded === undefined) && { closerOpen: true as const }),
      plan: { ...whole, ...(this.wanted && { wanted: this.wanted }) },
      ...(rounded && {
        rounded: sureAnswer(
          study,
          rounded.bodies.map(({ move }) => move),
          asRounded?.closer,
        ),
      }),
    }
  }

  /**
   * A closer plan as it would be rounded; none where that is over its share, or no plan at all.
   * @returns undefined where the work allowed for it ran out
   */
  private closerRounded(share: number, cost: Micrometres): CloserRounded | undefined {
    const train = { ...this.train, plan: { ...this.train.plan, share } }
    const budget = this.budget()
    const tried = budget.attempt((solver) => {
      const run = new PlanRun(train, solver, { work: Infinity })
      return { made: madeOf(roundingOf(run)) }
    })
    if (!tried) return undefined
    const { made } = tried
    if (made?.status !== 'rounded') return { closer: undefined }
    const study = this.chances()
    const good = study.good(study.judged(made.bodies.map(({ move }) => move)))
    return { closer: { exact: good.all / study.draws, cost: made.cost - cost } }
  }

  /** The plan rounded to packs; undefined for a train without a store of shims, or without a plan. */
  readonly rounding = once(() => roundingOf(this))

  /** Soft foot, pipe strain, signs and closures: in, waived, missing or bad. */
  readonly ready = once(() => readiness(this.document, this.train, this.found(), this.solver))

  /** The order of work: by the real packs, after the soft feet, as the record of the train asks; undefined without moves. */
  readonly steps = once(() =>
    orderFor(
      this,
      this.found(),
      withStages(this.plan(), { rounded: this.rounding(), ready: this.ready() }),
    ),
  )

  /** What cannot be had together in an impossible train, and what could be changed; undefined for any other. */
  readonly reasons = once((): ReasonsAnswer | undefined => {
    const plan = this.plan()
    if (plan.status !== 'impossible') return undefined
    return reasonsOf(this.document, this.train, this.found(), plan.floor, this.solver, this.work)
  })

  /** The plan with the stages that are wanted, as one answer. */
  answer({ prices, rounding, reasons, work, sure }: Wanted): PlanAnswer {
    const isSure = sure === true || this.train.plan.sure !== undefined
    return withStages(prices ? this.priced() : this.plan(), {
      rounded: rounding ? this.rounding() : undefined,
      reasons: reasons ? this.reasons() : undefined,
      ready: work ? this.ready() : undefined,
      steps: work ? this.steps() : undefined,
      sure: isSure ? this.sure() : undefined,
    })
  }
}

function roundingOf(run: PlanRun): RoundedAnswer | undefined {
  const [solved, plan] = [run.solved(), run.plan()]
  if (solved.status !== 'planned' || plan.status !== 'planned') return undefined
  return roundedAnswer(run.train, run.found(), plan, run.motions(), solved.least.share, run.solver)
}

const hasPlan = (plan: PlanFigures): plan is PlannedAnswer | InToleranceAnswer =>
  plan.status === 'planned' || plan.status === 'in-tolerance'

/** Everything that can be told of a train at once. */
export const everyStage: Wanted = { prices: true, rounding: true, reasons: true, work: true }
