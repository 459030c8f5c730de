import { tol } from '../mechanics/tolerances'
import type { LinearProgram, LpRow, Optimal } from '../engine/lp/solver'
import { rowFactsOf } from './rowFacts'

/** A program with rows of one size, and the way back from its answer to the program's own. */
export interface ScaledRows {
  readonly program: LinearProgram
  /** Turns an optimal answer into one of the program as it was: the same columns, other duals. */
  back(answer: Optimal): Optimal
}

/**
 * The simplex stalls on programs whose numbers lie many sizes apart: feet a hair from one line, a limit of a
 * kilometre, what rounding leaves of a sine. Each row of such a program is divided by its largest coefficient, and
 * coefficients that are nothing beside it are left out. Programs of usual trains stay as they are, and with them
 * which of several equal answers is found.
 * @returns undefined for a program of usual numbers
 */
export function scaledRows(program: LinearProgram): ScaledRows | undefined {
  if (!program.rows.some((row) => rowFactsOf(row).farOff)) return undefined
  const largest = program.rows.map(({ terms }) =>
    terms.reduce((most, [, a]) => Math.max(most, Math.abs(a)), 0),
  )
  const rows = program.rows.map(({ terms, lower, upper }, i): LpRow => {
    const size = largest[i] ?? 0
    if (size === 0) return { terms, lower, upper }
    return {
      terms: terms
        .filter(([, a]) => Math.abs(a) > size * tol.rowDust)
        .map(([j, a]): [number, number] => [j, a / size]),
      lower: lower / size,
      upper: upper / size,
    }
  })
  return {
    program: { ...program, rows },
    back: (answer) => ({
      ...answer,
      duals: answer.duals.map((dual, i) => {
        const size = largest[i] ?? 0
        return size === 0 ? dual : dual / size
      }),
    }),
  }
}
