// npm run counts: what the last `npm run test:whole` ran, folder by folder, with the seconds it took, and written
// into shared/docs/testing.md between its two "counts" marks. Wants a whole run: the reports of
// Vitest and Playwright that it leaves in .cache.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const page = join(root, 'shared/docs/testing.md')

const folders = new Map()
for (const { name, startTime, endTime, assertionResults } of read('vitest').testResults) {
  const folder = relative(root, name).split('/').slice(0, 2).join('/')
  const sum = folders.get(folder) ?? { files: 0, tests: 0, seconds: 0 }
  sum.files += 1
  sum.tests += assertionResults.length
  sum.seconds += Math.max(0, endTime - startTime) / 1000
  folders.set(folder, sum)
}
const rows = [...folders].sort(([a], [b]) => (a < b ? -1 : 1))
const all = { files: 0, tests: 0, seconds: 0 }
for (const [, { files, tests, seconds }] of rows) {
  all.files += files
  all.tests += tests
  all.seconds += seconds
}
const browser = read('playwright')
const table = [
  '| folder | files | tests | seconds |',
  '|---|---|---|---|',
  ...rows.map(([folder, sum]) => row(`\`${folder}/\``, sum)),
  row('Vitest in all', all),
  row('browser (Playwright)', {
    files: browser.suites.length,
    tests: browser.stats.expected + browser.stats.unexpected + browser.stats.flaky,
    seconds: browser.stats.duration / 1000,
  }),
].join('\n')
console.log(table)
const text = readFileSync(page, 'utf8')
writeFileSync(
  page,
  text.replace(
    /<!-- counts -->[\s\S]*<!-- \/counts -->/,
    `<!-- counts -->\n${table}\n<!-- /counts -->`,
  ),
)

function row(name, { files, tests, seconds }) {
  return `| ${name} | ${files} | ${tests.toLocaleString('en')} | ${Math.round(seconds)} |`
}

function read(name) {
  try {
    return JSON.parse(readFileSync(join(root, '.cache', `${name}.json`), 'utf8'))
  } catch (error) {
    console.error(`no report of ${name} (${error.message}): run npm run test:whole first`)
    process.exit(1)
  }
}
