import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { numbersTable } from '../../src/dev/numbersTable'
import { withoutWords } from '../../src/dev/valuesOnly'
import { tol } from '../../src/mechanics/tolerances'
import { files, madePart, page } from './pages'

const table = 'src/mechanics/tolerances.ts'
const sources = files
  .filter((file) => /^src\/.*\.(ts|vue)$/.test(file) && file !== table)
  .map((file) => ({ file, text: readFileSync(file, 'utf8') }))

/** Units and sizes: what a number is written in, not what it decides. */
const units = [
  ...['src/document/typed/typedUnits.ts', 'src/document/unitSign.ts'],
  ...[
    'src/document/quantities.ts',
    'src/document/heat.ts',
    'src/document/edits/growthEdits.ts',
    'src/dev/trainSchema.ts',
  ],
]

test('the page about numbers that decide is the one that the table gives', () => {
  const current = madePart(page('shared/docs/numbers.md'), 'numbers') === numbersTable()
  expect(current, 'run "npm run numbers" after changing the table').toBe(true)
})

test('the built app has every value of the table, and none of its words', () => {
  const [, built = ''] = withoutWords(readFileSync(table, 'utf8')).split('toleranceTable = {')
  const values = [...built.matchAll(/(\w+): \{ value: ([^,}]+?) \}/g)]
  expect(
    Object.fromEntries(values.map(([, name, value]) => [name, Number(value?.replaceAll('_', ''))])),
  ).toEqual(tol)
  expect(built.replace(/\/\/.*|\/\*[\s\S]*?\*\//g, '')).not.toContain("'")
})

test('every number of the table is used', () => {
  const used = new Set(
    sources.flatMap(({ text }) => [...text.matchAll(/\btol\.(\w+)/g)].map(([, name]) => name)),
  )
  expect(Object.keys(tol).filter((name) => !used.has(name))).toEqual([])
})

test('no file has a small number, or the share without room, of its own', () => {
  const own = sources
    .filter(({ file }) => !units.includes(file))
    .flatMap(({ file, text }) =>
      text
        .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
        .split('\n')
        .filter((line) => /(?<![\w#])\d+(\.\d+)?e-\d|(?<![\d.])0\.85\b/.test(line))
        .map((line) => `${file}: ${line.trim()}`),
    )
  expect(own, `give it a name in ${table}`).toEqual([
    // where numbers turn to exponents, a rule of the language and not ours
    expect.stringContaining('text/bindingWords.ts: return short !== 0'),
  ])
})
