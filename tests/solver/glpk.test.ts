import { expect, test, vi } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { quietGlpk } from '../../src/solvers/quietGlpk'
import { conformance } from './conformance'

conformance('the GLPK solver', glpkSolver)

test('GLPK says nothing, not even of what makes it abort, and leaves the console as it was', async () => {
  const [log, error] = [vi.spyOn(console, 'log'), vi.spyOn(console, 'error')]
  const { Instance } = WebAssembly
  try {
    const spoken = [console.log, console.error]
    const [{ glpk }] = await Promise.all([quietGlpk(), quietGlpk()])
    expect([console.log, console.error]).toEqual(spoken)
    expect(WebAssembly.Instance).toBe(Instance)
    // a column named twice in a row: GLPK complains through its terminal and aborts
    const twice = [1, 2].map((coef) => ({ name: 'x', coef }))
    expect(() =>
      glpk.solve({
        name: 'none',
        objective: { direction: glpk.GLP_MIN, name: 'cost', vars: [{ name: 'x', coef: 1 }] },
        subjectTo: [{ name: 'r', vars: twice, bnds: { type: glpk.GLP_LO, lb: 0, ub: 0 } }],
      }),
    ).toThrow()
    expect(log).not.toHaveBeenCalled()
    expect(error).not.toHaveBeenCalled()
  } finally {
    log.mockRestore()
    error.mockRestore()
  }
})
