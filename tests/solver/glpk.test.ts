import { expect, test, vi } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { quietGlpk } from '../../src/solvers/quietGlpk'
import { conformance } from './conformance'

const compiled = new Promise<WebAssembly.Module>((told, failed) => {
  glpkSolver(undefined, told).catch(failed)
})

conformance('the GLPK solver', () => glpkSolver())
conformance('the GLPK solver of a program that is compiled', async () => glpkSolver(await compiled))

test('its program is compiled once: for its spare, and for every solver that is handed it', async () => {
  const { Module } = WebAssembly
  const construct = vi.fn((target: typeof Module, given: [BufferSource]) => new target(...given))
  WebAssembly.Module = new Proxy(Module, { construct })
  try {
    const told: WebAssembly.Module[] = []
    await glpkSolver(undefined, (module) => told.push(module))
    expect([construct.mock.calls.length, told.length]).toEqual([1, 1])
    await glpkSolver(told[0], (module) => told.push(module))
    expect([construct.mock.calls.length, told.length]).toEqual([1, 1])
  } finally {
    WebAssembly.Module = Module
  }
})

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
