import type { LinearProgram, Solver } from './solver'

const unable = { kind: 'stopped', why: 'the solver has no binaries' } as const

/** Thrown through whatever asks a solver whose budget is used up; caught by that budget alone. */
class OutOfWork extends Error {}

/**
 * A budget of work for one question: rows times columns of every program that a solver is asked, or is spared, so that the same
 * question ends at the same place on every machine. Nothing can be read from what did not come to its end: where the
 * budget runs out in the middle of a piece, that piece has no answer at all.
 */
export class Budget {
  /** The solver to ask within this budget. */
  readonly solver: Solver
  private readonly asked: Solver
  private readonly first: number
  private most: number
  private spent = 0

  constructor(solver: Solver, most: number) {
    this.asked = solver
    this.most = this.first = most
    this.solver = {
      name: solver.name,
      solve: (program, seconds, warm) => {
        this.spend(program)
        return solver.solve(program, seconds, warm)
      },
      spared: (program) => {
        this.spend(program)
      },
      ...(solver.solveMixed && {
        solveMixed: (program, seconds) => {
          this.spend(program)
          return solver.solveMixed?.(program, seconds) ?? unable
        },
      }),
    }
  }

  /** Work done so far. */
  get work(): number {
    return this.spent
  }

  /** Allows that much from here on, whatever was left. */
  allow(more: number): void {
    this.most = this.spent + more
  }

  /** Another budget as large as this one was at first. */
  anew(): Budget {
    return new Budget(this.asked, this.first)
  }

  /** @returns what a piece of work comes to; undefined where the budget ran out before its end */
  attempt<Answer extends object>(piece: (solver: Solver) => Answer): Answer | undefined {
    try {
      return piece(this.solver)
    } catch (error) {
      if (error instanceof OutOfWork && error.cause === this) return undefined
      throw error
    }
  }

  /**
   * The same of what comes bit by bit: what came before the budget ran out.
   * @returns whether it came to its end
   */
  *pieces<Piece>(all: Generator<Piece, unknown>): Generator<Piece, boolean> {
    for (;;) {
      const step = this.attempt(() => all.next())
      if (!step) return false
      if (step.done) return true
      yield step.value
    }
  }

  private spend({ rows, columns }: LinearProgram): void {
    if (this.spent >= this.most) throw new OutOfWork('the budget of work ran out', { cause: this })
    this.spent += Math.max(1, rows.length) * Math.max(1, columns.length)
  }
}
