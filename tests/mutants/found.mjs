import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** What became of the mutants of each file, as the last run of it left them. */
const kept = (root) => join(root, 'tests/mutants/figures.json')

export const readFigures = (root) =>
  existsSync(kept(root)) ? JSON.parse(readFileSync(kept(root), 'utf8')) : {}

export function writeFigures(root, figures) {
  const sorted = Object.fromEntries(Object.entries(figures).sort(([a], [b]) => (a < b ? -1 : 1)))
  writeFileSync(kept(root), `${JSON.stringify(sorted, undefined, 2)}\n`)
}

/** Tells a file that has changed since its mutants were run. */
export const digestOf = (text) => createHash('sha256').update(text).digest('hex').slice(0, 12)

const oneLine = (text) => text.replace(/\s+/g, ' ').trim()

/** What stands between two places of a text; lines and columns count from 1. */
function between(text, { start, end }) {
  const lines = text.split('\n').slice(start.line - 1, end.line)
  const last = lines.length - 1
  lines[last] = lines[last].slice(0, end.column - 1)
  lines[0] = lines[0].slice(start.column - 1)
  return oneLine(lines.join('\n'))
}

const placeOf = ({ location, replacement }) => ({
  line: location.start.line,
  from: location.start.column,
  to: [location.end.line, location.end.column],
  becomes: oneLine(replacement ?? ''),
})

const killed = new Set(['Killed', 'Timeout'])
const counted = new Set([...killed, 'Survived', 'NoCoverage'])

/**
 * The figures of one file from the mutants of a report: how many there are, how many a test noticed, and those that
 * none did. A mutant that cannot be run at all counts as none.
 */
export function figuresOf(text, mutants) {
  const judged = mutants.filter(({ status }) => counted.has(status))
  const left = judged
    .filter(({ status }) => !killed.has(status))
    .map((mutant) => ({ ...placeOf(mutant), was: between(text, mutant.location) }))
    .sort((a, b) => a.line - b.line || a.from - b.from || (a.becomes < b.becomes ? -1 : 1))
  return { digest: digestOf(text), mutants: judged.length, left }
}

/** What a mutant is known by in two runs of the same source. */
const nameOf = ({ line, from, to, becomes }) => [line, from, ...to, becomes].join()

/** Figures after some mutants were run again: those that were noticed now are left no more. */
export function withRunAgain(before, mutants) {
  const noticed = new Set(
    mutants.filter(({ status }) => killed.has(status)).map((mutant) => nameOf(placeOf(mutant))),
  )
  return { ...before, left: before.left.filter((one) => !noticed.has(nameOf(one))) }
}
