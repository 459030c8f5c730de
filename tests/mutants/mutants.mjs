// npm run mutants [-- --left] [files or folders]: changes the sources a line at a time and asks whether a test
// notices, with the tests that tests/mutants/judges.mjs names for each place. --left runs again only what was left
// last time. Figures go to tests/mutants/figures.json and from there into shared/docs/mutants.md. Not part of npm test:
// it takes about a second a mutant.
import { readFileSync, readdirSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Stryker } from '@stryker-mutator/core'
import { digestOf, figuresOf, readFigures, withRunAgain, writeFigures } from './found.mjs'
import { judges, judgesOf } from './judges.mjs'
import { writePage } from './page.mjs'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
process.chdir(root)
const words = process.argv.slice(2)
const onlyLeft = words.includes('--left')
const places = words.filter((word) => word !== '--left')

const filesOf = (place) =>
  statSync(place).isDirectory()
    ? readdirSync(place, { recursive: true })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => join(place, name))
        .sort()
    : [place]

/** The files asked for by the tests that judge them, so that these are made ready once. */
const groups = new Map()
for (const file of new Set(
  (places.length > 0 ? places : judges.map(([at]) => at)).flatMap(filesOf),
)) {
  const tests = judgesOf(file)?.[1].join(' ')
  if (!tests) throw new Error(`no tests are named for ${file} in tests/mutants/judges.mjs`)
  groups.set(tests, [...(groups.get(tests) ?? []), file])
}

/** What of a file is to be changed: all of it, or the places of what was left; nothing where nothing was. */
function wanted(file) {
  if (!onlyLeft) return [file]
  const was = readFigures(root)[file]
  if (was?.digest !== digestOf(readFileSync(file, 'utf8')))
    throw new Error(`${file} has changed since its mutants were run: run it without --left`)
  return was.left.map(
    ({ line, from, to: [end, column] }) => `${file}:${line}:${from - 1}-${end}:${column - 1}`,
  )
}

for (const [tests, files] of groups) {
  const mutate = files.flatMap(wanted)
  if (mutate.length === 0) continue
  console.log(`${files.length} files, judged by ${tests}`)
  const results = await new Stryker({
    configFile: 'tests/mutants/stryker.config.mjs',
    mutate,
    buildCommand: `node tests/mutants/bundle.mjs ${tests}`,
  }).runMutationTest()
  const figures = readFigures(root)
  for (const file of files) {
    const text = readFileSync(file, 'utf8')
    const own = results.filter(({ fileName }) => fileName === join(root, file))
    if (own.length === 0) continue
    figures[file] = onlyLeft ? withRunAgain(figures[file], own) : figuresOf(text, own)
    const { mutants, left } = figures[file]
    console.log(`${file}: ${mutants - left.length} of ${mutants} noticed`)
    for (const { line, was, becomes } of left) console.log(`  ${line}: ${was}  ->  ${becomes}`)
  }
  writeFigures(root, figures)
  writePage(root)
}
