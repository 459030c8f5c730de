import { tol } from '../../../mechanics/tolerances'
import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import { readTrain } from '../../../document/readTrain'
import type { TrainDocument } from '../../../document/schema'
import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Solver } from '../../lp/solver'
import { bindingGroups } from '../../plan/bindingGroups'
import { bindingLimit } from '../../plan/bindingLimit'
import { limitWords } from '../../plan/limitWords'
import { PlanRun } from '../../plan/planRun'
import { footMove } from '../../plan/totals'

/** A changed train as it plans: solved and proven anew, from its document. */
export interface Trial {
  readonly solves: boolean
  /** The train as the changed document has it; undefined where that is refused. */
  readonly train?: Train
  readonly floor: number | null
  /** Whether nothing needs to move: moves that weigh nothing cost nothing, too. */
  readonly still: boolean
  /** Null without a plan. */
  readonly cost: Micrometres | null
  readonly costWithEffort: Micrometres | null
  readonly worstShare: number | null
  /** Limits that the plan leans on, dearest first. */
  readonly tight: readonly string[]
  /** Shim changes of the plan, by body and foot (um). */
  readonly shims: readonly (readonly Micrometres[])[]
}

const failed: Trial = {
  solves: false,
  still: false,
  floor: null,
  cost: null,
  costWithEffort: null,
  worstShare: null,
  tight: [],
  shims: [],
}

/** Most limits named. */
const mostTight = 5

/** Reads a changed document, plans it, and has the plan judged by the proof like any other. */
export function trialOf(document: TrainDocument, solver: Solver): Trial {
  const read = readTrain(document)
  if (!read.ok) return failed
  const { train } = read
  // the search for remedies has a budget of its own, and nothing is to be read from a plan that was cut short
  const run = new PlanRun(train, solver, { work: Infinity })
  const solved = run.solved()
  const floor = solved.floor === undefined ? null : tidy(solved.floor)
  if (solved.status === 'stopped' || solved.status === 'impossible')
    return { ...failed, train, floor }
  const motions = run.motions()
  const proof = run.proof()
  if (!proof.sound) return { ...failed, train, floor }
  const effort = train.bodies.reduce(
    (sum, body, b) => sum + (moves(train, motions, b) ? body.effort : 0),
    0,
  )
  const groups =
    solved.status === 'planned'
      ? solved.parts.flatMap(({ program, least }) => bindingGroups(train, program, least))
      : []
  const tight = groups
    .sort((a, b) => b.price * b.perUnit - a.price * a.perUnit)
    .map((group) => {
      const { limit, where } = limitWords(train, bindingLimit(train, group))
      return `${where}: ${limit}`
    })
  return {
    solves: true,
    still: train.bodies.every((_, b) => !moves(train, motions, b)),
    train,
    floor,
    cost: proof.cost,
    costWithEffort: proof.cost + effort,
    worstShare: tidy(proof.worstShare),
    tight: [...new Set(tight)].slice(0, mostTight),
    shims: train.bodies.map((body, b) =>
      body.feet.map((foot) => footMove(body, motions[b] ?? noMotion, foot).shim),
    ),
  }
}

function moves(train: Train, motions: readonly Motion[], index: number): boolean {
  const [body, motion] = [train.bodies[index], motions[index]]
  if (!body || !motion) return false
  return body.feet.some((foot) => {
    const { axial, side, shim } = footMove(body, motion, foot)
    return Math.hypot(axial, side, shim) > tol.unseen
  })
}
