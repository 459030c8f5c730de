import { describe, expect, it } from 'vitest'
import type { MixedProgram } from '../../src/engine/lp/solver'
import { glpkSolver } from '../../src/solvers/glpk'
import { Random } from '../second/random'
import { col, row } from './problems'

const solver = await glpkSolver()

function best(program: MixedProgram) {
  const outcome = solver.solveMixed?.(program, 10)
  if (outcome?.kind !== 'best') throw new Error(JSON.stringify(outcome))
  return outcome
}

describe('programs with binaries', () => {
  it('pays a fixed cost for a move or leaves it: whichever is less', () => {
    // x + y >= 3; y costs 2 each, x costs 1 each and 2.5 once: 3 + 2.5 against 6
    const program = (fixed: number): MixedProgram => ({
      columns: [col(), col(), col()],
      rows: [row([1, 1, 0], 3, Infinity), row([1, 0, -10], -Infinity, 0)],
      objective: [1, 2, fixed],
      binaries: [2],
    })
    expect(best(program(2.5)).objective).toBeCloseTo(5.5, 9)
    expect(best(program(2.5)).columns).toEqual([3, 0, 1])
    expect(best(program(3.5)).objective).toBeCloseTo(6, 9)
    expect(best(program(3.5)).columns).toEqual([0, 3, 0])
  })

  it('keeps binaries at 0 or 1 whatever bounds they carry, and gives no duals', () => {
    const answer = best({
      columns: [col(0, 7), col(-3, 7)],
      rows: [row([1, 1], -Infinity, 1.5)],
      objective: [-1, -1],
      binaries: [0, 1],
    })
    expect([...answer.columns].sort()).toEqual([0, 1])
    expect(answer).not.toHaveProperty('duals')
  })

  it('finds the best of all subsets, by trying them', () => {
    const random = new Random(11)
    for (let turn = 0; turn < 30; turn++) {
      const worth = Array.from({ length: 8 }, () => random.between(1, 9))
      const weight = Array.from({ length: 8 }, () => random.between(1, 9))
      const most = random.between(10, 30)
      const sum = (list: readonly number[], bits: number) =>
        list.reduce((total, value, i) => total + ((bits >> i) & 1) * value, 0)
      let wanted = 0
      for (let bits = 0; bits < 256; bits++)
        if (sum(weight, bits) <= most) wanted = Math.max(wanted, sum(worth, bits))
      const answer = best({
        columns: worth.map(() => col()),
        rows: [row(weight, -Infinity, most)],
        objective: worth.map((value) => -value),
        binaries: worth.map((_, i) => i),
      })
      expect(-answer.objective).toBeCloseTo(wanted, 6)
    }
  })

  it('stops without a point where there is none, and on a program that is no program', () => {
    const none: MixedProgram = {
      columns: [col(), col()],
      rows: [row([1, 1], 0.4, 0.6)],
      objective: [1, 1],
      binaries: [0, 1],
    }
    expect(solver.solveMixed?.(none, 5).kind).toBe('stopped')
    const wrong = { ...none, objective: [NaN, 1] }
    expect(solver.solveMixed?.(wrong, 5)).toMatchObject({ kind: 'stopped' })
    // and the next answer is as good as ever
    expect(
      solver.solve({ columns: [col()], rows: [row([1], 2, 3)], objective: [1] }, 5),
    ).toMatchObject({ kind: 'optimal', objective: 2 })
  })
})
