import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { PlanningRun } from '../../src/engine/planningRun'
import type { Solver } from '../../src/engine/lp/solver'
import { glpkSolver } from '../../src/solvers/glpk'
import { compare } from '../second/disagreements'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'
import { asFirst, planned } from './firstAnswer'

/**
 * Trains of usual size whose numbers lie many sizes apart: feet a hundredth of a millimetre from one line, a tilt
 * that is limited to a million radians. The simplex stalled on them for seconds a program and ended by the clock.
 */
test.each([
  ['odd-sizes-1.json', 'impossible', 200],
  ['odd-sizes-2.json', 'planned', 40],
])(
  '%s is %s within %i programs, each done at once, and the second builder agrees',
  async (file, status, most) => {
    const text = readFileSync(new URL(file, import.meta.url), 'utf8')
    const glpk = await glpkSolver()
    let solves = 0
    /** A program that stalls is ended before another way to solve it is tried, and counts as stopped. */
    const impatient: Solver = {
      ...glpk,
      solve: (program, _seconds, warm) => {
        solves++
        return glpk.solve(program, 1, warm)
      },
    }
    const read = readTrain(JSON.parse(text))
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const answer = new PlanningRun(read, impatient).answer({ prices: true, reasons: true })
    expect(answer.status).toBe(status)
    expect(solves).toBeLessThanOrEqual(most)
    const train = JSON.parse(text) as Train
    const { disagreements } = compare(
      asFirst(planned(train, impatient)),
      await solveSecond(train),
      await solveSecond(train, { loose: true }),
    )
    expect(disagreements).toEqual([])
  },
)
