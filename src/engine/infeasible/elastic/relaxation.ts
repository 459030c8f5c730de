import { tol } from '../../../mechanics/tolerances'
import { combine, type Affine } from '../../lp/affine'
import {
  shareColumn,
  type Circle,
  type Column,
  type Cut,
  type Program,
  type Row,
} from '../../lp/program'
import { solveRounds } from '../../lp/rounds'
import { stageProgram } from '../../lp/stage'
import type { Solver } from '../../lp/solver'
import { startingCuts } from './shareFeasibility'
import { shareWhenPulledIn } from './pull'

/** A limit that can be made to give: one column more, from `least` to `most`, and what it does. */
export interface Relaxation {
  readonly name: string
  readonly least: number
  readonly most: number
  /** What one unit of it is held to be worth when several could give. */
  readonly price: number
  /** Added to what a row bounds. */
  readonly onRow?: (row: Row) => number
  /** Added to a circle's two coordinates and its radius. */
  readonly onCircle?: (
    circle: Circle,
    index: number,
  ) => Partial<Record<'u' | 'w' | 'radius', number>>
}

/**
 * The program with one column more for each give, between the motions and the moves that cost, so
 * that every stage sees them.
 */
export function withRelaxations(program: Program, gives: readonly Relaxation[]): Program {
  const first = program.firstMove
  const shifted = (column: number) => (column < first ? column : column + gives.length)
  const columns: Column[] = gives.map(({ name, least, most }) => ({
    name,
    lower: least,
    upper: most,
    cost: 0,
    meaning: { part: 'room' },
  }))
  return {
    ...program,
    columns: [...program.columns.slice(0, first), ...columns, ...program.columns.slice(first)],
    firstMove: first + gives.length,
    limits: program.limits.map((row) => ({
      ...row,
      terms: [...row.terms, ...termsOf(gives, ({ onRow }) => onRow?.(row), first)],
    })),
    displacements: program.displacements.map((row) => ({
      ...row,
      terms: row.terms.map(([column, a]) => [shifted(column), a] as const),
    })),
    circles: program.circles.map((circle, c) => {
      const plus = (affine: Affine, what: 'u' | 'w' | 'radius'): Affine => {
        const terms = termsOf(gives, ({ onCircle }) => onCircle?.(circle, c)[what], first)
        return combine([1, affine], [1, { constant: 0, terms: new Map(terms) }])
      }
      // A circle given up stays given up.
      if (circle.u.terms.size + circle.w.terms.size + circle.radius.terms.size === 0) return circle
      return {
        ...circle,
        u: plus(circle.u, 'u'),
        w: plus(circle.w, 'w'),
        radius: plus(circle.radius, 'radius'),
      }
    }),
  }
}

function termsOf(
  gives: readonly Relaxation[],
  amount: (give: Relaxation) => number | undefined,
  first: number,
): (readonly [column: number, coefficient: number])[] {
  return gives.flatMap((give, g) => {
    const a = amount(give) ?? 0
    return a === 0 ? [] : [[first + g, a] as const]
  })
}

/**
 * The least that the gives of a program must come to, by their prices, for its couplings to keep
 * within a share that is known to be reached with them.
 * @returns a value for each give, in order; undefined where the solver stopped
 */
export function leastRelaxation(
  program: Program,
  gives: readonly Relaxation[],
  share: number,
  cuts: readonly Cut[],
  solver: Solver,
): number[] | undefined {
  const first = program.firstMove - gives.length
  const outcome = solveRounds(
    program,
    (current) => {
      const floor = stageProgram(program, { ask: 'floor' }, current)
      return {
        ...floor,
        columns: floor.columns.map((column, c) =>
          c === shareColumn ? { ...column, upper: share } : column,
        ),
        objective: floor.columns.map((_, c) => gives[c - first]?.price ?? 0),
      }
    },
    startingCuts(program, cuts),
    solver,
    ({ answer }) => shareWhenPulledIn(program, answer.columns) <= share * (1 + tol.share),
  )
  if (outcome.kind !== 'optimal') return undefined
  return gives.map((_, g) => outcome.answer.columns[first + g] ?? 0)
}
