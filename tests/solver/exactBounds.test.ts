import { expect, test } from 'vitest'
import { PlanRun } from '../../src/engine/plan/planRun'
import { stageProgram } from '../../src/engine/lp/stage'
import { glpkSolver } from '../../src/solvers/glpk'
import { boundsTogether } from '../../src/engine/proof/exactSum'
import { programUnit } from '../../src/engine/lp/program'
import { glpsolInstalled } from '../cli/secondOpinion'
import { read } from '../holds/choice'
import { randomTrain } from '../second/randomTrain'
import { exactOptimum, isNotOver, under, type Fraction } from './exactOptimum'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 60 : 2

test('the exact optimum of a program that is done by hand', () => {
  // min x + 2 y, x + y >= 1/3 as a double, x <= 1/8: y takes the rest
  const third = 1 / 3
  const program = {
    columns: [
      { lower: 0, upper: 0.125 },
      { lower: 0, upper: Infinity },
    ],
    rows: [{ terms: [[0, 1] as const, [1, 1] as const], lower: third, upper: Infinity }],
    objective: [1, 2],
  }
  if (!glpsolInstalled) return
  const found = exactOptimum(program)
  if (!found) throw new Error('no optimum')
  // 2 / 3 - 1 / 8 in doubles is exact here
  const value = 2 * third - 0.125
  expect(isNotOver(value, found)).toBe(true)
  expect(isNotOver(value + 2 ** -53, found)).toBe(false)
  expect(under(value - 0.5, found)).toBeCloseTo(0.5 / value, 12)
})

test.skipIf(!glpsolInstalled)(
  `no bound of ${trains} random trains lies above the exact optimum of its program${glpsolInstalled ? '' : ' (skipped: glpsol is not installed)'}`,
  async () => {
    const solver = await glpkSolver()
    const counts = { bounds: 0, over: 0, plainOver: 0, unclear: 0, farthest: 0 }
    for (let seed = 70_001; counts.bounds < trains; seed++) {
      const run = new PlanRun(read(randomTrain(seed)), solver)
      const solved = run.solved()
      if (solved.status !== 'planned') continue
      let [part, over] = [0n, 1n]
      let clear = true
      for (const { program, least } of solved.parts) {
        const stage = { ask: 'cost', share: least.share } as const
        const found = exactOptimum(stageProgram(program, stage, least.asked))
        if (!found) clear = false
        else [part, over] = [part * found.over + found.part * over, over * found.over]
        if (!found) continue
        if (!isNotOver(least.bound, found)) counts.over++
        if (!isNotOver(least.answer.objective, found)) counts.plainOver++
        counts.farthest = Math.max(counts.farthest, under(least.bound, found))
      }
      if (!clear) {
        counts.unclear++
        continue
      }
      counts.bounds++
      const whole: Fraction = { part: part * BigInt(programUnit), over }
      const bounds = solved.parts.map(({ least }) => least.bound)
      if (!isNotOver(boundsTogether(bounds, programUnit), whole)) counts.over++
      // rows of the proof's own are those of the program but for the last digits of these
      if (!isNotOver(run.bound().bound * (1 - 1e-11), whole)) counts.over++
      counts.farthest = Math.max(counts.farthest, under(run.bound().bound, whole))
    }
    console.log(`exact bounds ${JSON.stringify(counts)}`)
    expect(counts.over).toBe(0)
    expect(counts.farthest).toBeLessThan(1e-8)
    // a check that cannot fail would be none: what the simplex itself says does lie over it
    if (long) expect(counts.plainOver).toBeGreaterThan(0)
  },
)
