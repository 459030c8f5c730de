import { once } from '../../mechanics/once'
import type { AsFound } from '../../mechanics/readings/asFound'
import { couplingMotions } from '../../mechanics/misalignment/couplingMotion'
import { sharesOf, type CouplingResult } from '../../mechanics/misalignment/shares'
import { noMotion, type Motion } from '../../mechanics/motion'
import type { SureSettings, Train } from '../../mechanics/train'
import type { ErrorSource } from '../../mechanics/uncertainty/errorSource'
import { placeSources, standingErrors, workSources } from '../../mechanics/uncertainty/sources'
import { disturbedBodies } from '../plan/disturbed'
import { ErrorBlocks } from './blocks'
import { errorsByCoupling, type CouplingErrors } from './couplingErrors'
import { markBad } from './judge'
import { judgedState, type JudgedState } from './judgedValues'

/** In how many draws everything is in. */
export interface GoodDraws {
  /** The plan done blind. */
  readonly all: number
  /** Read again afterwards and trimmed until the readings show the plan. */
  readonly reread: number
  /** Each coupling alone in each state, done blind. */
  readonly each: readonly (readonly number[])[]
}

/** A plan as it is judged: where every coupling comes to stand, and the errors that its work has. */
export interface JudgedPlan {
  /** Of each coupling in each state. */
  readonly states: readonly (readonly JudgedState[])[]
  readonly work: readonly CouplingErrors[]
  readonly sources: readonly ErrorSource[]
}

/** Draws from which a chance is told where the train does not say how many. */
const usualSure: SureSettings = { draws: 10_000, seed: 1 }

/**
 * Chances of plans of one train, all by the same draws: what no plan changes is drawn once, so that two plans differ by
 * what they do and not by chance.
 */
export class ChanceStudy {
  readonly train: Train
  readonly found: readonly AsFound[]
  readonly draws: number
  readonly seed: number
  /** Errors that no plan changes. */
  readonly standingSources: readonly ErrorSource[]
  readonly standing: readonly CouplingErrors[]
  readonly blocks: ErrorBlocks

  constructor(train: Train, found: readonly AsFound[]) {
    this.train = train
    this.found = found
    const { draws, seed } = train.plan.sure ?? usualSure
    this.draws = draws
    this.seed = seed
    this.standingSources = standingErrors(train)
    this.standing = errorsByCoupling(train, this.standingSources)
    this.blocks = new ErrorBlocks(this.standing, draws, seed)
  }

  /** A plan by the own motions of its bodies; undefined: nothing moved. */
  judged(motions?: readonly Motion[]): JudgedPlan {
    const { train } = this
    const moved = motions && couplingMotions(train, motions)
    const results = sharesOf(train, this.found, moved)
    const moving = new Set(motions ? disturbedBodies(train, motions) : [])
    const moves = (body: number) => moving.has(body)
    const still = train.bodies.map(() => noMotion)
    const sources = [...workSources(train, moves), ...placeSources(train, motions ?? still, moves)]
    return {
      states: statesOf(train, results),
      work: errorsByCoupling(train, sources),
      sources,
    }
  }

  /** The train as found. */
  readonly asFound = once(() => this.good(this.judged()))

  /** Counts the draws in which a plan is good. */
  good({ states, work }: JudgedPlan): GoodDraws {
    const each = states.map((of) => of.map(() => 0))
    let [all, reread] = [0, 0]
    this.blocks.sizes.forEach((size, block) => {
      const [out, outAfter] = [new Uint8Array(size), new Uint8Array(size)]
      states.forEach((of, c) => {
        const worked = work[c]
        const errors =
          worked && worked.alike.length > 0
            ? this.blocks.sum(worked.alike, worked.numbers, block)
            : undefined
        of.forEach((state, s) => {
          const standing = this.blocks.standingAt(c, s, block)
          const here = new Uint8Array(size)
          markBad(here, state, standing, 1, errors, -1)
          if (errors) markBad(outAfter, state, standing, 1)
          else addMarks(outAfter, here)
          addMarks(out, here)
          const row = each[c]
          if (row) row[s] = (row[s] ?? 0) + unmarked(here)
        })
      })
      all += unmarked(out)
      reread += unmarked(outAfter)
    })
    return { all, reread, each }
  }
}

/** By coupling and state; nothing is judged where a coupling is not engaged. */
function statesOf(train: Train, results: readonly CouplingResult[]): JudgedState[][] {
  return train.couplings.map((coupling, c) =>
    train.states.map(({ id }) => {
      const own = results.find((result) => result.coupling === c && result.state === id)
      return judgedState(coupling, own?.checks ?? [])
    }),
  )
}

function addMarks(marks: Uint8Array, others: Uint8Array): void {
  for (let i = 0; i < marks.length; i++) if (others[i] === 1) marks[i] = 1
}

export function unmarked(marks: Uint8Array): number {
  let count = 0
  for (const mark of marks) if (mark === 0) count++
  return count
}
