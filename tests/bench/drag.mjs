// How fast the sheet follows the point of the trade-off: from the input event to the frame that
// shows a plan at least as new (ms: half of them, 95 % of them, the longest; the longest task), and the
// CPU time of the page's main thread a frame, which depends less on what else the machine does. Not a
// test: it prints figures.
//   npm run build && node tests/bench/drag.mjs [folder of the built app] [example ...]
import { readdirSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { findBrowser } from '../../src/dev/browser.mjs'
import { fileServer } from '../../src/dev/serve.mjs'

const [folder = 'dist', ...wanted] = process.argv.slice(2)
const examples = readdirSync(new URL('../../examples/', import.meta.url))
  .filter((file) => file.endsWith('.json'))
  .filter((file) => wanted.length === 0 || wanted.some((name) => file.includes(name)))
/** Pointer moves, one a frame, to and fro along the whole slider: a quick hand. */
const moves = 120
const thumb = 44

const server = fileServer(folder)
await new Promise((go) => server.listen(0, '127.0.0.1', go))
const { port } = server.address()
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
})
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
await page.goto(`http://127.0.0.1:${port}/`)
await page.locator('.band-couplings').waitFor()

/** Notes each input of the slider, and which share each painted frame shows. */
function listen() {
  const log = { inputs: [], frames: [], long: 0 }
  window.dragLog = log
  document
    .querySelector('.curve-point')
    .addEventListener(
      'input',
      ({ timeStamp, target }) => log.inputs.push({ at: timeStamp, share: Number(target.value) }),
      { capture: true },
    )
  const ledger = document.querySelector('.ledger')
  const port = new MessageChannel()
  let waiting = false
  port.port1.onmessage = () => {
    waiting = false
    const shown = Math.round(Number(ledger.dataset.share) * 100)
    log.frames.push({ at: performance.now(), share: shown })
  }
  new MutationObserver(() => {
    if (waiting) return
    waiting = true
    requestAnimationFrame(() => port.port2.postMessage(0))
  }).observe(ledger, { attributes: true, attributeFilter: ['data-share'] })
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) log.long = Math.max(log.long, duration)
  }).observe({ type: 'longtask' })
}

const quantile = (sorted, part) =>
  sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]
/** CPU time (ms) that the page's main thread was at work, however long it had to wait for a core. */
function mainThread(events) {
  const [main] = events.filter(
    ({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain',
  )
  return events
    .filter(
      ({ name, pid, tid }) => name.endsWith('RunTask') && pid === main.pid && tid === main.tid,
    )
    .reduce((sum, { tdur = 0 }) => sum + tdur / 1000, 0)
}

const rows = []
for (const file of examples) {
  await page.getByLabel('Example').selectOption(file)
  await page.locator('.curve canvas').waitFor()
  await page.waitForFunction(() =>
    /^\s*all /.test(document.querySelector('.progress')?.textContent ?? ''),
  )
  // plans are made ahead once the train has stood
  await page.waitForTimeout(2500)
  const slider = page.locator('.curve-point')
  await slider.scrollIntoViewIfNeeded()
  await page.evaluate(listen)
  const box = await slider.boundingBox()
  const [least, most] = await slider.evaluate(({ min, max }) => [Number(min), Number(max)])
  const at = (percent) =>
    box.x + thumb / 2 + ((percent - least) / (most - least)) * (box.width - thumb)
  const middle = box.y + box.height / 2
  const now = Number(await slider.inputValue())
  await page.mouse.move(at(now), middle)
  await page.mouse.down()
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', '__metadata'] })
  for (let i = 0; i < moves; i++) {
    const wave = Math.sin((i / moves) * 4 * Math.PI)
    const share = wave < 0 ? now + wave * (now - least) * 0.6 : now + wave * (most - now)
    await page.mouse.move(at(share), middle)
    await page.waitForTimeout(8)
  }
  await page.waitForTimeout(400)
  await page.mouse.up()
  const busy = mainThread(JSON.parse((await browser.stopTracing()).toString()).traceEvents)
  const { inputs, frames, long } = await page.evaluate(() => window.dragLog)
  // an input is followed by the first frame that shows it or, where it was overtaken, a later one
  const waits = inputs
    .flatMap((input, i) => {
      const later = new Set(inputs.slice(i).map(({ share }) => share))
      const frame = frames.find(({ at: t, share }) => t >= input.at && later.has(share))
      return frame ? [frame.at - input.at] : []
    })
    .sort((a, b) => a - b)
  rows.push({
    example: file.replace('.json', ''),
    inputs: inputs.length,
    frames: frames.length,
    missed: inputs.length - waits.length,
    p50: Math.round(quantile(waits, 0.5)),
    p95: Math.round(quantile(waits, 0.95)),
    most: Math.round(waits.at(-1)),
    longest: Math.round(long),
    cpu: (busy / frames.length).toFixed(1),
  })
}
console.table(rows)
await browser.close()
server.close()
