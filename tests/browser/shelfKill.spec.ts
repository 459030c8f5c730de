import { cpus, loadavg } from 'node:os'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test, type Page } from '@playwright/test'
import { makeProfile, startBrowser } from './killed'
import { ready } from './shelfPage'

const long = process.env.HOLDFAST_LONG !== undefined
const kills = long ? 50 : 1
/** The window in which a change may not be shown as kept yet (ms). */
const window = 300

/** What the page shows, as it shows it: a text typed, or the time (ms) up to which all is kept. */
type Told =
  | { readonly kind: 'typed'; readonly at: number; readonly text: string }
  | { readonly kind: 'kept'; readonly at: number; readonly upTo: number }

const note = (page: Page) => page.getByRole('textbox', { name: 'note', exact: true })

async function typeOn(page: Page): Promise<void> {
  try {
    for (let n = 0; ; n++) await page.keyboard.type(`${n} `, { delay: 25 })
  } catch {
    // the browser is gone
  }
}

/** Tells everything that is typed, and each time the page says up to when that is kept. */
async function listen(page: Page): Promise<Told[]> {
  const told: Told[] = []
  await page.exposeFunction('tell', (one: Told) => {
    told.push(one)
  })
  await page.evaluate(() => {
    const { tell } = window as unknown as { tell: (one: Told) => void }
    document.addEventListener(
      'input',
      ({ target }) => {
        tell({ kind: 'typed', at: Date.now(), text: (target as HTMLTextAreaElement).value })
      },
      { capture: true },
    )
    const shown = document.querySelector('.kept')
    if (!shown) throw new Error('nothing says what is kept')
    new MutationObserver(() => {
      const time = shown.querySelector('time')?.dateTime
      if (time !== undefined) tell({ kind: 'kept', at: Date.now(), upTo: Date.parse(time) })
    }).observe(shown, { subtree: true, childList: true, characterData: true, attributes: true })
  })
  return told
}

const typedOf = (told: readonly Told[]) => told.filter((one) => one.kind === 'typed')
const keptOf = (told: readonly Told[]) => told.filter((one) => one.kind === 'kept')

/** How old (ms) the oldest change was that was not shown as kept, each time one came to be. */
function ages(told: readonly Told[]): number[] {
  return keptOf(told).flatMap(({ at, upTo }, i, all) => {
    const before = all[i - 1]?.upTo ?? 0
    const oldest = typedOf(told).find((typed) => typed.at > before)
    return upTo > before && oldest && oldest.at <= upTo ? [at - oldest.at] : []
  })
}

test(`killed in the middle of typing, ${kills} in all, nothing shown as kept is lost`, async ({
  baseURL,
}) => {
  test.setTimeout((kills + 5) * 120_000)
  const profile = makeProfile()
  const waits: number[] = []
  const behind: number[] = []
  let [letters, lost, round] = [0, 0, 0]
  try {
    let before = ''
    for (; round <= kills; round++) {
      const { page, kill } = await startBrowser(profile.folder)
      await page.goto(baseURL ?? '')
      await ready(page)
      await page.getByRole('button', { name: /^Enter job/ }).click()
      if (round > 0) {
        const found = await note(page).inputValue()
        // what is there is what was typed, up to some letter, and that not before the last one kept
        expect(found.startsWith(before), `after kill ${round}: ${found}`).toBe(true)
        letters = found.length
      }
      if (round === kills) {
        await kill()
        break
      }
      const told = await listen(page)
      await note(page).fill(`round ${round}: `)
      // typing goes on until the browser is gone
      const typing = typeOn(page)
      await expect.poll(() => typedOf(told).length).toBeGreaterThan(20)
      await pause((round * 577) % 997)
      await kill()
      const dead = Date.now()
      await typing
      const last = keptOf(told).at(-1)
      const typed = typedOf(told)
      const kept = typed.findLast(({ at }) => at <= (last?.upTo ?? 0))
      before = kept?.text ?? ''
      waits.push(...ages(told))
      const oldest = typed.find(({ at }) => at > (last?.upTo ?? 0))
      behind.push(oldest ? dead - oldest.at : 0)
      if (kept === undefined) lost++
    }
  } finally {
    profile.remove()
  }
  const sorted = [...waits].sort((a, b) => a - b)
  const part = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0
  const said = `${kills} kills, ${waits.length} writings seen; a change waits ${part(0.5)} ms (median), ${part(0.95)} ms (95 of 100), ${part(1)} ms (most); at the kill the oldest change not shown as kept was ${Math.max(...behind)} ms old (most), ${[...behind].sort((a, b) => a - b)[Math.floor(behind.length / 2)] ?? 0} ms (median)`
  console.log(said)
  test.info().annotations.push({ type: 'measured', description: said })
  expect(letters).toBeGreaterThan(0)
  expect(lost).toBe(0)
  expect(waits.length).toBeGreaterThan(kills)
  // times say nothing while other tests or programs keep this machine from its work
  const [load = 0] = loadavg()
  if (long && load < 2 * cpus().length) expect(part(0.95)).toBeLessThan(window)
})
