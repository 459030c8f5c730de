import type { Train } from '../../mechanics/train'
import { once } from '../../mechanics/once'
import { noMotion, type Motion } from '../../mechanics/motion'
import { sharesOf } from '../../mechanics/misalignment/shares'
import type { AsFound } from '../../mechanics/readings/asFound'
import { foundLines } from '../../mechanics/uncertainty/foundLines'
import { keptRooms, type KeptRooms } from '../../mechanics/uncertainty/kept'
import { keptShares } from '../../mechanics/uncertainty/verdict'
import { tol } from '../../mechanics/tolerances'
import { Budget } from '../lp/budget'
import { standingOf } from '../lp/standing'
import { buildProgram } from '../lp/rows/buildProgram'
import type { Solver } from '../lp/solver'
import { shareProof } from '../proof/claims'
import { prove } from '../proof/prove'
import type { PlanFigures } from './answer'
import { certificateAnswer, type CertificateAnswer } from './certificateAnswer'
import { bindingOf } from './binding'
import { provenBound, type ProvenBound } from './provenBound'
import { planSolved } from './planSolved'
import { solvePlan } from './solvePlan'

/**
 * The plan of one train, from its readings to its prices: each stage is worked out once, when it is
 * first asked for, and everything that needs a plan asks here, so that no two can differ.
 */
export class PlanRun {
  readonly train: Train
  readonly solver: Solver
  /** How many times the usual work each question may take. */
  readonly work: number
  private readonly lines: readonly AsFound[] | undefined
  private readonly rooms: KeptRooms | undefined

  /**
   * @param lines of the couplings, where the train does not stand as it was read
   * @param rooms kept free of its tolerances, where they are not its own
   * @param work how many times the usual work each question may take [1]
   */
  constructor(
    train: Train,
    solver: Solver,
    {
      lines,
      rooms,
      work = 1,
    }: { lines?: readonly AsFound[]; rooms?: KeptRooms | undefined; work?: number } = {},
  ) {
    this.train = train
    this.solver = solver
    this.lines = lines
    this.rooms = rooms
    this.work = work
  }

  /** The work that one more question of this train may take. */
  budget(): Budget {
    return new Budget(this.solver, this.work * tol.planWork)
  }

  /** Every coupling's line as its readings give it. */
  readonly found = once(() => this.lines ?? foundLines(this.train))
  /** Every coupling in every state with nothing moved. */
  readonly standing = once(() => sharesOf(this.train, this.found()))
  /** What `plan.guard` and `plan.worst` keep free of every tolerance; undefined: nothing. */
  readonly kept = once(() => this.rooms ?? keptRooms(this.train))
  /** The worst share with nothing moved, what is kept free counted: at or below the share asked for nothing need move. */
  readonly standingShare = once(() =>
    Math.max(...keptShares(this.train, this.standing(), this.kept())),
  )
  readonly program = once(() => buildProgram(this.train, this.found(), this.kept()))
  /** The floor and the least cost, as the programs gave them. */
  readonly solved = once(() =>
    solvePlan(
      this.train,
      this.program(),
      // teeth that run too straight must move, however little of its tolerance is used
      Math.max(this.standingShare(), standingOf({ limits: this.program().limits, circles: [] })),
      this.solver,
      this.work,
    ),
  )
  /** Own motions of the bodies; all still where nothing need or can be done. */
  readonly motions = once((): readonly Motion[] => {
    const solved = this.solved()
    return solved.status === 'planned' ? solved.motions : this.train.bodies.map(() => noMotion)
  })
  /** No plan costs less (um). */
  readonly bound = once((): ProvenBound => {
    const solved = this.solved()
    if (solved.status !== 'planned') return { bound: 0, byOwnRows: true }
    const lines = this.found().map(({ line }) => line)
    return provenBound(this.train, lines, solved.least.share, solved.parts)
  })
  /** The plan judged by other code. */
  readonly proof = once(() =>
    prove(
      this.train,
      this.found().map(({ line }) => line),
      this.motions(),
      this.train.plan.share,
      this.bound().bound,
    ),
  )
  /** Of an impossible train: what its limits prove in exact arithmetic, by rows of the proof's own. */
  readonly certificate = once((): CertificateAnswer | undefined => {
    const solved = this.solved()
    if (solved.status !== 'impossible') return undefined
    const lines = this.found().map(({ line }) => line)
    const { limits, proven } = shareProof(this.train, lines, solved.claims)
    return certificateAnswer(this.train, limits, proven)
  })
  /** The plan without prices. */
  readonly plan = once(() => {
    const solved = this.solved()
    const outcome =
      solved.status === 'planned'
        ? { ...solved, motions: this.motions(), ...this.bound() }
        : { ...solved, certificate: this.certificate() }
    return planSolved(this.train, this.found(), this.standing(), outcome, () => this.proof())
  })
  /** What each limit that binds is worth, which takes as long again; none without moves. */
  readonly prices = once(() => {
    const solved = this.solved()
    if (solved.status !== 'planned') return []
    const budget = this.budget()
    return budget.attempt((solver) => bindingOf(this.train, solved.parts, solver))
  })
  /** The plan with its prices; without them where the work allowed for them ran out. */
  readonly priced = once((): PlanFigures => {
    const plan = this.plan()
    const prices = this.prices()
    if (plan.status !== 'planned') return plan
    return prices ? { ...plan, prices } : { ...plan, pricesOpen: true }
  })
}
