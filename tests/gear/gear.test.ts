import { beforeAll, describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { PlanningRun } from '../../src/engine/planningRun'
import type { PlannedAnswer } from '../../src/engine/plan/answer'
import { prove } from '../../src/engine/proof/prove'
import type { Solver } from '../../src/engine/lp/solver'
import { planText } from '../../src/text/planText'
import { slidingSpeed } from '../../src/mechanics/misalignment/gearTeeth'
import { glpkSolver } from '../../src/solvers/glpk'
import { given, twoMachines } from '../second/pairs'
import { costWithSides, type Side } from '../second/gearLeast'
import type { Coupling, Train } from '../second/train'

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

function runOf(document: unknown): PlanningRun {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return new PlanningRun(read, solver)
}
const planned = (run: PlanningRun): PlannedAnswer => {
  const plan = run.plan()
  if (plan.status !== 'planned') throw new Error(plan.status)
  return plan
}
const sidesOf = (run: PlanningRun): Side[] =>
  run.train.couplings.flatMap(({ id, gear }) =>
    (gear?.sides ?? []).map((side) => ({ coupling: id, ...side })),
  )

/** Flex planes at 0 and 200 mm, the right machine on feet at 1000 and 2000. */
const straight = (gear: Coupling['gear'], more: Partial<Coupling> = {}, z = 0): Train =>
  twoMachines({ flex: 1 }, [given(0, z)], {}, {}, { gear, ...more })

describe('sliding of teeth', () => {
  it('is pi times pitch diameter times turns a second times angle: by summing a tooth over a turn', () => {
    // a tooth at radius r goes along the shaft as r * angle * sin(turn): fastest and mean speed from its places
    const [pitch, rpm, angle] = [200, 3000, 1]
    const [r, turn] = [pitch / 2, 60 / rpm]
    const at = (part: number) => r * (angle / 1000) * Math.sin(2 * Math.PI * part)
    const n = 100_000
    const speeds = Array.from(
      { length: n },
      (_, i) => (Math.abs(at((i + 1) / n) - at(i / n)) * n) / turn,
    )
    const most = slidingSpeed(angle, pitch, rpm)
    expect(most).toBeCloseTo(Math.max(...speeds), 4)
    expect((most * 2) / Math.PI).toBeCloseTo(speeds.reduce((a, b) => a + b, 0) / n, 4)
    // by hand: pi * 200 mm * 50 /s * 0.001
    expect(most).toBeCloseTo(31.415927, 5)
  })

  it('is told in every state as found and planned, with its limit', () => {
    const run = runOf(straight({ pitch: 200, sliding: 20 }, { speed: 3000 }, 250))
    const teeth = run.plan().teeth ?? []
    expect(teeth.map(({ place }) => place)).toEqual(['left plane', 'right plane'])
    // 250 um over 200 mm: 1.25 mrad at both planes
    expect(teeth.map(({ asFound }) => asFound.size)).toEqual([1.25, 1.25])
    expect(teeth[0]?.asFound.sliding).toBeCloseTo(1.25 * 31.415927, 4)
    expect(teeth[0]?.asFound.tooFast).toBe(true)
    expect(teeth[0]?.planned?.sliding).toBeGreaterThan(20)
    const text = planText(run.train, run.plan())
    expect(text).toContain('GEAR COUPLINGS')
    expect(text.replace(/\s+/g, ' ')).toContain('over the limit of 20 mm/s')
    // 20 mm/s are 0.64 mrad
    expect(text.replace(/\s+/g, ' ')).toContain('which is 0.64 mrad at each mesh')
  })
})

describe('the least angle', () => {
  it('moves a train off dead straight as little as it can: one slide of 22.2 um, by hand', async () => {
    const document = straight({ least: 0.2 })
    const run = runOf(document)
    const plan = planned(run)
    // 0.2 mrad over 200 mm: the far plane 40 um off. The row at 1000 mm counts 1.8 times there; a row slides once
    expect(plan.cost).toBeCloseTo(40 / 1.8, 3)
    expect(plan.total.shim).toBe(0)
    expect(plan.teeth?.map(({ planned: one }) => one?.tooStraight)).toEqual([undefined, undefined])
    expect(await costWithSides(document, sidesOf(run))).toBeCloseTo(plan.cost, 3)
    const text = planText(run.train, plan).replace(/\s+/g, ' ')
    expect(text).toContain('Kept off dead straight on one side each')
    expect(text).toContain('is proven for these sides alone')
  })

  it('no side of any other kind is cheaper: every choice for both planes', async () => {
    const document = straight({ least: 0.2 })
    const { cost } = planned(runOf(document))
    for (const [a, b] of both())
      expect((await costWithSides(document, [a, b])) ?? Infinity).toBeGreaterThan(cost - 1e-3)
  })

  it('is proven outright where the plan keeps it by itself', () => {
    const run = runOf(straight({ least: 0.3 }, {}, 250))
    const plan = planned(run)
    expect(sidesOf(run)).toEqual([])
    expect(planText(run.train, plan).replace(/\s+/g, ' ')).toContain(
      'no plan that keeps it is cheaper, on any side',
    )
  })

  it('does not count where it does not run, and says what it cannot have', () => {
    const states = [
      { id: 'still', name: 'still' },
      { id: 'run', name: 'run' },
    ]
    const still = runOf({ ...straight({ least: 0.2, states: ['run'] }), states })
    expect(planned(still).teeth?.map(({ state }) => state)).toEqual(['run', 'run'])
    // fixed on both ends: nothing can be moved off straight
    const held = straight({ least: 0.2 })
    const fixed = { ...held, machines: held.machines.map((one) => ({ ...one, held: true })) }
    const plan = runOf(fixed).plan()
    expect(plan.status).toBe('in-tolerance')
    expect(plan.findings.map(({ what }) => what).join(' ')).toContain(
      'under the least of 0.20 mrad',
    )
  })

  it('a plan that runs straighter than it promised is not proven', () => {
    const run = runOf(straight({ least: 0.2 }))
    const { train } = run
    const lines = run.found().map(({ line }) => line)
    const motions = run.motions()
    const cost = run.bound().bound
    expect(prove(train, lines, motions, 0.7, cost).sound).toBe(true)
    const less = motions.map((one) => ({ ...one, ty: one.ty * 0.99, sy: one.sy * 0.99 }))
    expect(prove(train, lines, less, 0.7, cost * 0.99).faults.join()).toContain('least angle')
  })

  it('the bound of its plan is shown in exact arithmetic, by rows of its own', () => {
    const run = runOf(straight({ least: 0.2 }))
    expect(run.bound().byOwnRows).toBe(true)
    expect(run.bound().bound).toBeCloseTo(40 / 1.8, 3)
  })
})

function both(): [Side, Side][] {
  const ways = (['y', 'z'] as const).flatMap((way) =>
    ([1, -1] as const).map((sign) => ({ coupling: 'c', state: 'cold', way, sign })),
  )
  return ways.flatMap((a) =>
    ways.map((b): [Side, Side] => [
      { ...a, place: 'left plane' },
      { ...b, place: 'right plane' },
    ]),
  )
}

describe('against the second builder', () => {
  /** A simple generator, so that each train is the same everywhere. */
  const draws = (seed: number) => {
    let at = seed
    return () => (at = (at * 16807) % 2147483647) / 2147483647
  }
  const count = process.env['HOLDFAST_LONG'] === '1' ? 100 : 5

  it.each(Array.from({ length: count }, (_, i) => i + 1))('random train %i', async (seed) => {
    const random = draws(seed * 7919)
    const about = (size: number) => Math.round((random() * 2 - 1) * size)
    const single = random() < 0.3
    const hot = [{ at: 1000, rise: about(80), side: about(20) }]
    const base = twoMachines(
      single ? { offset: 80, angle: 0.8 } : { flex: 0.8, shape: random() < 0.5 ? 'round' : 'box' },
      [given(about(60), about(60), about(10) / 100, about(10) / 100)],
      { growth: { hot } },
      {
        states: [
          { id: 'cold', name: 'cold' },
          { id: 'hot', name: 'hot', tolerance: 1.5 },
        ],
        // one in two keeps a guard free beside
        plan: { share: 0.9, ...(seed % 2 === 0 && { guard: 0.5 + (seed % 6) / 4 }) },
      },
      {
        gear: { least: 0.15 + random() * 0.2, ...(random() < 0.5 && { states: ['hot'] }) },
        aim: { hot: { offset: { z: about(20) } } },
        ...(single && { right: { machine: 'B', plane: 0 } }),
      },
    )
    const run = runOf(base)
    const plan = run.plan()
    if (plan.status !== 'planned') {
      expect(plan.status === 'in-tolerance' || plan.status === 'impossible').toBe(true)
      return
    }
    expect(plan.cost).toBeCloseTo((await costWithSides(base, sidesOf(run))) ?? NaN, 2)
    // without the least nothing is dearer
    expect(plan.cost).toBeGreaterThan(((await costWithSides(base, [])) ?? NaN) - 0.01)
    if (sidesOf(run).length > 0)
      expect(plan.teeth?.some(({ planned: one }) => one?.tooStraight)).toBe(false)
  })
})
