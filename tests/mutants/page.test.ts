import { existsSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { madePart } from '../cli/pages'
import { judges } from './judges.mjs'
import { idleReasons, tables } from './page.mjs'

const text = readFileSync('shared/docs/mutants.md', 'utf8')

test('the page of mutants tells what was run last', () => {
  const made = tables(process.cwd())
  for (const name of ['mutants', 'left'] as const)
    expect(madePart(text, name)?.trimEnd(), name).toBe(made[name])
})

test('every reason is one of a mutant that is left', () => {
  expect(idleReasons(process.cwd())).toEqual([])
})

test('the tests that judge are there, and so is what they judge', () => {
  for (const [place, tests] of judges) {
    expect(existsSync(place), place).toBe(true)
    for (const name of tests) expect(existsSync(`tests/${name}.test.ts`), name).toBe(true)
  }
})
