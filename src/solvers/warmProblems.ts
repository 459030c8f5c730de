import type { LinearProgram, WarmStart } from '../engine/lp/solver'
import { DualProblem } from './dualProblem'
import type { GlpkCalls } from './glpkCalls'

/** Problems that are kept at a time: as many as questions that take turns. */
const most = 4

/** The problems that stand in the memory of one instance of GLPK, each where it was left. */
export class WarmProblems {
  private readonly calls: GlpkCalls
  private readonly kept = new Map<WarmStart, DualProblem>()

  constructor(calls: GlpkCalls) {
    this.calls = calls
  }

  /** The problem that this one follows, turned into it; undefined where there is none, or it differs too much. */
  following(warm: WarmStart, program: LinearProgram): DualProblem | undefined {
    const known = this.kept.get(warm)
    return known?.follow(program) ? known : undefined
  }

  /** A problem of its own, kept in the place of the one it follows. */
  fresh(warm: WarmStart = {}, program: LinearProgram): DualProblem {
    this.forget(warm)
    const [oldest] = this.kept.keys()
    if (oldest && this.kept.size >= most) this.forget(oldest)
    const problem = new DualProblem(this.calls, program)
    this.kept.set(warm, problem)
    return problem
  }

  private forget(warm: WarmStart): void {
    this.kept.get(warm)?.delete()
    this.kept.delete(warm)
  }
}
