// Whether memory grows with what is planned: a train planned over and over in one process, its share another each
// time, with prices and every stage once in a hundred; the heap after a full collection, in ten places on the way. Not a
// test: it prints figures, and ends with 1 where the second half grew by more than a tenth and 5 MB.
//   node --expose-gc tests/bench/soak.mjs [plans, 100000] [example, pump-and-motor]
import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

if (!globalThis.gc) throw new Error('run it with node --expose-gc')
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const [plans = '100000', example = 'pump-and-motor'] = process.argv.slice(2)
const { module } = await runnerImport(join(root, 'tests/bench/soakPlan.ts'), {
  root,
  configFile: false,
  logLevel: 'error',
})
const document = JSON.parse(readFileSync(join(root, `examples/${example}.json`), 'utf8'))
const count = Number(plans)
const places = 10
const heaps = []
for (let i = 0; i < count; i++) {
  module.planned(document, 0.5 + ((i * 7919) % 500) / 1000, i % 100 === 0)
  if ((i + 1) % Math.ceil(count / places) === 0 || i === count - 1) {
    globalThis.gc()
    const heap = process.memoryUsage().heapUsed / 2 ** 20
    heaps.push(heap)
    const whole = process.memoryUsage().rss / 2 ** 20
    console.log(`${i + 1} plans: ${heap.toFixed(1)} MB of heap, ${whole.toFixed(0)} MB in all`)
  }
}
const [half, end] = [heaps[Math.floor(heaps.length / 2)], heaps.at(-1)]
if (end > half * 1.1 + 5) {
  console.log('it grows')
  process.exitCode = 1
}
