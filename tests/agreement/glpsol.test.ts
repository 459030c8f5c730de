import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { PlanRun } from '../../src/engine/plan/planRun'
import { modelOf } from '../../src/cli/model'
import { readTrain } from '../../src/document/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomTrain } from '../second/randomTrain'
import { planned } from './firstAnswer'

const long = process.env.HOLDFAST_LONG === '1'
const models = long ? 200 : 8
const program = '/usr/bin/glpsol'
const installed = spawnSync(program, ['--version']).status === 0

const close = 1e-7 // relative
const small = 1e-6 // fine units of the document

type Found = number | 'none' | 'unclear'

/**
 * What glpsol finds for a program in CPLEX LP or free MPS: its optimum, that there is none, or that it
 * came to no end. The exact simplex computes in fractions: slower, but nothing is lost where tangents
 * nearly coincide, which the usual one may stall on.
 */
function asked(text: string, format: 'lp' | 'mps', folder: string, exact: boolean): Found {
  const model = join(folder, 'model')
  const solution = join(folder, 'solution')
  writeFileSync(model, text)
  const flags = [format === 'lp' ? '--lp' : '--freemps', model, '-w', solution]
  const how = exact ? ['--exact', '--tmlim', '100'] : ['--nopresol', '--tmlim', '2']
  const run = spawnSync(program, [...flags, ...how], { stdio: 'ignore' })
  if (run.status !== 0) throw new Error(`glpsol could not read the model: status ${run.status}`)
  // "s bas ROWS COLUMNS PRIMAL DUAL OBJECTIVE": f f is an optimum, n that there is no solution
  const line = /^s bas \d+ \d+ (\w) (\w) (\S+)$/m.exec(readFileSync(solution, 'utf8'))
  if (line?.[1] === 'f' && line[2] === 'f') return Number(line[3])
  return line?.[1] === 'n' ? 'none' : 'unclear'
}

function agrees(found: Found, bound: number | undefined): boolean {
  if (typeof found !== 'number' || bound === undefined)
    return found === 'none' && bound === undefined
  return Math.abs(found - bound) <= close * bound + small
}

test.skipIf(!installed)(
  `glpsol finds the same optimum in ${models} exported models${installed ? '' : ' (skipped: glpsol is not installed)'}`,
  async () => {
    const solver = await glpkSolver()
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-'))
    const counts = { planned: 0, impossible: 0, exact: 0 }
    const wrong: string[] = []
    try {
      for (let seed = 30_001; counts.planned + counts.impossible < models; seed++) {
        const train = randomTrain(seed)
        const answer = planned(train, solver)
        if (answer.status !== 'planned' && answer.status !== 'impossible') continue
        counts[answer.status] += 1
        const read = readTrain(train)
        if (!read.ok) throw new Error('refused')
        const format = seed % 2 === 0 ? 'lp' : 'mps'
        const model = modelOf(new PlanRun(read.train, solver), format)
        if (model.status === 'stopped') {
          wrong.push(`seed ${seed}: no model: ${model.why}`)
          continue
        }
        const bound = answer.proof?.bound
        let found = asked(model.text, format, folder, false)
        if (!agrees(found, bound)) {
          counts.exact += 1
          found = asked(model.text, format, folder, true)
        }
        if (!agrees(found, bound))
          wrong.push(`seed ${seed} (${format}): glpsol ${found}, proof.bound ${bound ?? 'none'}`)
      }
    } finally {
      rmSync(folder, { recursive: true })
    }
    console.log(`models asked of glpsol: ${JSON.stringify(counts)}`)
    expect(wrong).toEqual([])
    expect(counts.planned).toBeGreaterThan(models / 3)
    expect(counts.impossible).toBeGreaterThan(models / 10)
  },
  600_000,
)
