import { describe, expect, it } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import { PlanningRun } from '../../src/engine/planningRun'
import { Budget } from '../../src/engine/lp/budget'
import { answerJson } from '../../src/json/answerJson'
import { planText } from '../../src/text/planText'
import { glpkSolver } from '../../src/solvers/glpk'
import { exampleFile } from '../holds/choice'

const solver = await glpkSolver()

function readOf(name: string, share?: number) {
  const file = exampleFile(name) as TrainDocument
  const read = readTrain({ ...file, plan: { ...file.plan, ...(share && { share }) } })
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read
}

const tight = () => readOf('pump-and-motor', 0.2)
const whole = new PlanningRun(tight(), solver).reasons()

describe('a budget of work', () => {
  it('leaves a piece that it ran out in without an answer, and does not catch the faults of others', () => {
    const program = { columns: [{ lower: 0, upper: 1 }], rows: [], objective: [1] }
    const budget = new Budget(solver, 3)
    const asks = (times: number) => (within: typeof solver) =>
      Array.from({ length: times }, () => within.solve(program, 1).kind)
    expect(budget.attempt(asks(3))).toEqual(['optimal', 'optimal', 'optimal'])
    expect(budget.attempt(asks(1))).toBeUndefined()
    budget.allow(1)
    expect(budget.attempt(asks(1))).toEqual(['optimal'])
    const other = new Budget(solver, 0)
    expect(() => budget.attempt(() => [other.solver.solve(program, 1)])).toThrow('ran out')
    const faulty = (): object => {
      throw new Error('a fault')
    }
    expect(() => budget.attempt(faulty)).toThrow('a fault')
  })

  it('that runs out under a plan says neither that there is one nor that there is none', () => {
    const read = readOf('bolt-bound-gearbox')
    const answer = new PlanningRun(read, solver, 1e-6).answer({ prices: true, reasons: true })
    if (answer.status !== 'stopped') throw new Error(answer.status)
    expect(answer.why).toContain('which says nothing of whether there is one')
    const text = planText(read.train, answer)
    expect(text).not.toMatch(/[Pp]roven|impossible/)
  })

  it('tells of an impossible train only what is told with more work too, the more the more work', () => {
    expect(whole?.unfinished).toBeUndefined()
    const known = new Set(whole?.remedies.map((remedy) => JSON.stringify(told(remedy))))
    const conflicts = whole?.conflicts.map(({ sentence }) => sentence) ?? []
    let [partial, last] = [0, -1]
    for (const work of [1e-4, 1e-3, 2e-3, 4e-3, 6e-3, 8e-3, 1e-2]) {
      const some = new PlanningRun(tight(), solver, work).reasons()
      // under the work that a plan takes nothing is impossible
      if (!some) continue
      expect(some.conflicts.map(({ sentence }) => sentence)).toEqual(
        conflicts.slice(0, some.conflicts.length),
      )
      for (const remedy of some.remedies) expect(known).toContain(JSON.stringify(told(remedy)))
      expect(some.remedies.length).toBeGreaterThanOrEqual(last)
      last = some.remedies.length
      if (some.unfinished?.includes('remedies') && last > 0) partial++
    }
    expect(partial).toBeGreaterThan(0)
  })

  it('says what is not finished, and how to go on', () => {
    const read = tight()
    const answer = new PlanningRun(read, solver, 1e-3).answer({ reasons: true })
    expect(answer.status).toBe('impossible')
    const json = answerJson(answer, read.train)
    expect(json).toMatchObject({ unfinished: ['conflict', 'remedies'] })
    const text = planText(read.train, answer).replace(/\s+/g, ' ')
    expect(text).toContain('and others may work that are not told')
    expect(text).toContain('--work 10')
    expect(text).not.toContain('Nothing that was tried works, alone or in pairs')
  })
})

/** A remedy but for what is said of the other choices tried, which grows. */
function told<Remedy extends { sentence: string }>(remedy: Remedy): Remedy {
  return { ...remedy, sentence: remedy.sentence.replace(/ (Other|No other) choices? of.*/, '') }
}
