// npm run bench: how long the engine takes (ms, warm: each question is asked once before it counts), with the machine and
// the versions; printed, and kept as JSON in .cache/bench. Processor time tells more than the clock where others share the
// machine, though it grows with them, too. Not a test.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const only = process.argv[2] ?? ''
const examples = ['bolt-bound-gearbox', 'five-in-a-line', 'piped-compressor']
const { module } = await runnerImport(join(root, 'tests/bench/engineTimes.ts'), {
  root,
  configFile: false,
  logLevel: 'error',
})
const documents = examples.map((name) => [
  name,
  JSON.parse(readFileSync(join(root, 'examples', `${name}.json`), 'utf8')),
])
const packages = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
const machine = {
  processor: cpus()[0]?.model ?? 'unknown',
  count: cpus().length,
  node: process.version,
  solver: packages.dependencies['glpk.js'],
  highs: packages.devDependencies.highs,
}
console.log(machine)
const rows = []
for (const { name, times, ask, asked } of await module.questions(documents)) {
  if (!name.includes(only)) continue
  await ask()
  const took = []
  const spent = []
  Object.assign(asked, { programs: 0, ms: 0 })
  for (let i = 0; i < times; i++) {
    const began = performance.now()
    const used = process.cpuUsage()
    await ask()
    took.push(performance.now() - began)
    const { user, system } = process.cpuUsage(used)
    spent.push((user + system) / 1000)
  }
  for (const list of [took, spent]) list.sort((a, b) => a - b)
  const middle = took[Math.floor(times / 2)]
  const row = {
    name,
    median: middle.toFixed(1),
    least: took[0].toFixed(1),
    most: took.at(-1).toFixed(1),
    processor: spent[Math.floor(times / 2)].toFixed(1),
    'least of it': spent[0].toFixed(1),
    programs: Math.round(asked.programs / times),
    'in the solver': (asked.ms / times).toFixed(1),
  }
  rows.push(row)
  console.log(Object.values(row).join('  '))
}
console.table(rows)
const folder = join(root, '.cache', 'bench')
mkdirSync(folder, { recursive: true })
const file = join(folder, `${new Date().toISOString().replaceAll(':', '')}.json`)
writeFileSync(file, JSON.stringify({ machine, rows }, null, 2))
