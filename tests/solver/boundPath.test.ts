import { beforeAll, expect, test } from 'vitest'
import { BoundPath, type MovingBounds } from '../../src/engine/lp/boundPath'
import type { LinearProgram, Optimal, Solver } from '../../src/engine/lp/solver'
import { isSound, soundnessOf } from '../../src/engine/lp/soundness'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted } from '../counts'
import { Random } from '../second/random'
import { randomProgram } from './randomProgram'

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

const asked = (program: LinearProgram): Optimal => {
  const answer = solver.solve(program, 5)
  if (answer.kind !== 'optimal') throw new Error(answer.kind)
  return answer
}

const pathAt = (program: LinearProgram, answer: Optimal) => {
  const path = BoundPath.at(program, answer)
  if (!path) throw new Error('no corner')
  return path
}

/** 2 x + y, x + y at least 4, y at most 3, x and y at least 0: (1, 3) costs 5. */
const byHand: LinearProgram = {
  columns: [
    { lower: 0, upper: Infinity },
    { lower: 0, upper: Infinity },
  ],
  rows: [
    { terms: [[0, 1] as const, [1, 1] as const], lower: 4, upper: Infinity },
    { terms: [[1, 1] as const], lower: -Infinity, upper: 3 },
  ],
  objective: [2, 1],
}

test('a path by hand: room for y saves 1 a unit until x is at 0', () => {
  const path = pathAt(byHand, asked(byHand)).moved(new Map([[1, { lower: 0, upper: 1 }]]))
  expect([...path.pieces(5)]).toEqual([
    { from: 0, to: 1, objective: 5, slope: -1 },
    { from: 1, to: 5, objective: 4, slope: 0 },
  ])
  expect(path.answer()).toEqual({ kind: 'optimal', objective: 4, columns: [0, 4], duals: [1, 0] })
})

test('and back again, to below where it began', () => {
  const path = pathAt(byHand, asked(byHand)).moved(new Map([[1, { lower: 0, upper: 1 }]]))
  expect([...path.pieces(2)]).toHaveLength(2)
  // y at most 1: (3, 1) costs 7; none with y under 0
  expect([...path.pieces(-2)]).toEqual([
    { from: 2, to: 1, objective: 4, slope: 0 },
    { from: 1, to: -2, objective: 4, slope: -1 },
  ])
  expect(path.answer().columns).toEqual([3, 1])
  const ends = [...path.pieces(-9)].map(({ to }) => to)
  expect(ends).toEqual([-3])
})

test('a path is left between two corners, and rows are added there', () => {
  const path = pathAt(byHand, asked(byHand)).moved(new Map([[1, { lower: 0, upper: 1 }]]))
  for (const { from } of path.pieces(5)) {
    if (from > 0) continue
    path.go(0.5)
    break
  }
  expect(path.answer().columns).toEqual([0.5, 3.5])
  // x - y at least -1: (1.5, 2.5) costs 5.5
  const row = { terms: [[0, 1] as const, [1, -1] as const], lower: -1, upper: Infinity }
  expect(path.add([row], [undefined])).toBe(true)
  expect(path.answer()).toMatchObject({ objective: 5.5, columns: [1.5, 2.5] })
  // x + y at most 2: nothing
  const none = { terms: [[0, 1] as const, [1, 1] as const], lower: -Infinity, upper: 2 }
  expect(path.add([none], [undefined])).toBe(false)
})

test('an answer that is no corner has no path', () => {
  const free = { lower: -Infinity, upper: Infinity }
  const program = { columns: [free, free], rows: byHand.rows, objective: [0, 0] }
  const between = { kind: 'optimal', objective: 0, columns: [9, -9], duals: [0, 0] } as const
  expect(BoundPath.at(program, between)).toBeUndefined()
})

test('a fixed row that is loosened on the side it presses lets go', () => {
  // x + y = 4, y at most 3, and 4 may sink: x goes to 0 first, then y
  const rows = [{ terms: byHand.rows[0]?.terms ?? [], lower: 4, upper: 4 }, ...byHand.rows.slice(1)]
  const program = { ...byHand, rows }
  const path = pathAt(program, asked(program)).moved(new Map([[0, { lower: -1, upper: 0 }]]))
  expect([...path.pieces(6)]).toEqual([
    { from: 0, to: 1, objective: 5, slope: -2 },
    { from: 1, to: 4, objective: 3, slope: -1 },
    { from: 4, to: 6, objective: 0, slope: 0 },
  ])
})

test('wherever it stands, the solver finds the same, on random programs', () => {
  let compared = 0
  let corners = 0
  for (let seed = 1; seed <= counted(60, 2000, 200); seed++) {
    const random = new Random(seed)
    const known = randomProgram(seed, random.whole(2, 12), random.whole(2, 30))
    const { program } = known
    const start = BoundPath.at(program, { kind: 'optimal', ...known, columns: known.columns })
    // what presses may depend on each other: then the answer is no corner
    if (!start) continue
    const moving = new Map<number, MovingBounds>()
    for (let i = 0; i < program.rows.length; i++)
      if (random.chance(0.3))
        moving.set(i, { lower: -random.between(0, 2), upper: random.between(0, 2) })
    const path = start.moved(moving)
    for (const { to } of path.pieces(3)) {
      corners++
      if (random.chance(0.5)) continue
      path.go(path.place + (to - path.place) * random.next())
      break
    }
    const { place } = path
    const rows = program.rows.map((row, i) => {
      const rates = moving.get(i)
      if (!rates) return row
      return {
        ...row,
        lower: row.lower + rates.lower * place,
        upper: row.upper + rates.upper * place,
      }
    })
    const moved = { ...program, rows }
    const answer = path.answer()
    expect(isSound(soundnessOf(moved, answer)), `seed ${seed}`).toBe(true)
    const other = asked(moved)
    expect(answer.objective, `seed ${seed}`).toBeCloseTo(other.objective, 6)
    compared++
  }
  expect(compared).toBeGreaterThan(30)
  expect(corners).toBeGreaterThan(compared)
})
