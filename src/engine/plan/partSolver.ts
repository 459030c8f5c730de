import { tol } from '../../mechanics/tolerances'
import type { Solver, WarmStart } from '../lp/solver'
import { firstCuts } from '../lp/cuts'
import type { MotionGroup, Part, Partition } from '../lp/parts'
import type { Cut } from '../lp/program'
import { standingOf } from '../lp/standing'
import { shareWeight, stageOf } from '../lp/stage'
import { leastShare, type LeastShare } from '../lp/leastShare'
import { pinned } from '../lp/pinned'
import { solveRounds, type RoundsOptimal, type RoundsStopped } from '../lp/rounds'

export interface CostAnswer extends RoundsOptimal {
  /** The share that the cost was minimised under. */
  readonly share: number
}

export interface PartPlan {
  readonly kind: 'planned'
  /** Values of the part's columns; none where the part stays as it stands. */
  readonly values: readonly number[] | undefined
  /** The least cost with its duals and tangents; none where the part stands within the share. */
  readonly least: CostAnswer | undefined
  /** By how much its worst share would come down for one more program unit of cost; undefined: not known. */
  readonly worth?: number
}

/** What a question came to when its program did not end well, and which question it was. */
export interface PartStopped {
  readonly kind: 'stopped'
  readonly why: string
}

/** Parts that were solved, by their keys; partitions of one train with other room kept free may share it. */
export class PartMemory {
  readonly parts = new Map<string, Part>()
  readonly standings = new Map<string, number>()
  readonly floors = new Map<string, LeastShare | PartStopped>()
  readonly plans = new Map<string, PartPlan | PartStopped>()
}

/** Solves the parts of a partition, each once: many choices of held bodies leave the same part free. */
export class PartSolver {
  private readonly partition: Partition
  private readonly solver: Solver
  private readonly memory: PartMemory

  constructor(partition: Partition, solver: Solver, memory = new PartMemory()) {
    this.partition = partition
    this.solver = solver
    this.memory = memory
  }

  part(group: MotionGroup): Part {
    return kept(this.memory.parts, group.key, () => this.partition.partOf(group))
  }

  /** Worst share of the part's tolerances while nothing moves. */
  standing(group: MotionGroup): number {
    return kept(this.memory.standings, group.key, () => standingOf(this.part(group).program))
  }

  floor(group: MotionGroup): LeastShare | PartStopped {
    return kept(this.memory.floors, group.key, () => {
      const { program } = this.part(group)
      const lowest = leastShare(program, { ask: 'floor' }, firstCuts(program), this.solver)
      return lowest.kind === 'stopped' ? stopped(lowest, 'the floor') : lowest
    })
  }

  /** The floor if it was asked for already. */
  knownFloor(group: MotionGroup): LeastShare | undefined {
    const known = this.memory.floors.get(group.key)
    return known?.kind === 'optimal' ? known : undefined
  }

  /** Least cost within a share, and among plans of that cost the one with the smallest worst share. */
  plan(group: MotionGroup, share: number): PartPlan | PartStopped {
    return kept(this.memory.plans, `${share} ${group.key}`, () => this.planFrom(group, share))
  }

  /**
   * The same without being kept.
   * @param cuts tangents to start from; those of the floor where none are given
   */
  planFrom(group: MotionGroup, share: number, cuts?: readonly Cut[]): PartPlan | PartStopped {
    const standing = this.standing(group)
    const stands = standing <= share + tol.overFloor
    return stands ? this.stand(group, share, standing) : this.move(group, share, cuts)
  }

  /** A part within the share stays, unless a motion that costs nothing brings its worst share down. */
  private stand(group: MotionGroup, share: number, standing: number): PartPlan | PartStopped {
    const stays: PartPlan = { kind: 'planned', values: undefined, least: undefined }
    const { program } = this.part(group)
    if (pinned(program)) return stays
    const within = Math.max(share, standing)
    const stage = { ask: 'margin', share: within, cost: 0 } as const
    const margin = leastShare(program, stage, firstCuts(program), this.solver)
    if (margin.kind === 'stopped') return stopped(margin, 'the best share at no cost')
    if (margin.bound >= standing * (1 - tol.noBetter)) return stays
    return { ...stays, values: margin.point.answer.columns }
  }

  private move(
    group: MotionGroup,
    share: number,
    cuts: readonly Cut[] | undefined,
  ): PartPlan | PartStopped {
    const lowest = this.floor(group)
    if (lowest.kind === 'stopped') return lowest
    const { program } = this.part(group)
    const stage = stageOf(program, { ask: 'cost', share })
    const warm: WarmStart = {}
    const least = solveRounds(program, stage, cuts ?? lowest.cuts, this.solver, undefined, warm)
    if (least.kind !== 'optimal') return stopped(least, 'the least cost')
    const cost = least.answer.objective * (1 + tol.equalCost)
    const margin = leastShare(
      program,
      { ask: 'margin', share, cost },
      least.cuts,
      this.solver,
      warm,
    )
    if (margin.kind === 'stopped') return stopped(margin, 'the best share at that cost')
    // the cap on the cost is the last row
    const worth = Math.abs(margin.lowest.answer.duals.at(-1) ?? 0) / shareWeight
    return {
      kind: 'planned',
      values: margin.point.answer.columns,
      least: { ...least, share },
      worth,
    }
  }

  /** The smallest worst share of a part at a cost (program units) and within a share, from the tangents of its plan. */
  margin(
    group: MotionGroup,
    share: number,
    cost: number,
    { least }: PartPlan,
  ): LeastShare | PartStopped {
    const { program } = this.part(group)
    const stage = { ask: 'margin', share, cost } as const
    const margin = leastShare(program, stage, least?.cuts ?? firstCuts(program), this.solver)
    return margin.kind === 'stopped' ? stopped(margin, 'the best share at that cost') : margin
  }

  /** Least cost of a part (program units) within a share; undefined where there is none or the solver stopped. */
  costWithin(group: MotionGroup, share: number, { least }: PartPlan): number | undefined {
    const { program } = this.part(group)
    const stage = stageOf(program, { ask: 'cost', share })
    const cost = solveRounds(program, stage, least?.cuts ?? firstCuts(program), this.solver)
    return cost.kind === 'optimal' ? cost.answer.objective : undefined
  }
}

function kept<Value>(memory: Map<string, Value>, key: string, make: () => Value): Value {
  const known = memory.get(key)
  if (known !== undefined) return known
  const made = make()
  memory.set(key, made)
  return made
}

function stopped(outcome: RoundsStopped | { kind: 'infeasible' }, what: string): PartStopped {
  const why =
    outcome.kind === 'stopped'
      ? outcome.why
      : `its program came back ${outcome.kind}, which cannot be`
  return { kind: 'stopped', why: `${what} was not found: ${why}` }
}
