import type { Affine } from './affine'
import type { BandFamily } from './footLimits'

/** What kind of limit a row stands for: the same words as in the file, for counting what binds. */
export type Family =
  | BandFamily
  | 'hole'
  | 'reserve'
  | 'standing hole'
  | 'tilt'
  | 'restraint axial'
  | 'restraint side'
  | 'restraint rise'
  | 'flex'
  | 'offset'
  | 'angle'
  | 'axial gap'
  | 'coupling stretch'
  | 'rotor float'

/** low <= expression <= high. */
export interface Row {
  family: Family | 'cost'
  /** More families the row counts for: box, round, skid. */
  also: string[]
  expression: Affine
  low: number
  high: number
}

/** The length of the vector (a, b) is at most `radius`; cut by tangents where it is not. */
export interface Circle {
  family: Family
  also: string[]
  a: Affine
  b: Affine
  radius: Affine
  /** How far past the circle a point may lie before it is cut (in the units of a and b). */
  slack: number
  /** What is taken off the radius in the direction (cos, sin); nothing where absent. */
  reserve?: (cos: number, sin: number) => number
}

/** A linear program with circles; the objective is chosen when it is solved. */
export interface Program {
  lower: number[]
  upper: number[]
  /** What each column adds to the cost of moving. */
  cost: number[]
  rows: Row[]
  circles: Circle[]
  /** Each move that costs: the columns of its part upward and its part downward. */
  sizes: { of: Affine; up: number; down: number }[]
  /** The column of the worst share of any tolerance. */
  worst: number
}

/** An empty program that has only the worst-share column. */
export function emptyProgram(): Program {
  return { lower: [0], upper: [Infinity], cost: [0], rows: [], circles: [], sizes: [], worst: 0 }
}

/** Adds a column and returns its index. */
export function addColumn(program: Program, lower: number, upper: number, cost = 0): number {
  program.lower.push(lower)
  program.upper.push(upper)
  program.cost.push(cost)
  return program.lower.length - 1
}

/** Adds |expression| times `price` to the cost. */
export function addSize(program: Program, expression: Affine, price: number): void {
  if (expression.by.size === 0) return
  const up = addColumn(program, 0, Infinity, price)
  const down = addColumn(program, 0, Infinity, price)
  const by = new Map(expression.by).set(up, -1).set(down, 1)
  const split = { constant: expression.constant, by }
  program.rows.push({ family: 'cost', also: [], expression: split, low: 0, high: 0 })
  program.sizes.push({ of: expression, up, down })
}
