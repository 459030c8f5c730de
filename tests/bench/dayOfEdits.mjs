// Whether a page grows in a day of work: edits of many kinds, made through the page's own store as its cells make
// them, each drawn before the next and every tenth planned before it; kept on the shelf and put among what can be taken
// back as ever. Prints the page's heap after a full collection in ten places on the way, its nodes, and what the
// process of the page with its workers has of the machine. Not a test: it prints figures, and ends with 1 where the
// heap passes 300 MB, the page tells an error or less than a tenth of the edits was planned.
//   npm run build && node tests/bench/dayOfEdits.mjs [edits, 20000] [example, pump-and-motor] [folder of the built app]
import { readFileSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { findBrowser } from '../../src/dev/browser.mjs'
import { fileServer } from '../../src/dev/serve.mjs'

const [edits = '20000', example = 'pump-and-motor', folder = 'dist'] = process.argv.slice(2)
const count = Number(edits)
const allowed = 300

const server = fileServer(folder)
await new Promise((go) => server.listen(0, '127.0.0.1', go))
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
})
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
const errors = []
page.on('pageerror', (error) => errors.push(error.message))
await page.goto(`http://127.0.0.1:${server.address().port}/`)
await page.locator('.band-couplings').waitFor({ timeout: 300_000 })
await page.getByLabel('Example').selectOption(`${example}.json`)
const session = await page.context().newCDPSession(page)
const whole = await browser.newBrowserCDPSession()

/** Makes some edits one after the other, with the number of the first; every one drawn before the next. */
async function work({ from, many }) {
  const { $pinia } = document.querySelector('#app').__vue_app__.config.globalProperties
  const job = $pinia._s.get('job')
  const leaves = (node, at = []) =>
    typeof node === 'number'
      ? [at]
      : typeof node === 'object' && node !== null
        ? Object.entries(node).flatMap(([key, value]) =>
            leaves(value, [...at, Array.isArray(node) ? Number(key) : key]),
          )
        : []
  const at = (node, path) => path.reduce((part, key) => part?.[key], node)
  let planned = 0
  for (let i = from; i < from + many; i++) {
    const now = job.document
    // readings, packs, tolerances, places: what a day changes; never which version of the file it is
    const places = leaves(now).filter(([top]) => top === 'machines' || top === 'couplings')
    const path = places[(i * 7919) % places.length]
    const value = at(now, path)
    const kind = i % 20
    if (kind === 17) job.undo()
    else if (kind === 18) job.redo()
    else if (kind === 7) job.setShare((50 + (i % 50)) / 100)
    else if (kind === 11) job.set(['note'], `noted ${i}`, 'changed the note')
    else if (kind === 13) job.set(['name'], `job ${i % 997}`, 'named the job')
    else if (kind === 19) {
      const body = now.machines.find(({ anchored }) => anchored === undefined)
      job.hold(body.id, !job.held.has(body.id))
    } else
      // a little to and fro, so that the train stays one
      job.set(path, Number((value + (i % 2 ? 0.01 : -0.01)).toFixed(4)), `changed ${path.join()}`)
    await new Promise((go) => requestAnimationFrame(() => setTimeout(go, 0)))
    // people type faster than trains are planned, and stop to read: every tenth edit waits for its plan
    const until = Date.now() + (i % 10 === 9 ? 5000 : 0)
    const done = () => job.planned === job.document || job.faults.length > 0
    while (!done() && Date.now() < until) await new Promise((go) => setTimeout(go, 5))
    if (job.planned === job.document) planned++
    if (job.faults.length > 0) job.undo()
  }
  return planned
}

/** MB of the whole page's process: its heap, its workers', its pictures. */
async function inAll() {
  const { processInfo } = await whole.send('SystemInfo.getProcessInfo')
  const sizes = processInfo
    .filter(({ type }) => type === 'renderer')
    .map(({ id }) => /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1])
  return Math.max(...sizes.map(Number)) / 1024
}

async function figures() {
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  const { nodes } = await session.send('Memory.getDOMCounters')
  return { heap: usedSize / 2 ** 20, nodes, all: await inAll() }
}

const places = 10
let most = 0
let made = 0
let planned = 0
const tell = async () => {
  const { heap, nodes, all } = await figures()
  most = Math.max(most, heap)
  console.log(
    `${made} edits: ${heap.toFixed(1)} MB of heap, ${nodes} nodes, ${all.toFixed(0)} MB in all`,
  )
}
await tell()
while (made < count) {
  const many = Math.min(Math.ceil(count / places), 200, count - made)
  planned += await page.evaluate(work, { from: made, many })
  made += many
  if (made % Math.ceil(count / places) === 0 || made === count) await tell()
}
const revision = await page.evaluate(
  () =>
    document.querySelector('#app').__vue_app__.config.globalProperties.$pinia._s.get('job')
      .revision,
)
console.log(`the sheet counts ${revision} edits, ${planned} of them planned before the next one`)
if (errors.length > 0) console.log(`errors: ${[...new Set(errors)].join('; ')}`)
await browser.close()
server.close()
if (most > allowed || errors.length > 0 || revision < count * 0.8 || planned < count * 0.09)
  process.exitCode = 1
