// What a frame costs while something is dragged: script, style and layout on the page's main thread, from
// a trace of the browser, as CPU time (what the page waited for a core does not count) and as wall time, in
// ms a frame. Drags, 3 s each at 60 moves a second: an end of a machine's shaft in the Rise band, a whole
// shaft in the Side band as it comes into the window and with the feet in sight below it, and the point of
// the trade-off. A frame counts when something was moved in it or when it cost more than half of what it may
// (8 ms): frames with little to do would flatter the others. Not a test: it prints figures.
//   npm run build && node tests/bench/frames.mjs [folder of the built app] [example]
import { chromium } from '@playwright/test'
import { findBrowser } from '../../src/dev/browser.mjs'
import { fileServer } from '../../src/dev/serve.mjs'

const [folder = 'dist', example = 'five-in-a-line.json'] = process.argv.slice(2)
const [seconds, rate] = [3, 60]

const server = fileServer(folder)
await new Promise((go) => server.listen(0, '127.0.0.1', go))
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
})
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
await page.goto(`http://127.0.0.1:${server.address().port}/`)
await page.locator('.band-couplings').waitFor()
await page.getByLabel('Example').selectOption(example)
await page.waitForFunction(
  () => /^\s*all /.test(document.querySelector('.progress')?.textContent ?? ''),
  undefined,
  { timeout: 300_000 },
)
// plans are made ahead once the train has stood, and are here by then
await page.waitForTimeout(8000)

const categories = ['devtools.timeline', 'disabled-by-default-devtools.timeline', '__metadata']
/** What counts, by the stage it belongs to; nested ones are counted once, as the outermost. */
const stages = {
  FunctionCall: 'script',
  EvaluateScript: 'script',
  RunMicrotasks: 'script',
  EventDispatch: 'script',
  TimerFire: 'script',
  FireAnimationFrame: 'script',
  MajorGC: 'script',
  MinorGC: 'script',
  UpdateLayoutTree: 'style',
  RecalculateStyles: 'style',
  ParseAuthorStyleSheet: 'style',
  Layout: 'layout',
  PrePaint: 'rest',
  Paint: 'rest',
  Layerize: 'rest',
  Commit: 'rest',
  UpdateLayer: 'rest',
}

const counted = ({ moved, cpu }) => moved || cpu > 4000

/** Drags from a place and back and forth about it, while the browser is traced. */
async function traced(locator, path) {
  await locator.scrollIntoViewIfNeeded()
  const box = await locator.boundingBox()
  const from = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(...from)
  await page.mouse.down()
  await browser.startTracing(page, { categories })
  const start = performance.now()
  for (let i = 1; i <= seconds * rate; i++) {
    const [dx, dy] = path(i / rate)
    await page.mouse.move(from[0] + dx, from[1] + dy)
    const wait = start + (i * 1000) / rate - performance.now()
    if (wait > 0) await page.waitForTimeout(wait)
  }
  const trace = JSON.parse((await browser.stopTracing()).toString()).traceEvents
  await page.mouse.up()
  await page.waitForTimeout(1000)
  return framesOf(trace).filter(counted)
}

/** Sums of each stage between one drawn frame of the page and the next (us of CPU and of wall). */
function framesOf(events) {
  const main = events.filter(
    ({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain',
  )
  const busiest = main
    .map(({ pid, tid }) => events.filter((e) => e.pid === pid && e.tid === tid))
    .sort((a, b) => b.length - a.length)[0]
  const own = busiest.filter(({ ph, dur }) => ph === 'X' && dur !== undefined)
  own.sort((a, b) => a.ts - b.ts || b.dur - a.dur)
  const ends = own.filter(({ name }) => name === 'Commit').map(({ ts }) => ts)
  const none = { script: 0, style: 0, layout: 0, rest: 0, wall: 0, cpu: 0, moved: false }
  const frames = ends.map(() => ({ ...none }))
  // the time of an event less what counts inside it: style that a script forces is style
  const stack = []
  for (const { name, ts, dur, tdur = dur, args } of own) {
    while (stack.length > 0 && stack.at(-1).end <= ts) stack.pop()
    const stage = stages[name]
    if (stage === undefined) continue
    const outer = stack.at(-1)
    if (outer?.frame) {
      outer.frame[outer.stage] -= tdur
      if (outer.stage !== 'rest') {
        outer.frame.wall -= dur
        outer.frame.cpu -= tdur
      }
    }
    const frame = frames[ends.findIndex((end) => end >= ts)]
    if (frame) {
      if (name === 'EventDispatch' && args?.data?.type === 'mousemove') frame.moved = true
      frame[stage] += tdur
      if (stage !== 'rest') {
        frame.wall += dur
        frame.cpu += tdur
      }
    }
    stack.push({ end: ts + dur, stage, frame })
  }
  return frames
}

const quantile = (values, part) => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? NaN
}
const ms = (us) => Number((us / 1000).toFixed(1))
const row = (what, frames) => ({
  what,
  frames: frames.length,
  'CPU p50': ms(
    quantile(
      frames.map(({ cpu }) => cpu),
      0.5,
    ),
  ),
  'CPU p95': ms(
    quantile(
      frames.map(({ cpu }) => cpu),
      0.95,
    ),
  ),
  'wall p95': ms(
    quantile(
      frames.map(({ wall }) => wall),
      0.95,
    ),
  ),
  ...Object.fromEntries(
    ['script', 'style', 'layout', 'rest'].map((stage) => [
      `${stage} p50/p95`,
      `${ms(
        quantile(
          frames.map((f) => f[stage]),
          0.5,
        ),
      )}/${ms(
        quantile(
          frames.map((f) => f[stage]),
          0.95,
        ),
      )}`,
    ]),
  ),
})

const rows = []
rows.push(
  row(
    'shaft end in Rise',
    await traced(page.locator('.band-rise .handle.right').first(), (t) => [
      0,
      18 * Math.sin(2 * Math.PI * t),
    ]),
  ),
)
rows.push(
  row(
    'whole shaft in Side',
    await traced(page.locator('.band-side .handle.both').first(), (t) => [
      0,
      18 * Math.sin(2 * Math.PI * t),
    ]),
  ),
)
await page.locator('.band-side').evaluate((band) => band.scrollIntoView())
rows.push(
  row(
    'the same, feet in sight',
    await traced(page.locator('.band-side .handle.both').first(), (t) => [
      0,
      18 * Math.sin(2 * Math.PI * t),
    ]),
  ),
)
for (let i = 0; i < 3; i++) await page.keyboard.press('Control+z')
await page.evaluate(() => window.scrollTo(0, 0))
await page.waitForTimeout(4000)
const slider = page.locator('.curve-point')
const [least, most, now] = await slider.evaluate((input) => {
  const { min, max, value } = input
  return [Number(min), Number(max), Number(value)]
})
await slider.scrollIntoViewIfNeeded()
const box = await slider.boundingBox()
const thumb = 44
const at = (percent) => thumb / 2 + ((percent - least) / (most - least)) * (box.width - thumb)
const middle = box.width / 2
rows.push(
  row(
    'point of the trade-off',
    await traced(slider, (t) => {
      const wave = Math.sin(2 * Math.PI * t)
      return [
        at(wave < 0 ? now + wave * (now - least) * 0.6 : now + wave * (most - now)) - middle,
        0,
      ]
    }),
  ),
)
console.table(rows)
await browser.close()
server.close()
