// How long the sheet takes until it can be used, and until a number that was typed is planned (ms: half of them, 95 % of
// them, the longest). Opened with an empty cache each time: from the request of the page to the frame that shows every foot
// with its amount. Typed: from the key that ends an entry to the frame with another foot table. Not a test: it prints figures.
//   npm run build && node tests/bench/feel.mjs [folder of the built app] [times, 12] [entries, 60]
import { chromium } from '@playwright/test'
import { findBrowser } from '../../src/dev/browser.mjs'
import { fileServer } from '../../src/dev/serve.mjs'

const [folder = 'dist', times = '12', entries = '60'] = process.argv.slice(2)
/** Four machines in four states. */
const example = 'bolt-bound-gearbox.json'
const viewport = { width: 1440, height: 900 }

const server = fileServer(folder)
await new Promise((go) => server.listen(0, '127.0.0.1', go))
const address = `http://127.0.0.1:${server.address().port}/`
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
})

const quantile = (values, part) => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))]
}
const row = (what, values) => ({
  what,
  count: values.length,
  p50: Math.round(quantile(values, 0.5)),
  p95: Math.round(quantile(values, 0.95)),
  most: Math.round(Math.max(...values)),
})

/** Notes when each frame with another foot table was painted, and tasks of 50 ms and more. */
function listen() {
  const log = { frames: [], long: [], text: '' }
  window.feelLog = log
  const port = new MessageChannel()
  let waiting = false
  port.port1.onmessage = () => {
    waiting = false
    const text = document.querySelector('.foot-groups')?.textContent ?? ''
    if (text !== log.text) log.frames.push(performance.now())
    log.text = text
  }
  new MutationObserver(() => {
    if (waiting) return
    waiting = true
    requestAnimationFrame(() => port.port2.postMessage(0))
  }).observe(document, { childList: true, subtree: true, characterData: true })
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) log.long.push([startTime, duration])
  }).observe({ type: 'longtask', buffered: true })
}

const opened = []
const longAtOpening = []
for (let i = 0; i < Number(times); i++) {
  const context = await browser.newContext({ viewport })
  const page = await context.newPage()
  await page.addInitScript(listen)
  await page.goto(address)
  await page.locator('.foot-groups tbody tr').first().waitFor()
  await page.waitForTimeout(1500)
  const { frames, long } = await page.evaluate(() => window.feelLog)
  opened.push(frames[0])
  longAtOpening.push(Math.max(0, ...long.map(([, duration]) => duration)))
  await context.close()
}

const page = await (await browser.newContext({ viewport })).newPage()
await page.addInitScript(listen)
await page.goto(address)
await page.getByLabel('Example').selectOption(example)
await page.waitForFunction(
  () => /^\s*all /.test(document.querySelector('.progress')?.textContent ?? ''),
  undefined,
  { timeout: 300_000 },
)
await page.locator('.figures-button[data-enters="states"]').click()
const cell = page.getByLabel(/^rise, .*, hot summer/).first()
await cell.click()
const first = Number((await cell.inputValue()).replace('−', '-'))
const typed = []
const longTyped = []
for (let i = 0; i < Number(entries); i++) {
  await page.waitForTimeout(700)
  await page.evaluate(() => {
    Object.assign(window.feelLog, { frames: [], long: [], key: undefined })
    const once = { once: true, capture: true }
    addEventListener('keydown', ({ timeStamp }) => (window.feelLog.key = timeStamp), once)
  })
  await cell.click()
  await cell.fill(String(first + ((i % 5) - 2) * 10 + 5))
  await page.keyboard.press('Enter')
  await page.waitForTimeout(400)
  const { frames, long, key } = await page.evaluate(() => window.feelLog)
  const painted = frames.find((at) => at > key)
  if (painted !== undefined) typed.push(painted - key)
  longTyped.push(...long.filter(([at]) => at > key).map(([, duration]) => duration))
}
console.table([
  row('from the request to the foot table, empty cache', opened),
  row('longest task of an opening', longAtOpening),
  row('from the key to the new foot table', typed),
  row('tasks of 50 ms and more while typing', longTyped.length > 0 ? longTyped : [0]),
])
await browser.close()
server.close()
