import { boundsTogether } from '../proof/exactSum'
import { farthestReach, firstCuts } from '../lp/cuts'
import type { MotionGroup, Part, Partition } from '../lp/parts'
import type { Cut, Program } from '../lp/program'
import type { CostAnswer, PartPlan, PartSolver } from './partSolver'

/**
 * The least costs of the parts as one answer of the whole program, its rows as `stageRows` has them.
 * @param share of tolerance that the parts were planned within
 */
export function wholeAnswer(
  program: Program,
  share: number,
  plans: readonly { readonly part: Part; readonly plan: PartPlan }[],
): CostAnswer {
  const columns = new Array<number>(program.columns.length).fill(0)
  columns[0] = share
  const limits = new Array<number>(program.limits.length).fill(0)
  const displacements = new Array<number>(program.displacements.length).fill(0)
  const tangents: number[] = []
  const asked: Cut[] = []
  const cuts: Cut[] = []
  let objective = 0
  const bounds: number[] = []
  for (const { part, plan } of plans) {
    const { least } = plan
    if (!least) continue
    objective += least.answer.objective
    bounds.push(least.bound)
    part.columns.forEach((column, i) => {
      if (column > 0) columns[column] = least.answer.columns[i] ?? 0
    })
    const { duals } = least.answer
    part.limits.forEach((row, i) => {
      limits[row] = duals[i] ?? 0
    })
    const first = duals.length - part.displacements.length
    tangents.push(...duals.slice(part.limits.length, first))
    part.displacements.forEach((row, i) => {
      displacements[row] = duals[first + i] ?? 0
    })
    asked.push(...ofWhole(part, least.asked))
    cuts.push(...ofWhole(part, least.cuts))
  }
  return {
    kind: 'optimal',
    answer: {
      kind: 'optimal',
      objective,
      columns,
      duals: [...limits, ...tangents, ...displacements],
    },
    asked,
    cuts,
    bound: boundsTogether(bounds, 1),
    met: true,
    share,
  }
}

/** The tangents that show an impossible choice to be so: those of the parts' floors. */
export function floorCuts(
  partition: Partition,
  solver: PartSolver,
  groups: readonly MotionGroup[],
): Cut[] {
  const { circles } = partition.program
  const still = partition.still().circles.flatMap((circle) => {
    const at = circles[circle]
    return at ? [{ circle, angle: farthestReach(at, []).angle }] : []
  })
  return [
    ...still,
    ...groups.flatMap((group) => {
      const part = solver.part(group)
      const lowest = solver.knownFloor(group)
      return ofWhole(part, lowest?.cuts ?? firstCuts(part.program))
    }),
  ]
}

const ofWhole = (part: Part, cuts: readonly Cut[]): Cut[] =>
  cuts.map(({ circle, angle }) => ({ circle: part.circles[circle] ?? 0, angle }))
