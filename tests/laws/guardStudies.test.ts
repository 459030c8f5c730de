import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { modelOf } from '../../src/cli/model'
import type { TrainDocument } from '../../src/document/schema'
import { PlanRun } from '../../src/engine/plan/planRun'
import { roundedAnswer } from '../../src/engine/rounding/roundedAnswer'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { holdRows } from '../../src/engine/studies/holds/holdRows'
import { withHeld } from '../../src/engine/studies/holds/choice'
import { tradeoffPlanner } from '../../src/engine/studies/tradeoff/tradeoff'
import { bestFromHere } from '../../src/engine/studies/hand/fromHere'
import { handAnswer } from '../../src/engine/studies/hand/handAnswer'
import { glpkSolver } from '../../src/solvers/glpk'
import { guardedTrain, readOf, withIntervals } from './guardedTrains'
import { reached } from './guardReached'

const solver = await glpkSolver()
const long = process.env.HOLDFAST_LONG === '1'
const patience = 1_200_000

/** A train with a guard, and every other one with intervals that a plan must hold for. */
function kept(seed: number): TrainDocument {
  const guard = 0.3 + (seed % 4) * 0.3
  const document = guardedTrain(seed, { times: 4, plan: { guard } })
  if (seed % 2 === 0 || withIntervals(document, seed, 4).length === 0) return document
  return { ...document, plan: { ...document.plan, worst: true } }
}

const alike = (a: number | null | undefined, b: number | null | undefined): boolean =>
  a === b || Math.abs((a ?? NaN) - (b ?? NaN)) <= 2e-5 * Math.abs(a ?? NaN) + 1e-6

test(
  'every row of the list of holds is the plan of a train with those held',
  () => {
    const trains = long ? 60 : 2
    const wrong: string[] = []
    const counts = { rows: 0, planned: 0, trains: 0 }
    // until enough of their choices have a plan
    for (let seed = 1; counts.trains < trains || counts.planned <= trains; seed++) {
      const train = readOf(kept(seed))
      if (train.bodies.length > 4) continue
      counts.trains += 1
      for (const { row } of holdRows(new HoldSolver(train, solver), { prices: false })) {
        counts.rows += 1
        const held = new Set(row.held)
        const other = withHeld(
          train,
          train.bodies.map(({ id }) => held.has(id)),
        )
        const plan = new PlanRun(other, solver).plan()
        const cost = 'cost' in plan ? plan.cost : undefined
        if (plan.status === 'planned') counts.planned += 1
        if (plan.status !== row.status || !alike(cost, row.cost) || !alike(plan.floor, row.floor))
          wrong.push(
            `seed ${seed} ${row.held.join(' ')}: ${row.status} ${row.cost} ${row.floor} ${row.fault ?? ''} for ${plan.status} ${cost} ${plan.floor}`,
          )
      }
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
    expect(counts.planned).toBeGreaterThan(trains)
  },
  patience,
)

test(
  'the trade-off is the plan at every share asked for',
  () => {
    const trains = long ? 60 : 3
    const wrong: string[] = []
    const counts = { points: 0, trains: 0 }
    for (let seed = 1; counts.trains < trains; seed++) {
      const train = readOf(kept(seed))
      const planner = tradeoffPlanner(train, solver)
      if (!planner) {
        wrong.push(`seed ${seed}: stopped`)
        continue
      }
      const { points, floor, standing } = planner.curve
      if (points.length < 3) continue
      counts.trains += 1
      for (const part of [0.05, 0.3, 0.5, 0.8, 0.97]) {
        const share = floor + part * (standing - floor)
        const here = planner.planAt(share)
        const plan = new PlanRun({ ...train, plan: { ...train.plan, share } }, solver).plan()
        counts.points += 1
        const cost = (of: typeof plan) => ('cost' in of ? of.cost : undefined)
        const next = points.findIndex((point) => point.share >= share)
        const [a, b] = [points[next - 1], points[next]]
        const on = a && b && a.cost + ((share - a.share) / (b.share - a.share)) * (b.cost - a.cost)
        const same = plan.status === here.status && alike(cost(plan), cost(here))
        const drawn = on !== undefined && Math.abs(on - (cost(plan) ?? NaN)) <= 3e-4 * on + 0.02
        if (!same || !drawn)
          wrong.push(
            `seed ${seed} ${share}: ${here.status} ${cost(here)}, curve ${on} for ${plan.status} ${cost(plan)}`,
          )
      }
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
  },
  patience,
)

test(
  'machines put by hand are judged with the guard, and planned from there to keep it',
  () => {
    const trains = long ? 60 : 4
    const wrong: string[] = []
    const counts = { holds: 0, fails: 0, onlyKept: 0 }
    // until one of them is within its share but for what is kept free
    for (let seed = 1; counts.holds < trains || counts.onlyKept === 0; seed++) {
      const train = readOf(kept(seed))
      const run = new PlanRun(train, solver)
      const best = run.plan()
      if (best.status !== 'planned') continue
      const motions = Object.fromEntries(
        train.bodies.map(({ id }, b) => [id, run.motions()[b] ?? none]),
      )
      const asPlanned = handAnswer(train, run.found(), { motions, touched: [] }, best)
      if (asPlanned.out.length > 0) wrong.push(`seed ${seed}: its own plan is out by hand`)
      const still = handAnswer(train, run.found(), { motions: {}, touched: [] }, best)
      if (still.out.length === 0) wrong.push(`seed ${seed}: standing still is in by hand`)
      else counts.fails += 1
      if (still.worstShare <= best.share) counts.onlyKept += 1
      const touched = train.bodies
        .filter(({ held }) => !held)
        .slice(0, 1)
        .map(({ id }) => id)
      const from = bestFromHere(train, { motions, touched }, solver)
      if (!from.ok) {
        wrong.push(`seed ${seed}: nothing from its own plan, floor ${from.floor}`)
        continue
      }
      const there = handAnswer(train, run.found(), from.hand, best)
      if (there.out.length > 0) wrong.push(`seed ${seed}: from here: ${there.out.join('; ')}`)
      counts.holds += 1
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
    expect(counts.onlyKept).toBeGreaterThan(0)
  },
  patience,
)

test(
  'a plan rounded to the shims of the store keeps the guard, or says that it does not',
  () => {
    const trains = long ? 60 : 2
    const wrong: string[] = []
    const counts = { rounded: 0, over: 0, none: 0 }
    for (let seed = 1; counts.rounded < trains; seed++) {
      const guard = 0.3 + (seed % 4) * 0.3
      const shims = { step: 25, stock: [25, 50, 100, 200, 400, 800], most: 6 }
      const document = guardedTrain(seed, { times: 4, plan: { guard, shims } })
      if (document.units.fine !== 'um') continue
      const train = readOf(document)
      const run = new PlanRun(train, solver)
      const [plan, solved] = [run.plan(), run.solved()]
      if (plan.status !== 'planned' || solved.status !== 'planned') continue
      const { share } = solved.least
      const rounded = roundedAnswer(train, run.found(), plan, run.motions(), share, solver)
      if (!rounded || rounded.status === 'no rounding') {
        counts.none += 1
        continue
      }
      const { most } = reached(
        train,
        rounded.bodies.map(({ move }) => move),
      )
      const asked = train.plan.share * (1 + 2e-6)
      if (rounded.status === 'rounded') counts.rounded += 1
      else counts.over += 1
      if (rounded.status === 'rounded' ? !(most <= asked) : !(most > asked && most <= 1 + 2e-6))
        wrong.push(`seed ${seed}: ${rounded.status} reaches ${most} of ${train.plan.share}`)
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
  },
  patience,
)

const none = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }
const program = '/usr/bin/glpsol'
const installed = spawnSync(program, ['--version']).status === 0

test.skipIf(!installed)(
  'glpsol finds the bound of the proof in exported models with a guard',
  () => {
    const models = long ? 100 : 4
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-'))
    const wrong: string[] = []
    const counts = { planned: 0, impossible: 0 }
    try {
      for (let seed = 1; counts.planned < models; seed++) {
        const format = seed % 2 === 0 ? 'lp' : 'mps'
        const model = modelOf(new PlanRun(readOf(kept(seed)), solver), format)
        if (model.status !== 'planned' && model.status !== 'impossible') continue
        if (model.status === 'impossible' && counts.impossible >= models / 2) continue
        counts[model.status] += 1
        const found = asked(model.text, format, folder)
        const same =
          model.bound === null
            ? found === 'none'
            : typeof found === 'number' && Math.abs(found - model.bound) <= 1e-6 * found + 1e-6
        if (!same) wrong.push(`seed ${seed}: ${found} for ${model.bound}`)
      }
    } finally {
      rmSync(folder, { recursive: true })
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
    expect(counts.impossible).toBeGreaterThan(models / 4)
  },
  patience,
)

/** The optimum that the exact simplex finds, or that there is none. */
function asked(text: string, format: 'lp' | 'mps', folder: string): number | string {
  const [model, solution] = [join(folder, 'model'), join(folder, 'solution')]
  writeFileSync(model, text)
  const flags = [format === 'lp' ? '--lp' : '--freemps', model, '-w', solution]
  const run = spawnSync(program, [...flags, '--exact', '--tmlim', '100'], { stdio: 'ignore' })
  if (run.status !== 0) return `status ${run.status}`
  const line = /^s bas \d+ \d+ (\w) (\w) (\S+)$/m.exec(readFileSync(solution, 'utf8'))
  if (line?.[1] === 'f' && line[2] === 'f') return Number(line[3])
  return line?.[1] === 'n' ? 'none' : 'unclear'
}
