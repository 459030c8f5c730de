import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Linter } from 'eslint'
import { describe, expect, it, test } from 'vitest'
import { downward } from '../../src/dev/downward.mjs'
import { importsOf } from '../../src/dev/imports.mjs'
import { folderOf, rooms, upward } from '../../src/dev/layers.mjs'
import { levels, rings } from '../../src/dev/rings.mjs'

const linted = (filename: string, code: string): string[] =>
  new Linter({ configType: 'flat' })
    .verify(
      code,
      [{ plugins: { holdfast: { rules: { downward } } }, rules: { 'holdfast/downward': 'error' } }],
      { filename },
    )
    .map(({ message }) => message)

describe('the lint rule of the layers', () => {
  it.each([
    ['src/mechanics/planted.js', "import { x } from '../language/amounts'"],
    ['src/engine/plan/planted.js', "export { x } from '../fieldwork/steps/cards'"],
    ['src/engine/lp/planted.js', "export * from './rows/hole'"],
    ['src/scene/drawings/planted.js', "import('../sheet')"],
    ['src/cli/planted.js', "import '../app/main'"],
  ])('tells an import upward from %s', (file, code) => {
    expect(linted(file, code)).toEqual([expect.stringContaining('stands above it')])
  })

  it('lets an import down, or within a folder, pass', () => {
    expect(linted('src/app/planted.js', "import { x } from '../language/amounts'")).toEqual([])
    expect(linted('src/engine/plan/planted.js', "import { x } from './solvePlan'")).toEqual([])
  })

  it('stands in the configuration of the project', () => {
    expect(readFileSync('eslint.config.js', 'utf8')).toContain("'holdfast/downward': 'error'")
  })
})

test('the lint with types knows types: a promise that nobody waits for, a member that a switch forgets', () => {
  const folder = mkdtempSync(join(tmpdir(), 'planted-'))
  const code = [
    'const wait = () => Promise.resolve(1)',
    "export function planted(side: 'left' | 'right'): number {",
    '  wait()',
    "  switch (side) { case 'left': return 1 }",
    '}',
  ]
  try {
    writeFileSync(join(folder, 'tsconfig.json'), '{ "compilerOptions": { "strict": true } }')
    writeFileSync(join(folder, 'planted.ts'), code.join('\n'))
    const rules = join(process.cwd(), '.oxlintrc.json')
    const lint = [join(process.cwd(), 'node_modules/oxlint/bin/oxlint'), '-c', rules, '.']
    const { status, stdout } = spawnSync(process.execPath, lint, { cwd: folder, encoding: 'utf8' })
    expect(status).toBe(1)
    expect(stdout).toContain('no-floating-promises')
    expect(stdout).toContain('switch-exhaustiveness-check')
  } finally {
    rmSync(folder, { recursive: true })
  }
})

describe('what the map counts', () => {
  const graph = new Map([
    ['a', new Set(['b'])],
    ['b', new Set(['c'])],
    ['c', new Set(['b', 'd'])],
    ['d', new Set<string>()],
  ])

  it('finds a ring, and no other', () => {
    expect(rings(graph)).toEqual([['b', 'c']])
    expect(rings(new Map([['a', new Set(['b'])]]))).toEqual([])
  })

  it('counts a level above the highest that is imported', () => {
    const level = levels(
      new Map([
        ['top', new Set(['low', 'middle'])],
        ['middle', new Set(['low'])],
        ['low', new Set<string>()],
      ]),
    )
    expect([level.get('low'), level.get('middle'), level.get('top')]).toEqual([1, 2, 3])
  })
})

test('every source file lies in a folder of the table, and none imports upward', () => {
  const files = importsOf(process.cwd())
  expect(files.size).toBeGreaterThan(300)
  const outside = [...files.keys()].filter((file) => folderOf(file) === undefined)
  expect(outside.filter((file) => !/^src\/(dev|env)/.test(file))).toEqual([])
  const wrong = [...files].flatMap(([from, targets]) =>
    targets.filter((to) => upward(from, to) !== undefined),
  )
  expect(wrong).toEqual([])
  expect(rooms.length).toBeGreaterThan(10)
})

test('the map finds no ring of files or folders, and at most 11 levels', () => {
  const { status, stdout } = spawnSync(process.execPath, ['src/dev/map.mjs'], { encoding: 'utf8' })
  expect(stdout).toContain('0 rings of files, 0 rings of folders')
  const [, count = ''] = /(\d+) levels of rooms/.exec(stdout) ?? []
  expect(Number(count)).toBeGreaterThan(5)
  expect(Number(count)).toBeLessThanOrEqual(11)
  expect(status).toBe(0)
})

test('both builds are made anew when any folder of the table has changed', () => {
  for (const [script, without] of [
    ['src/cli/build.mjs', ['src/app', 'src/worker']],
    ['src/dev/buildApp.mjs', ['src/cli']],
  ] as const) {
    const text = readFileSync(script, 'utf8')
    const left = [...text.matchAll(/folder !== '([^']+)'/g)].map(([, folder]) => folder)
    expect(text).toContain('...topFolders.filter(')
    expect(left).toEqual(without)
  }
})
