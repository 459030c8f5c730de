import type { GLPK, LP, Options, Result } from 'glpk.js/node'
import { expect, test, vi } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import type { GlpkCalls } from '../../src/solvers/glpkCalls'

/** Feasible and not optimal: what a simplex that goes round in circles says for ever. */
const underWay = { status: 2, z: 0, vars: {}, dual: {} }
/** GLPK's word for that it was ended. */
const tooManySteps = 8
const ways: string[] = []

/** A GLPK that gets nowhere without presolve, unless somebody ends it. */
const stalling = {
  GLP_MIN: 1,
  GLP_FR: 1,
  GLP_LO: 2,
  GLP_UP: 3,
  GLP_DB: 4,
  GLP_FX: 5,
  GLP_MSG_OFF: 0,
  GLP_UNDEF: 1,
  GLP_FEAS: 2,
  GLP_NOFEAS: 4,
  GLP_OPT: 5,
  GLP_UNBND: 6,
  solve(program: LP, options: Options): Result {
    ways.push(options.presol === true ? 'with presolve' : `${program.subjectTo.length} rows`)
    if (options.presol !== true)
      for (let turn = 0; turn < 1000; turn++) {
        expect(options.cb?.each).toBeGreaterThan(100)
        options.cb?.call(underWay as unknown as Result)
      }
    const result = { status: 5, z: 2, vars: { x0: 2 }, dual: { r0: 0, r1: 1 } }
    return { name: '', time: 0, result }
  },
} as unknown as GLPK

/** Its own calls get no farther. */
const calls = {
  memory: new WebAssembly.Memory({ initial: 1 }),
  malloc: () => 8,
  free: () => undefined,
  createProblem: () => 1,
  deleteProblem: () => undefined,
  addRows: () => 1,
  addColumns: () => 1,
  rowBounds: () => undefined,
  columnBounds: () => undefined,
  setCost: () => undefined,
  loadMatrix: () => undefined,
  sortMatrix: () => undefined,
  parameters: (steps: number) => {
    expect(steps).toBeGreaterThan(100)
    return 8
  },
  simplex: () => {
    ways.push('dual form')
    return tooManySteps
  },
  status: () => underWay.status,
  objective: () => 0,
  columnValue: () => 0,
  rowDual: () => 0,
} satisfies GlpkCalls

vi.mock('../../src/solvers/quietGlpk', () => ({
  quietGlpk: () => Promise.resolve({ glpk: stalling, calls }),
}))

test('a program on which the simplex goes round in circles is asked another way', async () => {
  const solver = await glpkSolver()
  const at = (lower: number) => ({
    terms: [[0, 1]] as [number, number][],
    lower,
    upper: Infinity,
  })
  const program = {
    columns: [{ lower: 0, upper: Infinity }],
    rows: [at(1), at(2)],
    objective: [1],
  }
  expect(solver.solve(program, 60)).toEqual({
    kind: 'optimal',
    objective: 2,
    columns: [2],
    duals: [0, 1],
  })
  expect(ways).toEqual(['dual form', 'with presolve'])
})
