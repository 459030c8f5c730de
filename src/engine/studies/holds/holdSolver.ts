import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import { withoutSides } from '../../../mechanics/misalignment/gearTeeth'
import type { Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'
import { sharesOf, type CouplingResult } from '../../../mechanics/misalignment/shares'
import type { ErrorSource } from '../../../mechanics/uncertainty/errorSource'
import { guardedStanding, guardedWork } from '../../../mechanics/uncertainty/judged'
import { keepsRoom, keptFrom, type KeptRooms } from '../../../mechanics/uncertainty/kept'
import { keptShares } from '../../../mechanics/uncertainty/verdict'
import type { FloorSetting } from '../../infeasible/floor/floorReason'
import { Budget } from '../../lp/budget'
import { once } from '../../../mechanics/once'
import { withKept } from '../../lp/rows/keptFree'
import { buildProgram } from '../../lp/rows/buildProgram'
import { Partition, type MotionGroup } from '../../lp/parts'
import { programUnit, type Cut } from '../../lp/program'
import { standingOf } from '../../lp/standing'
import { boundsTogether } from '../../proof/exactSum'
import { prove } from '../../proof/prove'
import type { Solver } from '../../lp/solver'
import { inWords, pricesOf, type Priced } from '../../plan/binding'
import { PartMemory, PartSolver, type PartPlan } from '../../plan/partSolver'
import { totalsOf } from '../../plan/totals'
import { motionsOf } from '../../plan/solvePlan'
import { solveParts, type SolvedParts } from '../../plan/solveParts'
import { choiceOf, heldIds, withHeld, type HoldChoice } from './choice'
import { disturbedBodies } from '../../plan/disturbed'
import type { HoldRow, PlannedRow } from './row'

/**
 * Solves choices of held bodies of one train. What a choice leaves free falls into parts, and a part
 * is solved once for all choices that leave it: the readings are reduced once, the program is built
 * once, and a train of n machines in a line has no more than n (n + 1) / 2 parts for its 2^n choices. With a
 * guard a body that is held has no errors of work to be kept against: the room kept free is that of the choice, and a
 * part is solved once for all choices that keep the same room where it reaches.
 */
export class HoldSolver implements FloorSetting {
  readonly train: Train
  /** Worst share as found, what is kept free while no body is worked on counted. */
  readonly standing: number
  /** All that may move, with the least room that any choice keeps free: no choice costs less than it says. */
  readonly partition: Partition
  readonly parts: PartSolver
  readonly kept: KeptRooms | undefined
  readonly found: readonly AsFound[]
  /** Asks within the budget. */
  readonly solver: Solver
  readonly budget: Budget
  /** Whether the sides on which the plan keeps gear couplings off dead straight count. */
  private readonly sided: boolean
  private readonly memory: PartMemory
  private readonly prices: Map<string, Priced[]>
  private readonly shares: readonly CouplingResult[]
  private readonly errors: () => readonly ErrorSource[]

  /**
   * @param asked the train; the least angle of its gear couplings does not count, unless `of` says so
   * @param budget of work, or a solver without an end to it
   * @param of the same train but for the share asked for: what was solved of it is not solved again; or "sides": the
   *   sides that the plan keeps to count, which is for what is held now alone
   */
  constructor(asked: Train, budget: Budget | Solver, of?: HoldSolver | 'sides') {
    const like = of === 'sides' ? undefined : of
    this.sided = like ? like.sided : of === 'sides'
    // a choice may have no plan on the side that was chosen for another one: all are compared without it
    const train = this.sided ? asked : withoutSides(asked)
    this.train = train
    this.budget = budget instanceof Budget ? budget : new Budget(budget, Infinity)
    this.solver = this.budget.solver
    if (like) {
      ;({ found: this.found, shares: this.shares, kept: this.kept } = like)
      ;({ standing: this.standing, partition: this.partition } = like)
      ;({ memory: this.memory, prices: this.prices, errors: this.errors } = like)
      this.parts = new PartSolver(this.partition, this.solver, this.memory)
      return
    }
    this.memory = new PartMemory()
    this.prices = new Map()
    this.errors = once(() => guardedStanding(train))
    this.found = foundLines(train)
    this.shares = sharesOf(train, this.found)
    const released = withHeld(train, choiceOf(train, new Set()))
    this.kept = keepsRoom(train) ? keptFrom(train, this.errors()) : undefined
    this.partition = new Partition(buildProgram(released, this.found, this.kept))
    this.standing = Math.max(this.standingWith(train, this.kept), this.standingStraight())
    this.parts = new PartSolver(this.partition, this.solver, this.memory)
  }

  /** What a choice is solved with: the room that it keeps free taken off its tolerances. */
  setting(choice: HoldChoice): FloorSetting {
    if (!this.kept) return this
    const { found, solver } = this
    const train = this.heldBy(choice)
    const kept = keptFrom(train, [...this.errors(), ...guardedWork(train)])
    const partition = new Partition(withKept(this.partition.program, train, kept))
    return {
      train,
      found,
      standing: Math.max(this.standingWith(train, kept), this.standingStraight()),
      partition,
      parts: new PartSolver(partition, solver, this.memory),
      kept,
      solver,
    }
  }

  private standingWith(train: Train, kept: KeptRooms | undefined): number {
    return Math.max(...keptShares(train, this.shares, kept))
  }

  /** Without end where nothing moving is no answer: teeth run too straight. */
  private standingStraight(): number {
    return standingOf({ limits: this.partition.program.limits, circles: [] })
  }

  /** Worst share as found, what the choice held now keeps free counted, whether or not that is an answer. */
  asFoundShare(choice: HoldChoice): number {
    if (!this.kept) return this.standingWith(this.train, undefined)
    const train = this.heldBy(choice)
    return this.standingWith(train, keptFrom(train, [...this.errors(), ...guardedWork(train)]))
  }

  /** The same at another share of tolerance, with all that is known of its parts. */
  at(share: number): HoldSolver {
    const { plan } = this.train
    if (share === plan.share) return this
    const asked = plan.asked ?? plan.share
    return new HoldSolver({ ...this.train, plan: { ...plan, share, asked } }, this.budget, this)
  }

  /** The same with another budget, for what is said of choices and must not take from their own. */
  within(budget: Budget): HoldSolver {
    return new HoldSolver(this.train, budget, this)
  }

  /** Tells the motions that a choice leaves free from those that it holds. */
  free(choice: HoldChoice): (column: number) => boolean {
    const { columns } = this.partition.program
    return (column) => {
      const meaning = columns[column]?.meaning
      return meaning?.part === 'motion' && choice[meaning.body] === false
    }
  }

  /** The train with the bodies of a choice held. */
  heldBy(choice: HoldChoice): Train {
    return withHeld(this.train, choice)
  }

  solve(choice: HoldChoice): SolvedParts {
    return this.solveWith(this.setting(choice), choice)
  }

  private solveWith({ partition, parts, standing }: FloorSetting, choice: HoldChoice): SolvedParts {
    return solveParts(partition, parts, this.train.plan.share, standing, this.free(choice))
  }

  /**
   * The row of a choice: its plan is judged anew, as every plan is, before it counts as one.
   * @param prices work out what binds as well
   */
  row(choice: HoldChoice, prices = true): HoldRow {
    const setting = this.setting(choice)
    const solved = this.solveWith(setting, choice)
    const base = {
      held: heldIds(this.train, choice),
      disturbed: [],
      floor: solved.floor === undefined ? null : tidy(solved.floor),
    }
    switch (solved.status) {
      case 'stopped':
        return { ...base, status: 'stopped', fault: solved.why }
      case 'impossible':
        return { ...base, status: 'impossible' }
      case 'in-tolerance':
        return this.proven(
          { ...base, status: 'in-tolerance' },
          setting.parts,
          choice,
          [],
          0,
          prices,
        )
      case 'planned': {
        const bounds = solved.plans.map(({ plan }) => plan.least?.bound ?? 0)
        const bound = boundsTogether(bounds, programUnit)
        return this.proven(
          { ...base, status: 'planned' },
          setting.parts,
          choice,
          solved.plans,
          bound,
          prices,
        )
      }
    }
  }

  /** Cost and effort of a choice (um), without a row of its own; undefined where it has no plan. */
  costWithEffort(choice: HoldChoice): Micrometres | undefined {
    const setting = this.setting(choice)
    const solved = this.solveWith(setting, choice)
    if (solved.status === 'in-tolerance') return 0
    if (solved.status !== 'planned') return undefined
    const cost = solved.plans.reduce(
      (sum, { plan }) => sum + (plan.least?.answer.objective ?? 0),
      0,
    )
    const disturbed = disturbedBodies(this.train, this.motions(setting.parts, solved.plans))
    const effort = disturbed.reduce((sum, b) => sum + (this.train.bodies[b]?.effort ?? 0), 0)
    return cost * programUnit + effort
  }

  /** The tangents that the plan of a choice ended with, as those of the whole program. */
  cutsOf(choice: HoldChoice): Cut[] {
    const setting = this.setting(choice)
    const solved = this.solveWith(setting, choice)
    if (solved.status !== 'planned') return []
    return solved.plans.flatMap(({ group, plan }) => {
      const { circles } = setting.parts.part(group)
      return (plan.least?.cuts ?? []).map(({ circle, angle }) => ({
        circle: circles[circle] ?? 0,
        angle,
      }))
    })
  }

  /** Own motions of the bodies in the plan of a choice; undefined where it has none. */
  motionsOf(choice: HoldChoice): readonly Motion[] | undefined {
    const setting = this.setting(choice)
    const solved = this.solveWith(setting, choice)
    if (solved.status === 'in-tolerance') return this.motions(setting.parts, [])
    return solved.status === 'planned' ? this.motions(setting.parts, solved.plans) : undefined
  }

  private motions(
    parts: PartSolver,
    plans: readonly { group: MotionGroup; plan: PartPlan }[],
  ): readonly Motion[] {
    const solved = plans.map(({ group, plan }) => ({ part: parts.part(group), plan }))
    return motionsOf(this.train, solved)
  }

  private proven(
    base: Pick<PlannedRow, 'held' | 'disturbed' | 'floor' | 'status'>,
    parts: PartSolver,
    choice: HoldChoice,
    plans: readonly { group: MotionGroup; plan: PartPlan }[],
    bound: Micrometres,
    prices: boolean,
  ): HoldRow {
    const train = withHeld(this.train, choice)
    const motions = this.motions(parts, plans)
    const lines = this.found.map(({ line }) => line)
    const proof = prove(train, lines, motions, train.plan.share, bound)
    if (!proof.sound) return { ...base, status: 'unproven', fault: proof.faults.join('; ') }
    const disturbed = disturbedBodies(train, motions)
    const effort = disturbed.reduce((sum, b) => sum + (train.bodies[b]?.effort ?? 0), 0)
    return {
      held: base.held,
      disturbed: disturbed.map((b) => train.bodies[b]?.id ?? ''),
      status: base.status,
      cost: proof.cost,
      costWithEffort: proof.cost + effort,
      floor: base.floor,
      total: totalsOf(train, motions),
      worstShare: tidy(proof.worstShare),
      ...(prices && {
        binding: inWords(
          train,
          plans.flatMap(({ group, plan }) => this.pricesOf(parts, group, plan)),
        ),
      }),
    }
  }

  private pricesOf(parts: PartSolver, group: MotionGroup, { least }: PartPlan): Priced[] {
    if (!least) return []
    const key = `${least.share} ${group.key}`
    const known = this.prices.get(key)
    if (known) return known
    const part = { program: parts.part(group).program, least }
    const prices = pricesOf(this.train, part, this.solver)
    this.prices.set(key, prices)
    return prices
  }
}
