// How long the chance of a plan takes, 10,000 draws (ms of processor time, the least of several tries): drawn for the first time, and of
// another plan of the same train; and what that makes a coupling and state. Not a test: it prints figures.
//   node tests/bench/chances.mjs
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const here = dirname(fileURLToPath(import.meta.url))
const { module } = await runnerImport(join(here, 'chanceTrain.ts'), {
  root: dirname(dirname(here)),
  configFile: false,
  logLevel: 'error',
})
const sizes = [
  [2, 4],
  [4, 4],
  [8, 4],
  [4, 8],
  [16, 4],
]
const tries = 7
module.timed(module.chanceTrain(4, 4))
const rows = sizes.map(([couplings, states]) => {
  const train = module.chanceTrain(couplings, states)
  const times = Array.from({ length: tries }, () => module.timed(train))
  const least = (which) => Math.min(...times.map((time) => time[which]))
  const each = (ms) => (ms / (couplings * states)).toFixed(2)
  const [first, second] = [least('first'), least('second')]
  return {
    couplings,
    states,
    first: first.toFixed(1),
    second: second.toFixed(1),
    'first, each': each(first),
    'second, each': each(second),
  }
})
console.table(rows)
