import { planTrain } from '../planned'
import type { AnswerJson } from '../../src/json/answerJson'
import type { Solver } from '../../src/engine/lp/solver'
import { compare, type FirstAnswer } from '../second/disagreements'
import { judge } from '../second/judge'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'

/** Plans a train with the planner; a refusal or a failure of the program is an error here. */
export function planned(train: Train, solver: Solver): AnswerJson {
  const answer = planTrain(train, solver, { reasons: false })
  if ('refused' in answer) throw new Error(`refused: ${JSON.stringify(answer.refused)}`)
  return answer
}

/** The planner's numbers in the form that the second builder's are compared with. */
export function asFirst(answer: AnswerJson): FirstAnswer {
  return {
    status: answer.status,
    cost: answer.cost,
    floor: answer.floor ?? undefined,
    worstShare: answer.worstShare,
    asFound: answer.asFound,
  }
}

const slack = { limit: 2e-3, share: 2e-5, cost: 2e-6 } // um; no unit; relative

/** What the second builder finds wrong with the planner's own moves: nothing, if they are right. */
export function judged(train: Train, answer: AnswerJson): string[] {
  const { bodies, cost = NaN, worstShare = NaN } = answer
  if (!bodies) return []
  const found = judge(train, Object.fromEntries(bodies.map(({ id, move }) => [id, move])))
  const wrong: string[] = []
  if (found.violation > slack.limit) wrong.push(`${found.where} passed by ${found.violation}`)
  if (found.unfree > slack.limit) wrong.push(`a body moves ${found.unfree} as it may not`)
  if (!(Math.abs(found.worstShare - worstShare) <= slack.share * found.worstShare + 1e-7))
    wrong.push(`moves use ${found.worstShare}, the answer says ${worstShare}`)
  if (!(Math.abs(found.cost - cost) <= slack.cost * found.cost + 1e-5))
    wrong.push(`moves cost ${found.cost}, the answer says ${cost}`)
  return wrong
}

/** Where planner and second builder differ, its circles as wide as a plan may pass them by where that is between them; and what is wrong with the moves. */
export async function apartFromSecond(
  train: Train,
  answer: AnswerJson,
  second: Awaited<ReturnType<typeof solveSecond>>,
): Promise<string[]> {
  const first = asFirst(answer)
  let { disagreements } = compare(first, second)
  if (disagreements.length > 0 && second.hasCircles)
    ({ disagreements } = compare(first, second, await solveSecond(train, { loose: true })))
  return [...disagreements, ...judged(train, answer)]
}
