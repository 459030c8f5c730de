import { tol } from '../../../mechanics/tolerances'
import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { sharesOf, worstShare } from '../../../mechanics/misalignment/shares'
import { keptShares } from '../../../mechanics/uncertainty/verdict'
import type { Motion } from '../../../mechanics/motion'
import { firstCuts } from '../../lp/cuts'
import { programUnit, type Program } from '../../lp/program'
import { stageOf } from '../../lp/stage'
import { shareFeasibility } from '../../infeasible/elastic/shareFeasibility'
import type { Solver } from '../../lp/solver'
import { leastShare } from '../../lp/leastShare'
import { solveRounds } from '../../lp/rounds'
import type { PlanRun } from '../../plan/planRun'
import type { Solved } from '../../plan/solvePlan'
import { footMove } from '../../plan/totals'
import { withFootLimit, type AskedMove } from './footRow'
import { holdersOf, type Holder } from './holders'
import { whyFootSentence, type WhyFoot } from './whyFootSentence'

/** A usual step of shims where the file names none (um). Common practice, no source. */
const usualStep: Record<Train['units']['fine'], Micrometres> = { um: 50, mm: 50, mil: 50.8 }

export interface WhyOptions {
  /** How much less is tried [the shim step of the file, or a usual one]. */
  readonly step?: Micrometres
  /** What the foot gets in the plan rounded to shims, where that is the plan people work by. */
  readonly rounded?: Micrometres
}

/**
 * Why a foot of the plan moves as far as it does, told by what happens when it moves a step less: the
 * smallest worst share if no more may be moved in all, the least cost if the share is to be kept, and
 * the couplings and limits that press against that.
 *
 * All of it is of the least plan, before any rounding: that is what limits and tolerances hold there.
 * @returns undefined where the train has no plan or no such foot, the foot stays, or the solver stopped
 */
export function whyFoot(
  run: PlanRun,
  where: { readonly body: string; readonly foot: string; readonly way: AskedMove },
  {
    step = run.train.plan.shims?.step ?? usualStep[run.train.units.fine],
    rounded,
  }: WhyOptions = {},
): WhyFoot | undefined {
  const { train, solver } = run
  const b = train.bodies.findIndex(({ id }) => id === where.body)
  const body = train.bodies[b]
  const f = body?.feet.findIndex(({ id }) => id === where.foot) ?? -1
  const foot = body?.feet[f]
  if (!body || !foot) return undefined
  const found = run.found()
  const program = run.program()
  const solved = run.solved()
  const motion = solved.status === 'planned' ? solved.motions[b] : undefined
  if (solved.status !== 'planned' || !motion) return undefined
  const move =
    where.way === 'shim' ? footMove(body, motion, foot).shim : footMove(body, motion, foot).side
  if (Math.abs(move) < tol.unseen) return undefined
  const less = Math.min(step, Math.abs(move))
  const most = (Math.abs(move) - less) / programUnit
  const sign = move > 0 ? 1 : -1
  const limited = withFootLimit(train, program, { body: b, foot: f, way: where.way }, sign, most)
  // what is kept free of the tolerances is counted, as it is in the share that the program is asked for
  const shares = (motions: readonly Motion[]) => {
    const results = sharesOf(train, found, couplingMotions(train, motions))
    const kept = keptShares(train, results, run.kept())
    return results.map((one, i) => ({ ...one, share: kept[i] ?? one.share }))
  }
  const held = heldBack(train, limited, solved, run.standingShare(), solver)
  const worst = held && shares(held.motions).reduce((a, c) => (c.share > a.share ? c : a))
  const cost = costOf(limited, train.plan.share, solver)
  const answer = {
    body: where.body,
    foot: where.foot,
    way: where.way,
    move,
    ...(rounded !== undefined && { rounded }),
    step: less,
    holders: held?.holders ?? [],
    worstShare: held ? tidy(held.share) : null,
    worstAt: worst
      ? { coupling: train.couplings[worst.coupling]?.id ?? '', state: worst.state }
      : null,
    planShare: tidy(worstShare(shares(solved.motions))),
    cost: cost === undefined ? null : cost * programUnit,
    planCost: solved.least.answer.objective * programUnit,
  }
  return { ...answer, sentence: whyFootSentence(train, answer) }
}

/** The smallest worst share with the foot held back and no more moved in all. */
function heldBack(
  train: Train,
  program: Program,
  { least }: Extract<Solved, { status: 'planned' }>,
  standing: number,
  solver: Solver,
): { share: number; motions: readonly Motion[]; holders: Holder[] } | undefined {
  const cost = least.answer.objective * (1 + tol.sameCost)
  // standing still is always allowed: more than it uses is never needed
  const stage = { ask: 'margin', share: standing, cost } as const
  const smallest = leastShare(program, stage, firstCuts(program), solver)
  if (smallest.kind === 'stopped') return undefined
  const { columns } = smallest.point.answer
  return {
    share: smallest.bound,
    motions: motionsIn(train, program, columns),
    holders: holdersOf(train, program, smallest.lowest),
  }
}

function motionsIn(train: Train, program: Program, columns: readonly number[]): Motion[] {
  const motions = train.bodies.map(() => ({ tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }))
  program.columns.forEach(({ meaning }, c) => {
    const motion = meaning.part === 'motion' ? motions[meaning.body] : undefined
    if (motion && meaning.part === 'motion')
      motion[meaning.motion] = (columns[c] ?? 0) * meaning.scale
  })
  return motions
}

/** Least cost within the share (program units); undefined where no move keeps it. */
function costOf(program: Program, share: number, solver: Solver): number | undefined {
  const reach = shareFeasibility(program, share, [], solver)
  if (reach.kind !== 'met') return undefined
  const cost = stageOf(program, { ask: 'cost', share: share * (1 + tol.sameCost) })
  const least = solveRounds(program, cost, reach.cuts, solver)
  return least.kind === 'optimal' ? least.answer.objective : undefined
}
