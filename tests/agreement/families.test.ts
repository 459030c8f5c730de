import { expect, test } from 'vitest'
import { modelOf } from '../../src/cli/model'
import { readTrain } from '../../src/document/readTrain'
import { PlanRun } from '../../src/engine/plan/planRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { askGlpsol, glpsolInstalled } from '../cli/secondOpinion'
import { firstOf } from '../counts'
import { compare } from '../second/disagreements'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'
import { asFirst, judged, planned } from './firstAnswer'
import { families } from './families'

const long = process.env.HOLDFAST_LONG === '1'
/** Of each family; of the largest trains a tenth, and none in the usual run. */
const each = Number(process.env.HOLDFAST_EACH ?? (long ? 500 : 1))
const firstSeed = Number(process.env.HOLDFAST_SEED ?? 1)
const solver = await glpkSolver()

/** What glpsol, where it comes to an end, finds otherwise of the exported model. */
function glpsolApart(train: Train): string[] {
  const read = readTrain(train)
  if (!read.ok) return ['refused']
  const model = modelOf(new PlanRun(read.train, solver), 'mps')
  if (model.status === 'stopped') return [`no model: ${model.why}`]
  const bound = model.bound ?? undefined
  const apart = (exact: boolean): string[] => {
    const { status, objective } = askGlpsol(model.text, 'freemps', exact)
    if (status === 'infeasible') return bound === undefined ? [] : ['glpsol finds no plan']
    if (status !== 'optimal') return []
    if (bound === undefined) return [`glpsol finds a plan for ${objective}`]
    return Math.abs(objective - bound) <= 1e-7 * bound + 1e-6
      ? []
      : [`glpsol finds ${objective}, the bound is ${bound}`]
  }
  return apart(false).length === 0 ? [] : apart(true)
}

/** In the usual run the first ones alone, unless somebody says how many of each. */
const asked = firstOf(Object.entries(families), process.env.HOLDFAST_EACH ? Infinity : 3)

test.each(asked)(
  'planner, second builder and glpsol agree on trains of the family: %s',
  async (name, family) => {
    const statuses = new Map<string, number>()
    const count = (what: string) => statuses.set(what, (statuses.get(what) ?? 0) + 1)
    const disagreements: string[] = []
    const trains = name === '30 machines' ? Math.floor(each / 10) : each
    for (let seed = firstSeed; seed < firstSeed + trains; seed++) {
      const train = await family(seed)
      const first = planned(train, solver)
      const second = await solveSecond(train)
      let comparison = compare(asFirst(first), second)
      if (comparison.disagreements.length > 0)
        comparison = compare(asFirst(first), second, await solveSecond(train, { loose: true }))
      if (comparison.borderline) count('on the edge')
      // a floor that was not found is told as such
      if (first.floor === null) count('floor not found')
      count(first.status)
      const apart = [
        ...comparison.disagreements.filter(
          (text) => first.floor !== null || !text.startsWith('floor:'),
        ),
        ...judged(train, first),
        ...(glpsolInstalled ? glpsolApart(train) : []),
      ]
      for (const text of apart) disagreements.push(`seed ${seed}: ${text}`)
    }
    if (each > 1) console.log(`${name}: ${trains} ${JSON.stringify(Object.fromEntries(statuses))}`)
    expect(disagreements).toEqual([])
    expect(statuses.get('floor not found') ?? 0).toBeLessThanOrEqual(Math.max(1, trains / 50))
  },
  7_200_000,
)
