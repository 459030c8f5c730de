import type { LinearProgram } from '../../src/engine/lp/solver'

/** A linear program whose answer was worked out by hand, as the comment beside it shows. */
export interface Problem {
  readonly name: string
  readonly program: LinearProgram
  readonly objective: number
  /** Where the point is the only one. */
  readonly columns?: readonly number[]
  /** Where the duals are the only ones. */
  readonly duals?: readonly number[]
}

type Column = LinearProgram['columns'][number]
type Row = LinearProgram['rows'][number]

export const col = (lower = 0, upper = Infinity): Column => ({ lower, upper })
export const free = col(-Infinity, Infinity)
const fixed = (value: number): Column => col(value, value)

/** lower <= coefficients . columns <= upper; zeros are left out. */
export const row = (coefficients: readonly number[], lower: number, upper: number): Row => ({
  terms: coefficients.flatMap((a, j) => (a === 0 ? [] : [[j, a] as const])),
  lower,
  upper,
})
const least = (coefficients: readonly number[], lower: number) => row(coefficients, lower, Infinity)
const most = (coefficients: readonly number[], upper: number) => row(coefficients, -Infinity, upper)

export const problems: readonly Problem[] = [
  {
    // x + 2y = 4 and 3x + y = 6 cross at (1.6, 1.2); y1 + 3 y2 = 1 and 2 y1 + y2 = 1
    name: 'two rows that both bind',
    program: {
      columns: [col(), col()],
      rows: [least([1, 2], 4), least([3, 1], 6)],
      objective: [1, 1],
    },
    objective: 2.8,
    columns: [1.6, 1.2],
    duals: [0.4, 0.2],
  },
  {
    // t >= |x - 3| at x = 5: the side t >= x - 3 binds, and one more x costs one more t
    name: 'a free column set by an equality',
    program: {
      columns: [free, col()],
      rows: [least([-1, 1], -3), least([1, 1], 3), row([1, 0], 5, 5)],
      objective: [0, 1],
    },
    objective: 2,
    columns: [5, 2],
    duals: [1, 0, 1],
  },
  {
    // y >= 1 + x with x = 2
    name: 'a fixed column',
    program: { columns: [fixed(2), col()], rows: [least([-1, 1], 1)], objective: [0, 1] },
    objective: 3,
    columns: [2, 3],
    duals: [1],
  },
  {
    // x = 3 - y at most, y = 1 at least; one more on the upper side saves one
    name: 'a row with two bounds, the upper one binding',
    program: { columns: [col(), col(1)], rows: [row([1, 1], 1, 3)], objective: [-1, 0] },
    objective: -2,
    columns: [2, 1],
    duals: [-1],
  },
  {
    // x = 1 - y at least, y = 0.25 at most
    name: 'a row with two bounds, the lower one binding',
    program: { columns: [col(), col(0, 0.25)], rows: [row([1, 1], 1, 3)], objective: [1, 0] },
    objective: 0.75,
    columns: [0.75, 0.25],
    duals: [1],
  },
  {
    // both equalities fix the point: x = 2, y = 1; y1 + y2 = 2, y1 - y2 = 1
    name: 'equalities alone',
    program: {
      columns: [free, free],
      rows: [row([1, 1], 3, 3), row([1, -1], 1, 1)],
      objective: [2, 1],
    },
    objective: 5,
    columns: [2, 1],
    duals: [1.5, 0.5],
  },
  {
    // 2x >= -6
    name: 'a column below zero',
    program: { columns: [col(-5, -2)], rows: [least([2], -6)], objective: [1] },
    objective: -3,
    columns: [-3],
    duals: [0.5],
  },
  {
    // the bound of the column binds, the row does not
    name: 'a column with an upper bound only',
    program: { columns: [col(-Infinity, 4)], rows: [most([1], 9)], objective: [-1] },
    objective: -4,
    columns: [4],
    duals: [0],
  },
  {
    name: 'an empty row that holds',
    program: { columns: [col(1.5)], rows: [row([], -1, 1), least([1], 2)], objective: [1] },
    objective: 2,
    columns: [2],
    duals: [0, 1],
  },
  {
    name: 'a row without bounds',
    program: {
      columns: [col(1.5)],
      rows: [row([1], -Infinity, Infinity), least([1], 2)],
      objective: [1],
    },
    objective: 2,
    columns: [2],
    duals: [0, 1],
  },
  {
    name: 'no rows at all',
    program: { columns: [col(1.5), fixed(2)], rows: [], objective: [1, 3] },
    objective: 7.5,
    columns: [1.5, 2],
    duals: [],
  },
  {
    name: 'nothing to minimise',
    program: { columns: [col(), col()], rows: [row([1, 1], 2, 2)], objective: [0, 0] },
    objective: 0,
    duals: [0],
  },
  {
    // three rows meet at (1, 1), where two would do: which duals are right is open
    name: 'a degenerate corner',
    program: {
      columns: [col(), col()],
      rows: [most([1, 0], 1), most([0, 1], 1), most([1, 1], 2)],
      objective: [-1, -1],
    },
    objective: -2,
    columns: [1, 1],
  },
  {
    // the same row twice, and its sum: any split of the dual is right
    name: 'rows that say the same twice',
    program: {
      columns: [col(), col()],
      rows: [least([1, 1], 2), least([1, 1], 2), least([2, 2], 4), row([1, -1], 0, 0)],
      objective: [1, 2],
    },
    objective: 3,
    columns: [1, 1],
  },
  {
    // every point of an edge costs the same
    name: 'an edge of best points',
    program: { columns: [col(0, 3), col(0, 3)], rows: [least([1, 1], 4)], objective: [1, 1] },
    objective: 4,
    duals: [1],
  },
]

export const infeasible: readonly { name: string; program: LinearProgram }[] = [
  {
    name: 'two rows against each other',
    program: { columns: [col()], rows: [least([1], 2), most([1], 1)], objective: [1] },
  },
  {
    name: 'a row against a column',
    program: { columns: [col(0, 1), col(0, 1)], rows: [least([1, 1], 3)], objective: [0, 0] },
  },
  {
    name: 'an empty row that asks for something',
    program: { columns: [col(), col()], rows: [row([], 1, 2)], objective: [1, 1] },
  },
  {
    // its dual is infeasible too, so a solver might take it for unbounded
    name: 'infeasible, and cheap without end but for that',
    program: {
      columns: [col(), col()],
      rows: [least([1, -1], 1), least([-1, 1], 1)],
      objective: [-1, 0],
    },
  },
]

export const unbounded: readonly { name: string; program: LinearProgram }[] = [
  {
    name: 'a free column with a cost',
    program: { columns: [free, col()], rows: [least([0, 1], 1)], objective: [1, 1] },
  },
  {
    name: 'two columns that grow together',
    program: { columns: [col(), col()], rows: [most([1, -1], 1)], objective: [-1, 0] },
  },
  {
    name: 'no rows',
    program: { columns: [col()], rows: [], objective: [-1] },
  },
  {
    name: 'many rows, one way out',
    program: {
      columns: [col(), col()],
      rows: [most([1, -1], 1), most([1, -2], 1), most([-1, 0], 5), most([1, -1], 2)],
      objective: [-1, -1],
    },
  },
]
