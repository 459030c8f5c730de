import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { hasMoves } from '../../src/engine/plan/moves'
import { planRead } from '../planned'
import { solveRounds } from '../../src/engine/lp/rounds'
import { buildProgram } from '../../src/engine/lp/rows/buildProgram'
import { firstCuts } from '../../src/engine/lp/cuts'
import { programUnit } from '../../src/engine/lp/program'
import { stageOf } from '../../src/engine/lp/stage'
import { asFound } from '../../src/mechanics/readings/asFound'
import {
  tradeoffPlanner,
  type Tradeoff,
  type TradeoffPlanner,
} from '../../src/engine/studies/tradeoff/tradeoff'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'
import { read } from '../holds/choice'
import { randomTrain } from '../second/randomTrain'
import { firstOf, isWhole } from '../counts'

const solver = await glpkSolver()
const folder = new URL('../../examples/', import.meta.url)
const examples = readdirSync(folder).filter((file) => file.endsWith('.json'))
const document = (file: string): TrainDocument =>
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as TrainDocument

/** The same train with tolerances that count y and z apart, and no holes: no circle anywhere. */
function square(train: TrainDocument): TrainDocument {
  const withoutHoles = <Body extends TrainDocument['machines'][number]>(body: Body): Body => ({
    ...body,
    feet: body.feet.map((foot) => {
      const free = { ...foot }
      delete free.hole
      return free
    }),
  })
  return {
    ...train,
    machines: train.machines.map(withoutHoles),
    couplings: train.couplings.map((coupling) => ({
      ...coupling,
      tolerance: { ...coupling.tolerance, shape: 'box' },
    })),
  }
}

function planner(train: Train): TradeoffPlanner {
  const made = tradeoffPlanner(train, solver)
  if (!made) throw new Error('the solver stopped')
  return made
}

/** Cost on the curve at a share, straight between its points. */
function costOn({ points }: Tradeoff, share: number): number {
  const after = points.findIndex((point) => point.share >= share)
  const [a, b] = [points[after - 1], points[after]]
  if (!a || !b) return points[after]?.cost ?? NaN
  return a.cost + ((b.cost - a.cost) * (share - a.share)) / (b.share - a.share)
}

/** The least cost within a share by the whole program at once, from its first tangents. */
function leastCost(train: Train, share: number): number {
  const program = buildProgram(train, train.couplings.map(asFound))
  const outcome = solveRounds(
    program,
    stageOf(program, { ask: 'cost', share }),
    firstCuts(program),
    solver,
  )
  if (outcome.kind !== 'optimal') throw new Error(`${outcome.kind} at ${share}`)
  return outcome.answer.objective * programUnit
}

const sharesBetween = ({ floor, standing }: Tradeoff, count: number): number[] =>
  Array.from({ length: count }, (_, i) => floor + ((standing - floor) * (i + 0.5)) / count)

function convexAndFalling({ points }: Tradeoff): void {
  let slope = -Infinity
  points.forEach((b, i) => {
    const a = points[i - 1]
    if (!a) return
    expect(b.share).toBeGreaterThan(a.share)
    expect(b.cost).toBeLessThanOrEqual(a.cost)
    const next = (b.cost - a.cost) / (b.share - a.share)
    expect(next).toBeGreaterThanOrEqual(slope - 1e-6 * Math.abs(slope))
    slope = next
  })
}

describe.each(firstOf(examples, 3, examples.length))('the curve of %s', (file) => {
  const train = read(document(file))
  const made = planner(train)
  const { curve } = made

  it('falls and never bends upward, from the floor to where nothing moves', () => {
    convexAndFalling(curve)
    const answer = planRead(train, solver, { prices: false })
    expect(curve.floor).toBeCloseTo(answer.floor ?? NaN, 9)
    expect(curve.standing).toBeCloseTo(answer.standingShare, 9)
    expect(curve.points[0]?.share).toBeCloseTo(curve.floor, 6)
    expect(curve.points.at(-1)).toEqual({ share: curve.standing, cost: 0 })
    expect(curve.noRoom).toBe(0.85)
  })

  it('agrees with 200 separate solves', () => {
    const largest = curve.points[0]?.cost ?? NaN
    for (const share of sharesBetween(curve, 200)) {
      const cost = leastCost(train, share)
      const apart = Math.abs(costOn(curve, share) - cost)
      expect(apart, `at ${share}`).toBeLessThanOrEqual(2e-4 * Math.max(cost, largest / 100))
    }
  })

  it('has the plan of the planner at any point', () => {
    // a train that can be put right altogether has its floor at nought, which nobody can ask for
    const shares = [
      Math.max(curve.floor * 1.001, 1e-3),
      ...sharesBetween(curve, 6),
      train.plan.share,
    ]
    for (const share of shares) {
      const moved = made.planAt(share)
      const alone = planRead({ ...train, plan: { ...train.plan, share } }, solver, {
        prices: false,
      })
      expect(moved.status).toBe(alone.status)
      const near = (a: number | undefined | null, b: number | undefined | null) => {
        expect(Math.abs((a ?? 0) - (b ?? 0))).toBeLessThanOrEqual(2e-5 * Math.abs(b ?? 0) + 1e-9)
      }
      if (hasMoves(moved) && hasMoves(alone)) {
        near(moved.cost, alone.cost)
        near(moved.worstShare, alone.worstShare)
      }
      near(moved.floor, alone.floor)
      expect(moved.share).toBe(share)
      expect(moved.held).toEqual(alone.held)
    }
  })

  it('has no plan below the floor, and moves nothing beyond where the train stands', () => {
    if (curve.floor > 0) expect(made.planAt(curve.floor * 0.99).status).toBe('impossible')
    expect(made.planAt(curve.standing * 1.001)).toMatchObject({ status: 'in-tolerance', cost: 0 })
  })
})

describe.each(examples)('the curve of %s without circles', (file) => {
  it('is exact: straight between its corners, and no corner is missing', () => {
    const train = read(square(document(file)))
    const { curve } = planner(train)
    convexAndFalling(curve)
    const { points } = curve
    expect(points.length).toBeGreaterThan(2)
    points.forEach((b, i) => {
      const a = points[i - 1]
      if (!a) return
      for (const part of [0.1, 0.5, 0.9]) {
        const share = a.share + part * (b.share - a.share)
        const cost = leastCost(train, share)
        const largest = points[0]?.cost ?? NaN
        expect(Math.abs(costOn(curve, share) - cost)).toBeLessThanOrEqual(
          1e-6 * cost + 1e-8 * largest,
        )
      }
    })
  })
})

it.runIf(isWhole)('random trains: the curve agrees with separate solves', () => {
  let curves = 0
  for (let seed = 301; seed <= 318; seed++) {
    const train = read(randomTrain(seed))
    const { curve } = planner(train)
    convexAndFalling(curve)
    if (curve.standing - curve.floor < 1e-3) continue
    curves++
    const largest = curve.points[0]?.cost ?? NaN
    for (const share of sharesBetween(curve, 5)) {
      const cost = leastCost(train, share)
      const apart = Math.abs(costOn(curve, share) - cost)
      expect(apart, `seed ${seed} at ${share}`).toBeLessThanOrEqual(
        2.2e-4 * Math.max(cost, largest / 100) + 1e-9,
      )
    }
  }
  expect(curves).toBeGreaterThan(8)
})
