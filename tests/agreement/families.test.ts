import { expect, test } from 'vitest'
import { modelOf } from '../../src/cli/model'
import { readTrain } from '../../src/document/readTrain'
import { PlanRun } from '../../src/engine/plan/planRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { askGlpsol, glpsolInstalled } from '../cli/secondOpinion'
import { firstOf } from '../counts'
import { kept } from '../kept/kept'
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
/** What the second builder may pass a circle by, as a share of its limit (no unit). */
const circleSlack = 1e-8

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
    // the bound is rounded down wherever it is added up, over rows made anew: it may lie under the optimum, not over it
    return bound <= objective * (1 + 1e-7) + 1e-6 && bound >= objective * (1 - 1e-6) - 1e-6
      ? []
      : [`glpsol finds ${objective}, the bound is ${bound}`]
  }
  return apart(false).length === 0 ? [] : apart(true)
}

/** What is told otherwise of one train, by whom, and what the planner answers to it. */
async function apartOn(train: Train) {
  const first = planned(train, solver)
  const second = await solveSecond(train)
  const loose = async () => await solveSecond(train, { loose: true })
  let comparison = compare(asFirst(first), second)
  if (comparison.disagreements.length > 0)
    comparison = compare(asFirst(first), second, await loose())
  // next to the floor the hundred-millionth by which a tangent may pass its circle is worth more than costs may differ
  if (comparison.disagreements.length > 0 && second.status === 'planned') {
    const share = second.share - circleSlack
    const strict = await solveSecond({ ...train, plan: { ...train.plan, share } })
    comparison = compare(asFirst(first), strict, await loose())
  }
  const disagreements = [
    // a floor that was not found is told as such
    ...comparison.disagreements.filter(
      (text) => first.floor !== null || !text.startsWith('floor:'),
    ),
    ...judged(train, first),
    ...(glpsolInstalled ? glpsolApart(train) : []),
  ]
  return { first, borderline: comparison.borderline, disagreements }
}

/** In the usual run the first ones alone, unless somebody says how many of each. */
const asked = firstOf(Object.entries(families), process.env.HOLDFAST_EACH ? Infinity : 3)

test.each(asked)(
  'planner, second builder and glpsol agree on trains of the family: %s',
  async (name, family) => {
    const statuses = new Map<string, number>()
    const count = (what: string) => statuses.set(what, (statuses.get(what) ?? 0) + 1)
    const told: string[] = []
    const trains = name === '30 machines' ? Math.floor(each / 10) : each
    for (let seed = firstSeed; seed < firstSeed + trains; seed++) {
      const { first, borderline, disagreements } = await apartOn(await family(seed))
      if (borderline) count('on the edge')
      if (first.floor === null) count('floor not found')
      count(first.status)
      for (const text of disagreements) told.push(`seed ${seed}: ${text}`)
    }
    if (each > 1) console.log(`${name}: ${trains} ${JSON.stringify(Object.fromEntries(statuses))}`)
    expect(told).toEqual([])
    expect(statuses.get('floor not found') ?? 0).toBeLessThanOrEqual(Math.max(1, trains / 50))
  },
  7_200_000,
)

/** Trains on which they did not: a bound next to nothing, and a cost that a share of 1e-9 changes by more than is allowed. */
const onceApart = [
  'over-a-tight-floor',
  'hair-of-the-floor-1',
  'hair-of-the-floor-2',
  'hair-of-the-floor-3',
]

test.each(firstOf(onceApart, 1, onceApart.length))(
  'and where they once did not: %s',
  async (name) => {
    expect((await apartOn(kept(name))).disagreements).toEqual([])
  },
)
