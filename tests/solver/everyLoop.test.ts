import { readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import {
  leastRelaxation,
  withRelaxations,
  type Relaxation,
} from '../../src/engine/infeasible/elastic/relaxation'
import { shareFeasibility } from '../../src/engine/infeasible/elastic/shareFeasibility'
import { subproblemOf } from '../../src/engine/infeasible/elastic/subproblem'
import { elasticModelOf } from '../../src/engine/infeasible/elastic/elasticModel'
import { firstCuts } from '../../src/engine/lp/cuts'
import { leastShare } from '../../src/engine/lp/leastShare'
import { shareColumn } from '../../src/engine/lp/program'
import { solveRounds } from '../../src/engine/lp/rounds'
import type { Optimal, Solver } from '../../src/engine/lp/solver'
import { stageOf } from '../../src/engine/lp/stage'
import { leastCost, smallestShare } from '../../src/engine/rounding/question'
import { softFoot } from '../../src/engine/fieldwork/ready/softFoot'
import { asFound } from '../../src/mechanics/readings/asFound'
import { files } from '../cli/pages'
import { at, fourFeet, pair, solver, trainOf } from '../engine/pair'
import { tampering } from './scripted'

/** Every one is an answer that does not stand up: the point, or the duals that should prove it. */
const lies: { readonly name: string; readonly change: (answer: Optimal) => Optimal }[] = [
  { name: 'a point of nothing', change: (a) => ({ ...a, columns: a.columns.map(() => 0) }) },
  {
    name: 'a point a hundredth too far',
    change: (a) => ({ ...a, columns: a.columns.map((value) => value * 1.01) }),
  },
  { name: 'no duals', change: (a) => ({ ...a, duals: a.duals.map(() => 0) }) },
  {
    name: 'duals twice as large',
    change: (a) => ({ ...a, duals: a.duals.map((dual) => dual * 2) }),
  },
  { name: 'duals that are no numbers', change: (a) => ({ ...a, duals: a.duals.map(() => NaN) }) },
]

const read = readTrain(JSON.parse(readFileSync('examples/bolt-bound-gearbox.json', 'utf8')))
if (!read.ok) throw new Error(JSON.stringify(read.refused))
const { train } = read
const model = elasticModelOf(train, train.couplings.map(asFound))
const all = subproblemOf(model, new Set(model.members.keys())).program

/** Every tolerance gives alike, in shares. */
const give: Relaxation = {
  name: 'more share',
  least: 0,
  most: 100,
  price: 1000,
  onRow: ({ terms }) => terms.find(([column]) => column === shareColumn)?.[1] ?? 0,
  onCircle: ({ radius }) => ({ radius: radius.terms.get(shareColumn) ?? 0 }),
}
const cuts = firstCuts(all)
const floor = (() => {
  const least = leastShare(all, { ask: 'floor' }, cuts, solver)
  if (least.kind === 'stopped') throw new Error(least.why)
  return least.bound
})()

/** Less than any move reaches. */
const share = floor * 0.8

/** Every place that asks a solver, with what it says of an honest one and of one that lies. */
const uses: {
  readonly name: string
  readonly ask: (by: Solver) => unknown
  readonly honest: unknown
  readonly noticed: unknown
}[] = [
  {
    name: 'rounds of tangents',
    ask: (by) =>
      solveRounds(all, stageOf(all, { ask: 'cost', share: floor * 1.01 }), cuts, by).kind,
    honest: 'optimal',
    noticed: 'stopped',
  },
  {
    name: 'the least share',
    ask: (by) => leastShare(all, { ask: 'floor' }, cuts, by).kind,
    honest: 'optimal',
    noticed: 'stopped',
  },
  {
    name: 'whether a share is reached',
    ask: (by) => shareFeasibility(all, share, [], by).kind,
    honest: 'missed',
    noticed: 'stopped',
  },
  {
    name: 'what limits must give',
    ask: (by) => {
      const [value] = leastRelaxation(withRelaxations(all, [give]), [give], share, [], by) ?? []
      return value === undefined ? undefined : Math.abs(value - (floor - share)) < 1e-5
    },
    honest: true,
    noticed: undefined,
  },
  {
    name: 'the least cost of a rounding',
    ask: (by) => leastCost(by, floor * 1.01)(all, cuts).kind,
    honest: 'point',
    noticed: 'stopped',
  },
  {
    name: 'the smallest share of a rounding',
    ask: (by) => smallestShare(by)(all, cuts).kind,
    honest: 'point',
    noticed: 'stopped',
  },
  {
    name: 'shims for soft foot',
    ask: (by) => {
      const feet = fourFeet.map((foot, i) => ({ ...foot, soft: [200, 0, 0, 200][i] }))
      const soft = trainOf(pair({ right: { feet } }))
      return softFoot(soft, at(soft.bodies, 1), by).shims !== undefined
    },
    honest: true,
    noticed: false,
  },
]

describe.each(uses)('$name', ({ ask, honest, noticed }) => {
  it('believes a solver whose answers stand up', () => {
    expect(ask(tampering(solver, (answer) => answer))).toBe(honest)
  })

  it.each(lies)('notices $name', ({ change }) => {
    expect(ask(tampering(solver, change))).toBe(noticed)
  })
})

test('a solver is asked nowhere but where its answers are checked', () => {
  const asking = files.filter(
    (file) => file.startsWith('src/engine/') && /solver\.solve\(/.test(readFileSync(file, 'utf8')),
  )
  // meter and budget hand answers on, counted
  expect(asking.map((file) => file.replace('src/engine/', '')).sort()).toEqual([
    'fieldwork/ready/softFoot.ts',
    'lp/budget.ts',
    'lp/rounds.ts',
    'rounding/meter.ts',
  ])
})
