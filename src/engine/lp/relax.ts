import type { LinearProgram } from './solver'
import { combine } from './affine'
import type { Cut, Program, Row } from './program'
import { stageProgram } from './stage'

/** What can be given more room: one side of some rows, and the radius of some circles; indices in the program. */
export interface Loosened {
  readonly rows: readonly number[]
  readonly side: 'lower' | 'upper'
  readonly circles: readonly number[]
}

/** The program with one more column: the room (program units) that is added to one limit. */
export function loosen(program: Program, limit: Loosened): Program {
  const room = program.columns.length
  const slack: Program['columns'][number] = {
    name: 'more room',
    lower: 0,
    upper: Infinity,
    cost: 0,
    meaning: { part: 'room' },
  }
  return {
    ...program,
    columns: [...program.columns, slack],
    limits: program.limits.flatMap((row, i) =>
      limit.rows.includes(i) ? loosened(row, limit.side, room) : [row],
    ),
    circles: program.circles.map((circle, c) =>
      limit.circles.includes(c)
        ? {
            ...circle,
            radius: combine([1, circle.radius], [1, { constant: 0, terms: new Map([[room, 1]]) }]),
          }
        : circle,
    ),
  }
}

/** Only the side that binds gets room; a row with two sides becomes two. */
function loosened(row: Row, side: 'lower' | 'upper', room: number): Row[] {
  const terms = [...row.terms, [room, side === 'lower' ? 1 : -1] as const]
  return side === 'lower'
    ? [
        { ...row, terms, upper: Infinity },
        { ...row, lower: -Infinity },
      ]
    : [
        { ...row, terms, lower: -Infinity },
        { ...row, upper: Infinity },
      ]
}

/** Least cost when the room is exactly `room`. */
export const costWithRoom =
  (program: Program, share: number, room: number) =>
  (cuts: readonly Cut[]): LinearProgram => {
    const lp = stageProgram(program, { ask: 'cost', share }, cuts)
    const last = lp.columns.length - 1
    return {
      ...lp,
      columns: lp.columns.map((column, c) => (c === last ? { lower: room, upper: room } : column)),
    }
  }

/** The most room for which every unit of it still saves `price` on average, up to `most`. */
export const roomAtPrice =
  (program: Program, share: number, cost: number, price: number, most: number) =>
  (cuts: readonly Cut[]): LinearProgram => {
    const lp = stageProgram(program, { ask: 'cost', share }, cuts)
    const last = lp.columns.length - 1
    const paid = lp.objective.flatMap((c, j) => (c === 0 ? [] : [[j, c] as const]))
    return {
      columns: lp.columns.map((column, c) => (c === last ? { lower: 0, upper: most } : column)),
      rows: [...lp.rows, { terms: [...paid, [last, price]], lower: -Infinity, upper: cost }],
      objective: lp.columns.map((_, c) => (c === last ? -1 : 0)),
    }
  }

/** The program with rows of one side each, so that room on one side takes none from the other. */
export function oneSided(program: Program): Program {
  const limits = program.limits.flatMap((row): Row[] =>
    [
      { ...row, upper: Infinity },
      { ...row, lower: -Infinity },
    ].filter(({ lower, upper }) => Number.isFinite(lower) || Number.isFinite(upper)),
  )
  return { ...program, limits }
}
