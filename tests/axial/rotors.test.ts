import { beforeAll, describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { PlanningRun } from '../../src/engine/planningRun'
import type { Solver } from '../../src/engine/lp/solver'
import type { PlannedAnswer } from '../../src/engine/plan/answer'
import { prove } from '../../src/engine/proof/prove'
import { glpkSolver } from '../../src/solvers/glpk'
import { given, twoMachines } from '../second/pairs'
import type { Coupling, Train } from '../second/train'

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

/** Shafts in line, the right machine free to move along the train, hot once: it grows 400 um to the right. */
const ends = (axial: NonNullable<Coupling['axial']>): Train =>
  twoMachines(
    { flex: 1 },
    [given(0, 0)],
    {
      free: { axial: true },
      growth: { hot: [{ at: 1000, axial: 400 }] },
    },
    {
      states: [
        { id: 'cold', name: 'cold' },
        { id: 'hot', name: 'hot', tolerance: 2 },
      ],
    },
    { axial },
  )

function planOf(document: Train): { run: PlanningRun; plan: PlannedAnswer } {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const run = new PlanningRun(read, solver)
  const plan = run.plan()
  if (plan.status !== 'planned') throw new Error(plan.status)
  return { run, plan }
}
const along = ({ bodies }: PlannedAnswer) => bodies.find(({ id }) => id === 'B')?.move.tx

describe('what bounds the gap beside its tolerance', () => {
  it('stretch holds in the hot state alone, by its maker, whatever the tolerance of that state: 150 um, by hand', () => {
    // hot 400 um wider; drawn out at most 0.25 mm, pressed at most 1 mm: the right machine comes 150 um to the left
    const { plan } = planOf(ends({ found: 100, want: 100, tolerance: 0.5, stretch: [-1, 0.25] }))
    expect(along(plan)).toBeCloseTo(-150, 3)
    const hot = plan.couplings.find(({ state }) => state === 'hot')?.checks.at(-1)
    // the middle of -1 to 0.25 is -0.375, half of it 0.625
    expect(hot).toMatchObject({ what: 'stretch' })
    expect(hot?.x).toBeCloseTo(0.625, 6)
    expect(hot?.limit).toBeCloseTo(0.625, 12)
    expect(hot?.share).toBeCloseTo(1, 5)
  })

  it('a rotor anywhere in its thrust bearing takes its float off the stretch at both ends: 250 um, by hand', () => {
    // the left rotor may lie 0.1 mm to the left as it runs, which draws the coupling out by so much more
    const { plan } = planOf(
      ends({
        ...{ found: 100, want: 100, tolerance: 0.5, stretch: [-1, 0.25] },
        rotors: { left: { float: [-0.1, 0.3] } },
      }),
    )
    expect(along(plan)).toBeCloseTo(-250, 3)
  })

  it('a tolerance is for the rotor on its magnetic centre: 200 um, by hand', () => {
    // the left rotor runs 0.6 mm right of where it lay, so the gap of 100.5 becomes 99.9, hot 100.3; 0.1 is allowed hot
    const { plan } = planOf(
      ends({
        ...{ found: 100.5, want: 100, tolerance: 0.5 },
        rotors: { left: { centre: 0.6 } },
        stretch: [-2, 0.1],
      }),
    )
    expect(along(plan)).toBeCloseTo(-200, 3)
  })

  it('a rotor that the coupling carries stays within its bearings: 100 um, by hand', () => {
    // hot the coupling draws the left rotor 0.4 mm to the right, where its shoulder is after 0.3 mm
    const { plan } = planOf(
      ends({
        ...{ found: 100, want: 100, tolerance: 0.5 },
        rotors: { left: { centre: 0, float: [-3, 0.3] } },
      }),
    )
    expect(along(plan)).toBeCloseTo(-100, 3)
    // the right one is drawn to the left, and the left machine's thrust float of 0.05 mm to either side comes on top
    const right = planOf(
      ends({
        ...{ found: 100, want: 100, tolerance: 0.5 },
        rotors: { left: { float: [-0.05, 0.05] }, right: { centre: 0, float: [-0.3, 3] } },
      }),
    )
    expect(along(right.plan)).toBeCloseTo(-150, 3)
  })

  it('is measured again by the proof: a plan that moves less is no plan', () => {
    const { run, plan } = planOf(
      ends({
        ...{ found: 100, want: 100, tolerance: 0.5 },
        rotors: { left: { centre: 0, float: [-3, 0.3] } },
      }),
    )
    const lines = run.found().map(({ line }) => line)
    const { bound, byOwnRows } = run.bound()
    expect(plan.cost).toBeCloseTo(100, 3)
    expect(byOwnRows).toBe(true)
    const proven = (part: number) =>
      prove(
        run.train,
        lines,
        run.motions().map((one) => ({ ...one, tx: one.tx * part })),
        1,
        bound * part,
      )
    expect(proven(1).sound).toBe(true)
    expect(proven(0.99).faults.join()).toContain('tolerance')
  })
})
