/**
 * The solver port: a linear program in, a closed union of outcomes out. Values exist only in an
 * optimal outcome, so nobody can read the zeros of a failed run.
 */
export interface LinearProgram {
  readonly columns: readonly LpColumn[]
  readonly rows: readonly LpRow[]
  /** Coefficients of what is minimised, one a column. */
  readonly objective: readonly number[]
}

/** Bounds may be -Infinity and Infinity; equal bounds fix the column. */
export interface LpColumn {
  readonly lower: number
  readonly upper: number
}

/** `lower <= sum of coefficient * column <= upper`; each column at most once. */
export interface LpRow {
  readonly terms: readonly (readonly [column: number, coefficient: number])[]
  readonly lower: number
  readonly upper: number
}

/** Values in the units that the program was written in. */
export interface Optimal {
  readonly kind: 'optimal'
  readonly objective: number
  readonly columns: readonly number[]
  /** d(objective)/d(binding bound of the row); positive at a lower bound, negative at an upper one. */
  readonly duals: readonly number[]
}

export type Outcome =
  | Optimal
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unbounded' }
  | { readonly kind: 'stopped'; readonly why: string }

/**
 * Told by its identity alone: programs asked with the same one follow each other, most of their rows the same objects, and a
 * solver may start each where the one before ended. Who asks makes a new one for every question, so that an answer depends on
 * nothing that was asked before it.
 */
export type WarmStart = object

export interface Solver {
  readonly name: string
  /**
   * Minimises; stops after about `seconds`. Never throws on a well-formed program.
   * @param warm of the programs that this one follows
   */
  solve(program: LinearProgram, seconds: number, warm?: WarmStart): Outcome
  /** The same with columns that are 0 or 1. A solver without it serves all but long lists of choices. */
  solveMixed?(program: MixedProgram, seconds: number): MixedOutcome
  /** Told of a program that was answered without it, where somebody counts the work. */
  spared?(program: LinearProgram): void
}

/** A linear program some of whose columns are 0 or 1, whatever bounds they carry. */
export interface MixedProgram extends LinearProgram {
  readonly binaries: readonly number[]
}

/**
 * A point with its binaries at 0 or 1 and every row kept; "best" when the solver's search came to its
 * end, "found" when it ran out of time. Neither is a proof: a mixed program has no duals.
 */
export type MixedOutcome =
  | {
      readonly kind: 'best' | 'found'
      readonly objective: number
      readonly columns: readonly number[]
    }
  | { readonly kind: 'stopped'; readonly why: string }
