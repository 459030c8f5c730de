// The tables of shared/docs/mutants.md, from tests/mutants/figures.json (what was run) and tests/mutants/reasons.json
// (why somebody has left a mutant alone). Run by itself it writes the page anew, as after a change of the reasons.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { readFigures } from './found.mjs'

const place = 'shared/docs/mutants.md'
const here = fileURLToPath(import.meta.url)

const percent = (part, whole) => (whole === 0 ? '' : ((100 * part) / whole).toFixed(1))
const short = (text) => (text.length > 70 ? `${text.slice(0, 67)}...` : text)
const code = (text) =>
  text === '' ? 'nothing' : `\`${short(text).replaceAll('|', '\\|').replaceAll('`', "'")}\``

const readReasons = (root) =>
  JSON.parse(readFileSync(join(root, 'tests/mutants/reasons.json'), 'utf8'))

/** The reason that was given for a mutant; undefined where nobody has looked at it. */
const reasonOf = (reasons, { was, becomes }) =>
  reasons.find((one) => one.was === was && (one.becomes === undefined || one.becomes === becomes))
    ?.why

/** Reasons for mutants that are left no more, or never were. */
export const idleReasons = (root) => {
  const figures = readFigures(root)
  return Object.entries(readReasons(root)).flatMap(([file, reasons]) =>
    reasons
      .filter((one) => !figures[file]?.left.some((left) => reasonOf([one], left) !== undefined))
      .map(({ was }) => `${file}: ${was}`),
  )
}

/** Both tables as they stand in the page. */
export function tables(root) {
  const figures = Object.entries(readFigures(root))
  const reasons = readReasons(root)
  const looked = ([file, { left }]) =>
    left.filter((one) => reasonOf(reasons[file] ?? [], one)).length
  const row = (name, mutants, left, told) =>
    `| ${name} | ${mutants} | ${mutants - left} | ${left} | ${told} | ${percent(mutants - left, mutants)} |`
  const sum = (of) => figures.reduce((all, entry) => all + of(entry), 0)
  const rows = figures.map(([file, one]) =>
    row(`\`${file}\``, one.mutants, one.left.length, looked([file, one])),
  )
  const all = [sum(([, one]) => one.mutants), sum(([, one]) => one.left.length), sum(looked)]
  const left = figures.flatMap(([file, one]) =>
    one.left.map((mutant) => {
      const why = reasonOf(reasons[file] ?? [], mutant) ?? 'not looked at yet'
      return `| \`${file}\` | ${code(mutant.was)} | ${code(mutant.becomes)} | ${why} |`
    }),
  )
  return {
    mutants: [
      '| file | mutants | noticed | left | of them with a reason | per cent noticed |',
      '|---|---|---|---|---|---|',
      ...rows,
      row(`all ${figures.length} files`, ...all),
    ].join('\n'),
    left: [
      '| file | what stands there | changed to | why it is left |',
      '|---|---|---|---|',
      ...left,
    ].join('\n'),
  }
}

export function writePage(root) {
  const path = join(root, place)
  const made = Object.entries(tables(root)).reduce(
    (text, [name, table]) =>
      text.replace(
        new RegExp(`<!-- ${name} -->[\\s\\S]*<!-- /${name} -->`),
        () => `<!-- ${name} -->\n${table}\n<!-- /${name} -->`,
      ),
    readFileSync(path, 'utf8'),
  )
  writeFileSync(path, made)
}

if (process.argv[1] === here) writePage(dirname(dirname(dirname(here))))
