import { readTrain } from '../document/readTrain'
import type { Train } from '../mechanics/train'
import { asFound } from '../mechanics/readings/asFound'
import { sharesOf, worstShare } from '../mechanics/misalignment/shares'
import { buildProgram } from './lp/rows/buildProgram'
import { programUnit } from './lp/program'
import { withReasons } from './withReasons'
import { withReady } from './withReady'
import { withSteps } from './withSteps'
import type { Solver } from './lp/solver'
import type { Refused } from './plan/answer'
import type { PlanAnswer } from './work/answer'
import { bindingOf } from './plan/binding'
import { planSolved } from './plan/planSolved'
import { roundedAnswer } from './rounding/roundedAnswer'
import { solvePlan } from './plan/solvePlan'

/**
 * Plans a train file: reads it, reduces its readings, writes down every limit, asks for the least
 * move, and judges what comes back by other code before it is called a plan.
 * @param input a parsed train file of any shape
 * @param reasons whether an impossible answer carries its conflict and its remedies [true]
 * @param prices whether a plan carries what each limit that binds is worth, which takes as long again [true]
 * @param packs whether a plan is rounded to the shims of the store, where the train names them [as prices]
 * @returns the answer in the document's units, or why the document is refused; never throws on input
 */
export function planTrain(
  input: unknown,
  solver: Solver,
  {
    reasons = true,
    prices = true,
    packs = prices,
  }: { readonly reasons?: boolean; readonly prices?: boolean; readonly packs?: boolean } = {},
): PlanAnswer | Refused {
  const read = readTrain(input)
  if (!read.ok) return { refused: [...read.refused] }
  const answer = planRead(read.train, solver, { prices, packs })
  const reasoned = reasons ? withReasons(read, answer, solver) : answer
  return withSteps(read, withReady(read, reasoned, solver))
}

/** Plans a train that was read; an impossible one without its reasons, for answers at once. */
export function planRead(
  train: Train,
  solver: Solver,
  { prices = true, packs = prices }: { readonly prices?: boolean; readonly packs?: boolean } = {},
): PlanAnswer {
  const found = train.couplings.map(asFound)
  const standing = sharesOf(train, found)
  const program = buildProgram(train, found)
  const solved = solvePlan(train, program, worstShare(standing), solver)
  if (solved.status !== 'planned') return planSolved(train, found, standing, solved)
  const { status, floor, motions, least } = solved
  const binding = prices ? bindingOf(train, solved.parts, solver) : []
  const planned = { status, floor, motions, bound: least.bound * programUnit }
  const answer = planSolved(train, found, standing, planned, binding)
  if (!packs) return answer
  return { ...answer, ...roundedAnswer(train, found, answer, motions, least.share, solver) }
}
