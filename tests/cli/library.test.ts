import { execFileSync } from 'node:child_process'
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, expectTypeOf, test } from 'vitest'
import { PlanningRun, readTrain } from '../../src/library'
import { glpkSolver } from '../../src/library/solver'
import { isWhole } from '../counts'
import { page } from './pages'
import { freshFolder } from './shell'
import { example } from './trains'

const command = (words: readonly string[], cwd: string): string =>
  execFileSync(words[0] ?? '', words.slice(1), { cwd, encoding: 'utf8' })
const node = process.execPath

/** A folder with nothing in it but the package, what it needs, and the lines of the page. */
const folder = freshFolder()
const lines = /<!-- runs -->\n```ts\n([\s\S]+?)```/.exec(page('shared/docs/library.md'))?.[1] ?? ''

describe.runIf(isWhole)('the package, in an empty folder', () => {
  beforeAll(() => {
    command([node, 'src/library/build.mjs'], '.')
    command([node, 'src/cli/build.mjs'], '.')
    const [packed] = JSON.parse(
      command(['npm', 'pack', '--ignore-scripts', '--json', '--pack-destination', folder], '.'),
    ) as { filename: string }[]
    const modules = join(folder, 'node_modules')
    mkdirSync(join(modules, '@types'), { recursive: true })
    command(['tar', 'xzf', packed?.filename ?? '', '-C', modules], folder)
    command(['mv', 'package', 'holdfast'], modules)
    for (const name of ['glpk.js', 'zod', '@types/node', 'undici-types'])
      symlinkSync(resolve('node_modules', name), join(modules, name))
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
    writeFileSync(join(folder, 'question.ts'), lines)
    // where types were lost, and all is "any", this does not compile
    writeFileSync(
      join(folder, 'wrong.ts'),
      "import { readTrain } from 'holdfast'\n// @ts-expect-error no number\nexport const n: number = readTrain({}).ok\n",
    )
  }, 60_000)

  test('types compile strictly, by the way that Node resolves, and the lines of the page answer', async () => {
    const strict = ['--strict', '--module', 'nodenext', '--target', 'es2022', '--types', 'node']
    const tsc = resolve('node_modules/typescript/bin/tsc')
    expect(
      command([node, tsc, ...strict, '--skipLibCheck', 'question.ts', 'wrong.ts'], folder),
    ).toBe('')
    const file = resolve('examples/base-bound-motor.json')
    const told = command([node, 'question.js', file], folder).trim().split('\n')
    expect(told).toHaveLength(4)
    // as the page tells
    expect(told[0]).toBe('Spare motor held: planned, 5.56 mm of moves')
    expect(told[3]).toBe('Feed pump held: planned, 4.86 mm of moves')
    // the same by the sources, with growth made larger another way
    const solver = await glpkSolver()
    const by = (held: number) =>
      example('base-bound-motor', (document) => {
        document.machines.forEach((machine, i) => {
          machine.held = i === held
          machine.growth = JSON.parse(JSON.stringify(machine.growth), (key, value: unknown) =>
            (key === 'rise' || key === 'side') && typeof value === 'number' ? value * 1.3 : value,
          ) as NonNullable<typeof machine.growth>
        })
      })
    told.forEach((line, i) => {
      const read = readTrain(by(i))
      if (!read.ok) throw new Error(JSON.stringify(read.refused))
      const plan = new PlanningRun(read, solver).plan()
      expect(line).toContain(`${read.document.machines[i]?.name ?? ''} held: ${plan.status}`)
      if (plan.status === 'planned') expect(line).toContain(` ${(plan.cost / 1000).toFixed(2)} mm`)
    })
    expect(new Set(told.map((line) => / held: ([a-z-]+)/.exec(line)?.[1])).size).toBeGreaterThan(1)
  }, 60_000)

  test('the command line goes with it', () => {
    const launcher = 'node_modules/holdfast/src/cli/holdfast.mjs'
    const train = resolve('examples/pump-and-motor.json')
    expect(command([node, launcher, 'check', train, '--json'], folder)).toContain('"asFound"')
  })
})

test('what is public is what is kept here', () => {
  const texts = ['index', 'solver'].map((name) => readFileSync(`src/library/${name}.ts`, 'utf8'))
  // no other way to export
  for (const text of texts) expect(text.match(/^export (?!(type )?\{ .+ \} from )/gm)).toBeNull()
  const names = texts.map((text) =>
    [...text.matchAll(/^export (type )?\{ (.+) \}/gm)]
      .flatMap(([, type = '', list = '']) => list.split(', ').map((one) => type + one))
      .sort(),
  )
  expect(names).toEqual([
    [
      ...['PlanningRun', 'readTrain', 'readTrainText', 'type PlanAnswer', 'type ReadResult'],
      ...['type ReadTrain', 'type Refusal', 'type Solver', 'type TrainDocument', 'type Wanted'],
    ],
    ['glpkSolver'],
  ])
  for (const name of [
    'document',
    'train',
    'plan',
    'rounding',
    'ready',
    'steps',
    'reasons',
  ] as const)
    expectTypeOf<PlanningRun>().toHaveProperty(name)
})
