import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import highsLoader from 'highs'

/** What another solver says of an exported program. */
export interface Opinion {
  /** "optimal", "infeasible", or whatever else the solver calls it. */
  status: string
  objective: number
}

/** Asks HiGHS, which reads CPLEX LP text. */
export async function askHighs(lp: string): Promise<Opinion> {
  const highs = await highsLoader()
  const answer = highs.solve(lp, {
    primal_feasibility_tolerance: 1e-10,
    dual_feasibility_tolerance: 1e-10,
  })
  return { status: answer.Status.toLowerCase(), objective: answer.ObjectiveValue }
}

export const glpsolInstalled = spawnSync('glpsol', ['--version']).status === 0

/**
 * Asks the GLPK command, which reads both formats.
 * @param exact by its simplex in fractions: slower, and nothing is lost where tangents nearly coincide [false]
 */
export function askGlpsol(text: string, format: 'lp' | 'freemps', exact = false): Opinion {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-model-'))
  try {
    const model = join(folder, 'model')
    const out = join(folder, 'solution')
    writeFileSync(model, text)
    const how = exact ? ['--exact', '--tmlim', '100'] : ['--nopresol']
    execFileSync('glpsol', [`--${format}`, model, ...how, '-w', out], { stdio: 'ignore' })
    const line =
      readFileSync(out, 'utf8')
        .split('\n')
        .find((l) => l.startsWith('s bas')) ?? ''
    const [, , , , primal, dual, objective] = line.split(/\s+/)
    const optimal = primal === 'f' && dual === 'f'
    return {
      status: optimal ? 'optimal' : primal === 'n' ? 'infeasible' : `${primal} ${dual}`,
      objective: Number(objective),
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
