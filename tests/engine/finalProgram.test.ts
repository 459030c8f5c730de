import { PlanRun } from '../../src/engine/plan/planRun'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { finalProgram } from '../../src/engine/plan/finalProgram'
import { exportProgram } from '../../src/engine/lp/exportProgram'
import { programUnit } from '../../src/engine/lp/program'
import { stageProgram } from '../../src/engine/lp/stage'
import { micrometresPer } from '../../src/mechanics/units'
import { given, oneRow, pair, planOf, solver, trainOf, type Json } from './pair'

const example = (file: string) =>
  JSON.parse(readFileSync(new URL(`../../examples/${file}.json`, import.meta.url), 'utf8')) as Json

const documents: [name: string, document: Json][] = [
  ['pump-and-motor', example('pump-and-motor')],
  ['bolt-bound-gearbox', example('bolt-bound-gearbox')],
  ['leave-it-alone', example('leave-it-alone')],
  ['a pair out of reach', pair({ right: { feet: oneRow, held: true }, found: [given(0, 300)] })],
]

describe.each(documents)('the final program of %s', (_, document) => {
  const train = trainOf(document)
  const final = finalProgram(new PlanRun(train, solver))
  if (final.status === 'stopped') throw new Error(final.why)
  const answer = planOf(document)

  it('ends as the plan does, with the bound of its proof', () => {
    expect(final.status).toBe(answer.status)
    if (answer.status === 'impossible') expect(final.bound).toBeUndefined()
    // the proof adds up over rows of its own, with last digits of their own
    else
      expect((final.bound ?? NaN) / micrometresPer[train.units.fine]).toBeCloseTo(
        answer.proof?.bound ?? NaN,
        7,
      )
  })

  it('comes to that bound when it is solved once more, or has no solution', () => {
    const outcome = solver.solve(stageProgram(final.program, final.stage, final.cuts), 20)
    if (final.bound === undefined) expect(outcome.kind).toBe('infeasible')
    else {
      const cost = outcome.kind === 'optimal' ? outcome.objective * programUnit : NaN
      expect(Math.abs(cost - final.bound)).toBeLessThan(1e-6 * (1 + cost))
    }
  })

  it('is written with names that differ and that every reader takes', () => {
    const written = exportProgram(train, final.program, final.stage, final.cuts)
    const rows = written.groups.flatMap((group) => group.rows)
    const names = [...written.columns, ...rows].map(({ name }) => name)
    for (const name of names) expect(name).toMatch(/^[A-DF-Za-df-z][A-Za-z0-9_.]{0,254}$/)
    expect(new Set(rows.map(({ name }) => name)).size).toBe(rows.length)
    expect(new Set(written.columns.map(({ name }) => name)).size).toBe(written.columns.length)
    expect(written.columns).toHaveLength(final.program.columns.length)
  })
})
