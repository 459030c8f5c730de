import type { LinearProgram, Outcome, Optimal, Solver, WarmStart } from '../../src/engine/lp/solver'

/** Which question of the planner a program asks, told from its objective and its columns. */
export type Asked = 'floor' | 'cost' | 'margin'

export interface Call {
  readonly program: LinearProgram
  readonly asked: Asked
  /** Calls so far, this one included, and those that asked the same. */
  readonly number: number
  readonly alike: number
  readonly warm: WarmStart | undefined
}

/**
 * A solver for tests that answers as it is told. A script sees each program and may ask a true
 * solver; the calls it was given stand in `calls`.
 */
export class ScriptedSolver implements Solver {
  readonly name = 'scripted'
  readonly calls: Call[] = []
  private readonly script: (call: Call) => Outcome

  constructor(script: (call: Call) => Outcome) {
    this.script = script
  }

  solve(program: LinearProgram, _seconds: number, warm?: WarmStart): Outcome {
    const asked = askedBy(program)
    const alike = this.calls.filter((call) => call.asked === asked).length + 1
    const call = { program, asked, number: this.calls.length + 1, alike, warm }
    this.calls.push(call)
    return this.script(call)
  }
}

/** A true solver whose optimal answers are changed on their way back. */
export function tampering(
  inner: Solver,
  change: (answer: Optimal, call: Call) => Outcome,
): ScriptedSolver {
  return new ScriptedSolver((call) => {
    const outcome = inner.solve(call.program, 20, call.warm)
    return outcome.kind === 'optimal' ? change(outcome, call) : outcome
  })
}

/** The share is column 0: the floor weighs nothing else and has no columns for moves. */
function askedBy({ objective, columns }: LinearProgram): Asked {
  if ((objective[0] ?? 0) === 0) return 'cost'
  return columns[0]?.upper === Infinity ? 'floor' : 'margin'
}
