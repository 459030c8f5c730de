// npm run same -- REVISION [--trains N] [--only WORD]: compares every answer of the command line with
// those of another revision, byte for byte: plans, holds, checks, texts, models and paper of the
// examples, of shared/kept and of random trains. Digests of the other revision are kept in .cache.
import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { Readable } from 'node:stream'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { parseArgs } from 'node:util'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const cache = join(root, '.cache', 'same')
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { trains: { type: 'string', default: '300' }, only: { type: 'string', default: '' } },
})
const revision = execFileSync('git', ['rev-parse', '--short', positionals[0] ?? 'HEAD'], {
  cwd: root,
  encoding: 'utf8',
}).trim()

// the solver package reports trouble through console.log
const say = console.info.bind(console)
console.log = () => undefined

const entry = 'src/cli/run.ts'
const generator = await import(built(root, 'tests/same/trains.ts', join(cache, 'trains')))
const other = await import(oldBundle())
const here = await import(built(root, entry, join(cache, 'here')))
const file = join(cache, `${revision}.json`)
const known = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {}

let [same, different, fresh] = [0, 0, 0]
for (const { name, text, words } of everyQuestion()) {
  const key = `${name}: ${words.join(' ')}`
  if (!key.includes(values.only)) continue
  const question = digest(text)
  const then = known[key]?.question === question ? known[key] : { question, answer: undefined }
  if (then.answer === undefined) {
    then.answer = digest(await answerOf(other, text, words))
    known[key] = then
    if (++fresh % 50 === 0) writeFileSync(file, JSON.stringify(known))
  }
  const now = await answerOf(here, text, words)
  if (digest(now) === then.answer) {
    same++
    continue
  }
  different++
  say(`differs: ${key}\n${firstDifference(await answerOf(other, text, words), now)}`)
}
writeFileSync(file, JSON.stringify(known))
say(`${same} answers equal those of ${revision} byte for byte, ${different} differ`)
process.exitCode = different === 0 ? 0 : 1

/** Every train with every question that it is asked. */
function* everyQuestion() {
  for (const folder of ['examples', 'shared/kept'])
    if (existsSync(join(root, folder)))
      for (const entry of readdirSync(join(root, folder)).sort())
        if (entry.endsWith('.json'))
          yield* questions(entry, readFileSync(join(root, folder, entry), 'utf8'), true)
  for (const train of generator.trains(Number(values.trains)))
    yield* questions(train.name, JSON.stringify(train), false)
}

/** Lists of choices double with every body, so long random trains are asked for few of them. */
function* questions(name, text, all) {
  const { machines, skids = [] } = JSON.parse(text)
  const bodies = machines.length + skids.length
  const commands = [
    ['check', '--json'],
    ['check'],
    ['plan', '--json'],
    ['plan'],
    ['model', '-o', 'lp'],
    ['model', '-o', 'mps'],
    ['sheet', '-o', 'html'],
    ...(bodies <= 5 || all ? [['holds']] : []),
    ...(bodies <= 3 || all ? [['holds', '--json']] : []),
  ]
  for (const words of commands) yield { name, text, words }
}

/** What one command prints, complains and writes, and its exit status. */
async function answerOf({ run }, text, [command, ...options]) {
  const folder = mkdtempSync(join(tmpdir(), 'same-'))
  try {
    const out = options[1] && join(folder, `out.${options[1]}`)
    const words = out
      ? [command, '-', '-o', basename(out), ...(command === 'sheet' ? ['--date', 'one day'] : [])]
      : [command, '-', ...options]
    const told = []
    const status = await run(words, {
      folder,
      input: Readable.from([text]),
      print: (line) => told.push(line),
      complain: (line) => told.push(line),
    })
    const written = out && existsSync(out) ? readFileSync(out, 'utf8') : ''
    return `${status}\n${told.join('')}\n${written}`
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function digest(text) {
  return createHash('sha256').update(text).digest('hex').slice(0, 24)
}

function firstDifference(then, now) {
  const [a, b] = [then.split('\n'), now.split('\n')]
  const at = a.findIndex((line, i) => line !== b[i])
  const shown = (lines) => (lines[at] ?? '(nothing)').slice(0, 400)
  return `  line ${at + 1} was ${shown(a)}\n  line ${at + 1} is  ${shown(b)}`
}

/** The other revision's command line, built once from a checkout of its own. */
function oldBundle() {
  const folder = join(cache, revision)
  const bundle = join(folder, 'bundle', 'run.js')
  if (existsSync(bundle)) return pathToFileURL(bundle).href
  const tree = join(folder, 'tree')
  mkdirSync(tree, { recursive: true })
  const archive = execFileSync('git', ['archive', revision], { cwd: root, maxBuffer: 1 << 30 })
  spawnSync('tar', ['-x', '-C', tree], { input: archive })
  if (!existsSync(join(tree, 'node_modules')))
    symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'))
  const made = built(tree, entry, join(folder, 'bundle'))
  rmSync(tree, { recursive: true, force: true })
  return made
}

function built(tree, source, out) {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js')
  const words = ['build', '--config', 'vite.cli.config.ts', '--ssr', source, '--outDir', out]
  const made = spawnSync(
    process.execPath,
    [vite, ...words, '--logLevel', 'error', '--emptyOutDir'],
    {
      cwd: tree,
      env: {
        ...process.env,
        HOLDFAST_CLI_OUT: out,
        HOLDFAST_CLI_ENTRY: source,
        NODE_ENV: 'production',
      },
      encoding: 'utf8',
    },
  )
  if (made.status !== 0)
    throw new Error(`${source} could not be built\n${made.stdout}${made.stderr}`)
  const name = readdirSync(out).find((entry) => /\.m?js$/.test(entry))
  if (name === undefined) throw new Error(`no bundle of ${source} in ${out}`)
  return pathToFileURL(join(out, name)).href
}
