import { expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { PlanRun } from '../../src/engine/plan/planRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { exampleFiles, exampleText } from '../browser/sheet'

const solver = await glpkSolver()

/** An example with every tolerance so many times as wide; what bounds it along the train left out. */
function widened(file: string, times: number): unknown {
  const document = JSON.parse(exampleText(file)) as TrainDocument
  return {
    ...document,
    couplings: document.couplings.map((coupling) => ({
      ...coupling,
      axial: undefined,
      tolerance: Object.fromEntries(
        Object.entries(coupling.tolerance).map(([key, limit]) => [
          key,
          typeof limit === 'number' ? limit * times : limit,
        ]),
      ),
    })),
  }
}

function floorOf(input: unknown): number | null {
  const read = readTrain(input)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return new PlanRun(read.train, solver).plan().floor
}

test.each(exampleFiles)(
  '%s: tolerances so many times as wide have that part of the floor',
  (file) => {
    const floor = floorOf(widened(file, 1)) ?? NaN
    // a train that can be put right altogether stays one
    if (floor === 0) {
      expect(floorOf(widened(file, 1000))).toBe(0)
      return
    }
    expect(floor).toBeGreaterThan(1e-3)
    for (const times of [30, 100, 1000, 5000]) {
      const wide = floorOf(widened(file, times))
      expect(wide, `${times} times`).not.toBeNull()
      expect(Math.abs(((wide ?? NaN) * times) / floor - 1), `${times} times`).toBeLessThan(2e-5)
    }
  },
)
