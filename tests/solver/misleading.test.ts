import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planTrain } from '../planned'
import type { AnswerJson } from '../../src/json/answerJson'
import type { Optimal, Outcome, Solver } from '../../src/engine/lp/solver'
import { glpkSolver } from '../../src/solvers/glpk'
import { ScriptedSolver, tampering, type Asked, type Call } from './scripted'

const honest = await glpkSolver()
const load = (file: string) =>
  JSON.parse(
    readFileSync(new URL(`../../examples/${file}.json`, import.meta.url), 'utf8'),
  ) as unknown

const trains = ['pump-and-motor', 'bolt-bound-gearbox']

function plan(file: string, solver: Solver): AnswerJson {
  const answer = planTrain(load(file), solver)
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  return answer
}

/** Columns changed, the share in column 0 left as it was. */
const motions = (answer: Optimal, change: (value: number, column: number) => number): Optimal => ({
  ...answer,
  columns: answer.columns.map((value, j) => (j === 0 ? value : change(value, j))),
})
const duals = (answer: Optimal, change: (dual: number) => number): Optimal => ({
  ...answer,
  duals: answer.duals.map(change),
})

const only =
  (asked: Asked, change: (answer: Optimal, call: Call) => Outcome) =>
  (answer: Optimal, call: Call): Outcome =>
    call.asked === asked ? change(answer, call) : answer

interface Lie {
  readonly name: string
  readonly change: (answer: Optimal, call: Call) => Outcome
}

/** Every one must keep the answer from being a plan. */
const lies: Lie[] = [
  { name: 'all moves a fifth larger', change: (a) => motions(a, (v) => v * 1.2) },
  { name: 'all moves a tenth smaller', change: (a) => motions(a, (v) => v * 0.9) },
  { name: 'all moves a thousandth smaller', change: (a) => motions(a, (v) => v * 0.999) },
  { name: 'no moves', change: (a) => motions(a, () => 0) },
  { name: 'no columns', change: (a) => ({ ...a, columns: [] }) },
  { name: 'moves turned over', change: (a) => motions(a, (v) => -v) },
  { name: 'moves that are no numbers', change: (a) => motions(a, () => NaN) },
  { name: 'moves without end', change: (a) => motions(a, () => Infinity) },
  {
    name: 'a stray motion, in the last question alone',
    change: only('margin', (a) => motions(a, (v, j) => (j === 1 ? v + 200 : v))),
  },
  { name: 'no duals', change: (a) => duals(a, () => 0) },
  { name: 'duals of half the size', change: only('cost', (a) => duals(a, (v) => v / 2)) },
  { name: 'duals a tenth too large', change: only('cost', (a) => duals(a, (v) => v * 1.1)) },
  { name: 'duals turned over', change: only('cost', (a) => duals(a, (v) => -v)) },
  { name: 'duals that are no numbers', change: only('cost', (a) => duals(a, () => NaN)) },
  {
    name: 'a cost that is said to be lower than it is',
    change: only('cost', (a) => ({ ...a, objective: a.objective * 0.9 })),
  },
  {
    name: 'a cost that is no number',
    change: only('cost', (a) => ({ ...a, objective: NaN })),
  },
  { name: 'floor duals of nothing', change: only('floor', (a) => duals(a, () => 0)) },
  { name: 'floor duals of half the size', change: only('floor', (a) => duals(a, (v) => v / 2)) },
  { name: 'floor duals that are no numbers', change: only('floor', (a) => duals(a, () => NaN)) },
]

describe.each(trains)('%s', (file) => {
  it('is planned by an honest solver', () => {
    const answer = plan(
      file,
      tampering(honest, (a) => a),
    )
    expect(answer.status).toBe('planned')
    expect(answer).toEqual(plan(file, honest))
  })

  it.each(lies)('is no plan when the solver answers with $name', ({ change }) => {
    const answer = plan(file, tampering(honest, change))
    expect(['unproven', 'stopped']).toContain(answer.status)
    expect(answer.why?.length).toBeGreaterThan(20)
    for (const part of ['cost', 'total', 'bodies', 'feet', 'couplings', 'expected', 'binding'])
      expect(answer, part).not.toHaveProperty(part)
    expect(answer.asFound.length).toBeGreaterThan(0)
  })

  const ends: Outcome[] = [
    { kind: 'infeasible' },
    { kind: 'unbounded' },
    { kind: 'stopped', why: 'the bell rang' },
  ]
  it.each(
    ends.flatMap((end) =>
      (['floor', 'cost', 'margin'] as const).map((asked) => ({ end, asked, kind: end.kind })),
    ),
  )('is stopped when the $asked comes back $kind', ({ end, asked }) => {
    const answer = plan(
      file,
      tampering(
        honest,
        only(asked, () => end),
      ),
    )
    expect(answer.status).toBe('stopped')
    expect(answer.why).toContain(end.kind === 'stopped' ? 'the bell rang' : end.kind)
    expect(answer).not.toHaveProperty('feet')
  })

  it('is not called impossible because a solver says that the least share is large', () => {
    const answer = plan(
      file,
      tampering(
        honest,
        only('floor', (a) => ({
          ...a,
          objective: 9000,
          columns: a.columns.map((v, j) => (j === 0 ? 9 : v)),
        })),
      ),
    )
    expect(answer.status).not.toBe('impossible')
  })

  it('is not called impossible because duals are too large', () => {
    const answer = plan(
      file,
      tampering(
        honest,
        only('floor', (a) => duals(a, (v) => v * 1000)),
      ),
    )
    expect(answer.status).not.toBe('impossible')
  })

  it('says the same plan when only the prices cannot be had', () => {
    const whole = plan(file, honest)
    const margins = tampering(honest, (a) => a)
    plan(file, margins)
    const last = margins.calls.findLastIndex(({ asked }) => asked === 'margin')
    const answer = plan(
      file,
      tampering(honest, (a, { number }) =>
        number > last + 1 ? { kind: 'stopped', why: 'enough' } : a,
      ),
    )
    expect(answer.status).toBe('planned')
    expect({ ...answer, binding: [] }).toEqual({ ...whole, binding: [] })
  })
})

it('a train within tolerance needs no answer of the solver but for its floor', () => {
  const stops = new ScriptedSolver(() => ({ kind: 'stopped', why: 'no' }))
  const answer = plan('leave-it-alone', stops)
  expect(answer.status).toBe('in-tolerance')
  expect(answer.cost).toBe(0)
  expect(answer.floor).toBeNull()
  expect(answer.worstShare).toBe(answer.standingShare)
  expect(stops.calls.map(({ asked }) => asked)).toEqual(['floor'])
})
