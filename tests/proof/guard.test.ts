import { expect, test } from 'vitest'
import { PlanRun } from '../../src/engine/plan/planRun'
import { prove } from '../../src/engine/proof/prove'
import { guardedTrain, readOf, withIntervals } from '../laws/guardedTrains'
import { glpkSolver } from '../../src/solvers/glpk'

const solver = await glpkSolver()

/** The plan of a random train without anything kept free, judged by the proof of one that keeps it. */
function judged(seed: number, plan: { guard?: number; worst?: boolean }) {
  const document = guardedTrain(seed, { times: 2 })
  withIntervals(document, seed, 5)
  const run = new PlanRun(readOf(document), solver)
  if (run.plan().status !== 'planned' || run.proof().cost < 1) return undefined
  const train = readOf({ ...document, plan: { ...document.plan, ...plan } })
  const lines = run.found().map(({ line }) => line)
  const proof = prove(train, lines, run.motions(), train.plan.share, run.bound().bound)
  const keeping = new PlanRun(train, solver)
  const own = keeping.plan()
  const dearer = !('cost' in own) || own.cost > run.proof().cost * (1 + 1e-5)
  return { proof, dearer, moves: run.motions(), own: dearer ? undefined : keeping.motions() }
}

test.each([
  ['a guard', { guard: 0.05 }],
  ['intervals of growth', { worst: true }],
])(
  'a plan that does not keep %s does not pass the proof',
  (_, plan) => {
    let [tried, failed] = [0, 0]
    for (let seed = 1; tried < 20; seed++) {
      const found = judged(seed, plan)
      if (!found) continue
      const { proof, dearer, moves, own } = found
      tried += 1
      // an interval need not bear on the coupling that stands on the share: then it is the plan with it too
      if (dearer) expect(proof.sound, `seed ${seed}`).toBe(false)
      if (proof.sound) continue
      // at the same cost other moves may keep it: these do not
      if (!dearer) expect(own, `seed ${seed}`).not.toEqual(moves)
      failed += 1
      expect(proof.faults).toHaveLength(1)
      expect(proof.faults[0]).toMatch(/with what is kept free uses/)
      expect(proof.worstKept).toBeGreaterThan(proof.worstShare)
    }
    expect(failed).toBeGreaterThan(5)
  },
  120_000,
)
