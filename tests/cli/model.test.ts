import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { hasMoves } from '../../src/engine/plan/moves'
import { mustPlan } from '../planned'
import { PlanRun } from '../../src/engine/plan/planRun'
import { modelOf } from '../../src/cli/model'
import type { TrainDocument } from '../../src/document/schema'
import { ExportNames, longestName } from '../../src/engine/lp/exportNames'
import { toFine } from '../../src/mechanics/units'
import { glpkSolver } from '../../src/solvers/glpk'
import { askGlpsol, askHighs, glpsolInstalled } from './secondOpinion'
import { freshFolder, holdfast } from './shell'
import { askTooMuch, example, exampleFile, examples, planned, reverseDial, trainOf } from './trains'
import { firstOf } from '../counts'

async function modelText(document: unknown, format: 'lp' | 'mps'): Promise<string> {
  const model = modelOf(new PlanRun(trainOf(document), await glpkSolver()), format)
  if (model.status === 'stopped') throw new Error(model.why)
  return model.text
}

describe('other solvers find the bound of the proof', () => {
  test.each(firstOf(examples, 4))('%s', async (name) => {
    const document = example(name)
    const { train, answer } = await planned(document)
    const bound = toFine(hasMoves(answer) ? answer.proof.bound : NaN, train.units)
    const lp = await modelText(document, 'lp')
    const opinions = [
      await askHighs(lp),
      ...(glpsolInstalled
        ? [askGlpsol(lp, 'lp'), askGlpsol(await modelText(document, 'mps'), 'freemps')]
        : []),
    ]
    for (const [i, { status, objective }] of opinions.entries()) {
      expect(status).toBe('optimal')
      // HiGHS was told to be strict; glpsol keeps every bound to 1e-7 of a unit.
      const part = i === 0 ? 1e-7 : 1e-6
      expect(Math.abs(objective - bound)).toBeLessThanOrEqual(part * bound + 1e-9)
    }
  })

  test('the published pair, in mil', async () => {
    const opinion = await askHighs(await modelText(reverseDial, 'lp'))
    expect(opinion.objective).toBeCloseTo(16 + 30 + 28 + 36, 1)
  })

  test('an impossible train has no solution anywhere', async () => {
    for (const name of ['piped-compressor', 'skid-as-one'] as const) {
      const document = example(name, askTooMuch)
      const lp = await modelText(document, 'lp')
      expect((await askHighs(lp)).status).toBe('infeasible')
      if (!glpsolInstalled) continue
      expect(askGlpsol(lp, 'lp').status).toBe('infeasible')
      expect(askGlpsol(await modelText(document, 'mps'), 'freemps').status).toBe('infeasible')
    }
  })
})

describe('what stands in the file', () => {
  test('displacements are in µm for a document in mm, and the optimum in mm', async () => {
    const lp = await modelText(example('five-in-a-line'), 'lp')
    expect(lp).toContain('its optimum is the least weighted move, in mm.')
    expect(lp).toContain('is a displacement in µm')
    // A pack of 3.2 mm between 0.5 and 8 mm, and each µm moved costs 0.001 mm.
    expect(lp).toMatch(/^ pack_motor_1_river_min: .* >= -2700$/m)
    expect(lp).toMatch(/^ pack_motor_1_river_max: .* <= 4800$/m)
    expect(lp).toContain('+ 0.001 add_motor_1_river')
  })

  test('names are told apart and legal, whatever the ids are', async () => {
    const document = example('pump-and-motor', (train: TrainDocument) => {
      const [motor] = train.machines
      if (!motor) return
      motor.feet.forEach((foot, i) => {
        foot.id = ['größe 1', 'groesse-1', 'grosse+1', 'grosse-1', 'end', 'e1'][i] ?? foot.id
      })
    })
    const lp = await modelText(document, 'lp')
    const names = [...lp.matchAll(/^ ([^\s:]+):/gm)].map((match) => match[1] ?? '')
    expect(new Set(names).size).toBe(names.length)
    for (const name of names) expect(name).toMatch(/^[A-DF-Za-df-z][A-Za-z0-9_.]*$/)
    const { train, answer } = await planned(document)
    const { status, objective } = await askHighs(lp)
    expect(status).toBe('optimal')
    expect(objective).toBeCloseTo(toFine(mustPlan(answer).proof.bound, train.units), 5)
  })

  test('names that fall together are numbered, and none is too long', () => {
    const names = new ExportNames()
    expect(names.take('pack a b')).toBe('pack_a_b')
    expect(names.take('pack a-b')).toBe('pack_a_b_no2')
    expect(names.take('PACK A B')).toBe('PACK_A_B_no3')
    expect(names.take('12 é')).toBe('n_12_e')
    expect(names.take('e2')).toBe('n_e2')
    const long = [names.take('x'.repeat(400)), names.take('x'.repeat(400))]
    expect(long[0]).not.toBe(long[1])
    for (const name of long) expect(name.length).toBeLessThanOrEqual(longestName)
  })
})

test('the command writes both formats and says what to expect', () => {
  const folder = freshFolder()
  const file = resolve(exampleFile('skid-as-one'))
  for (const out of ['train.lp', 'train.MPS']) {
    const ended = holdfast(['model', file, '-o', out], { folder })
    expect(ended.status).toBe(0)
    expect(ended.out).toMatch(/^Wrote train\.\w+: \d+ columns, \d+ rows\.\nIts optimum.* mil\.\n$/)
  }
  expect(readFileSync(join(folder, 'train.lp'), 'utf8')).toMatch(/^Minimize$/m)
  expect(readFileSync(join(folder, 'train.MPS'), 'utf8')).toMatch(/^ROWS$/m)
})

test('an impossible train is written too, and said to have no solution', () => {
  const folder = freshFolder()
  const ended = holdfast(['model', '-', '-o', 'none.lp', '--json'], {
    folder,
    input: JSON.stringify(example('skid-as-one', askTooMuch)),
  })
  expect(ended.status).toBe(0)
  expect(JSON.parse(ended.out)).toMatchObject({
    written: 'none.lp',
    status: 'impossible',
    bound: null,
  })
})
