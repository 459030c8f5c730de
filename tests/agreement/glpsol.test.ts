import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { modelOf } from '../../src/cli/model'
import { readTrain } from '../../src/engine/train/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomTrain } from '../second/randomTrain'
import { planned } from './firstAnswer'

const long = process.env.HOLDFAST_LONG === '1'
const models = long ? 200 : 40
const program = '/usr/bin/glpsol'
const installed = spawnSync(program, ['--version']).status === 0

const close = 1e-7 // relative
const small = 1e-6 // fine units of the document

/**
 * What glpsol finds for a program in CPLEX LP or free MPS: its optimum, or that there is none. The
 * exact simplex computes in fractions: slower, but nothing is lost where tangents nearly coincide.
 */
function asked(
  text: string,
  format: 'lp' | 'mps',
  folder: string,
  exact: boolean,
): number | 'none' {
  const model = join(folder, 'model')
  const solution = join(folder, 'solution')
  writeFileSync(model, text)
  const flags = [format === 'lp' ? '--lp' : '--freemps', model, '-w', solution, '--tmlim', '100']
  const run = spawnSync(program, exact ? [...flags, '--exact'] : flags)
  if (run.status !== 0) throw new Error(`glpsol could not read the model: ${String(run.stdout)}`)
  // "s bas ROWS COLUMNS PRIMAL DUAL OBJECTIVE": f f is an optimum
  const line = /^s bas \d+ \d+ (\w) (\w) (\S+)$/m.exec(readFileSync(solution, 'utf8'))
  if (!line) throw new Error('glpsol wrote no solution line')
  return line[1] === 'f' && line[2] === 'f' ? Number(line[3]) : 'none'
}

function agrees(found: number | 'none', bound: number | undefined): boolean {
  if (found === 'none' || bound === undefined) return found === 'none' && bound === undefined
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
        const model = modelOf(read.train, format, solver)
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
  long ? 600_000 : 120_000,
)
