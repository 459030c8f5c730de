import AxeBuilder from '@axe-core/playwright'
import { expect, test, type Page } from '@playwright/test'
import { longTrain } from '../holds/longTrain'
import {
  atRest,
  chooseExample,
  drawn,
  exampleText,
  openSheet,
  openText,
  sizes,
  watch,
} from './sheet'

const gearTrain = 'bolt-bound-gearbox.json'
const headline = (page: Page) => page.getByRole('heading', { level: 1 })
const choice = (page: Page, title: string) =>
  page.locator('.hold-choice', { has: page.getByText(title, { exact: true }) })
const adopt = (page: Page, title: string) => choice(page, title).locator('.adopt')
const listed = (page: Page) =>
  expect(page.locator('.progress')).toHaveText(/^all \d+ choices solved/)
const point = (page: Page) => page.getByRole('slider', { name: 'What margin costs' })

/** The example with the gear held in place of the low stage, which is impossible. */
function gearHeld(): string {
  const document = JSON.parse(exampleText(gearTrain)) as {
    machines: { id: string; held?: boolean }[]
  }
  for (const machine of document.machines) machine.held = machine.id === 'gear'
  return JSON.stringify(document)
}

async function openImpossible(page: Page): Promise<void> {
  await openSheet(page)
  await openText(page, 'gear held.json', gearHeld())
  await expect(headline(page)).toHaveText(/with the step-up gear fixed, the best reachable is/i)
  await expect(page.locator('.remedy').first()).toBeAttached()
}

test(
  'choices are ranked in two numbers, and adopted by mouse and by keys',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    // while there is no curve yet none is called the one before
    await page.addInitScript(() => {
      const told: string[] = []
      Object.assign(window, { told })
      new MutationObserver(() => {
        const margin = document.querySelector('.margin')
        if (margin?.querySelector('.curve-wait')) told.push(margin.className, margin.textContent)
      }).observe(document, { subtree: true, childList: true })
    })
    await openSheet(page)
    await chooseExample(page, gearTrain)
    await listed(page)
    const told = await page.evaluate<string[]>('told')
    expect(told.join('\n')).toContain('working out the curve')
    expect(told.filter((text) => /stale|the curve before/.test(text))).toEqual([])
    const titles = page.locator('.choices > .choice-list .title')
    await expect(titles.first()).toHaveText('The low-stage compressor fixed')
    await expect(choice(page, 'The low-stage compressor fixed').locator('.cost')).toHaveText(
      /^\s*2702 \+ 300/,
    )
    await expect(page.locator('.choices')).toContainText('by moves and effort, µm')
    // what holding the high stage lacks, and where
    await expect(choice(page, 'The high-stage compressor fixed')).toContainText('no plan')
    await expect(choice(page, 'The high-stage compressor fixed')).toContainText(/lacks \d+\sµm/)
    await adopt(page, 'The steam turbine fixed').click()
    await expect(headline(page)).toHaveText('Leave the steam turbine fixed.')
    await listed(page)
    await expect(page.locator('.adopt[aria-current]')).toHaveCount(1)
    await expect(adopt(page, 'The steam turbine fixed')).toHaveAttribute('aria-current', 'true')
    await expect(page.locator('.holds .hold').nth(0)).toHaveAttribute('aria-pressed', 'true')
    await expect(page.locator('.holds .hold').nth(1)).toHaveAttribute('aria-pressed', 'false')

    // by keys, and nothing held always stands there
    await adopt(page, 'The low-stage compressor fixed').focus()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Tab')
    await expect(adopt(page, 'Nothing fixed')).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(headline(page)).toHaveText('Nothing is fixed.')
    await listed(page)
    await expect(adopt(page, 'Nothing fixed')).toHaveAttribute('aria-current', 'true')
    // an impossible choice can be looked at as well, and stands in the list while it is held
    await adopt(page, 'The step-up gear fixed').press('Enter')
    await expect(headline(page)).toHaveText(/with the step-up gear fixed, the best reachable/i)
    await expect(choice(page, 'The step-up gear fixed')).toContainText('Fixed now.')
    await expect(choice(page, 'Nothing fixed')).toBeVisible()
    expect(seen.faults).toEqual([])
  },
)

test(
  'a long list comes bit by bit, never holds up a plan, and can be stopped',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await openText(page, 'long.json', JSON.stringify(longTrain(10)))
    await expect(page.locator('.train-name')).toHaveText('10 machines in a line')
    await expect(page.locator('.progress')).toHaveText(/^\s*\d+ of 1024 choices solved/)
    const stop = page.getByRole('button', { name: 'Stop here' })
    await stop.press('Enter')
    await expect(page.locator('.progress')).toHaveText(
      /^\s*stopped after \d+ choices?; the list is/,
    )
    await expect(stop).toHaveCount(0)
    const before = await page.locator('.progress').textContent()
    await page.waitForTimeout(600)
    expect(await page.locator('.progress').textContent()).toBe(before)
    // a new plan starts a new list
    await page.getByLabel('Tolerance to use at most in percent').fill('80')
    await expect(page.locator('.says[aria-live]')).toContainText('80 %')
    await expect(page.locator('.progress')).toHaveText(/of 1024 choices solved/)

    // beyond 12 machines the plan comes at once, and the list says that it is not complete
    await openText(page, 'longer.json', JSON.stringify(longTrain(13)))
    await expect(page.locator('.train-name')).toHaveText('13 machines in a line')
    await expect(headline(page)).toHaveText(/^Leave .* fixed/)
    await expect(page.locator('.progress')).toHaveText(
      /^\s*\d+ choices? so far, of too many to solve them all/,
    )
    await expect(page.locator('.hold-choice.current')).toHaveCount(1)
    await page.getByRole('button', { name: 'Stop here' }).click()
    await expect(page.locator('.progress')).toHaveText(/stopped after .*; the list is not complete/)
    expect(seen.faults).toEqual([])
  },
)

test(
  'what comes late takes no focus and moves nothing under the hand',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await openText(page, 'long.json', JSON.stringify(longTrain(9)))
    await expect(page.locator('.train-name')).toHaveText('9 machines in a line')
    await point(page).focus()
    await point(page).evaluate((element) => {
      element.setAttribute('data-same', 'yes')
    })
    // from the top of the ledger: the sentence above it may take a line more
    const place = async () => {
      const [ledger, curve] = await Promise.all(
        ['.ledger', '.curve'].map((part) => page.locator(part).boundingBox()),
      )
      return { below: (curve?.y ?? NaN) - (ledger?.y ?? NaN), height: curve?.height }
    }
    const before = await place()
    await expect(page.locator('.curve canvas')).toBeVisible()
    await expect(point(page)).toHaveAttribute('aria-valuetext', /of moves/)
    await expect(page.locator('.progress')).toHaveText(/[1-9]\d* of 512 choices solved|^all/)
    await expect(point(page)).toBeFocused()
    await expect(point(page)).toHaveAttribute('data-same', 'yes')
    expect(await place()).toEqual(before)
    // nor does a share under the floor, though the conflict and its remedies come to the ledger
    await page.keyboard.press('Home')
    await expect(page.locator('.conflict-note')).toBeVisible()
    await expect(point(page)).toBeFocused()
    expect(await place()).toEqual(before)
  },
)

test(
  'the point of the curve is dragged and moved by keys, and the sheet follows',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await chooseExample(page, gearTrain)
    await expect(page.locator('.curve canvas')).toBeVisible()
    await expect(point(page)).toHaveAttribute('aria-valuetext', '70 %, 2702 µm of moves')
    await point(page).scrollIntoViewIfNeeded()
    const least = Number(await point(page).getAttribute('min'))
    const thumb = 44
    // what comes later may move or widen the curve: where a percentage stands is looked up for each move
    const pointAt = async (percent: number) => {
      const box = await atRest(page, point(page))
      const x = box.x + thumb / 2 + ((percent - least) / (100 - least)) * (box.width - thumb)
      await page.mouse.move(x, box.y + box.height / 2)
    }
    await pointAt(70)
    await page.mouse.down()
    for (const percent of [74, 78, 82, 85]) await pointAt(percent)
    await page.mouse.up()
    await expect(page.getByLabel('Tolerance to use at most in percent')).toHaveValue('85')
    await expect(page.locator('.says[aria-live]')).toContainText('85 %')
    await expect(page.locator('.moves')).toContainText('uses 85 % of its tolerance')
    await page.locator('.bindings > summary').click()
    await expect(page.locator('.bindings li').first()).toBeVisible()

    // by keys, and it says what margin costs
    await page.getByLabel('Tolerance to use at most in percent').fill('70')
    await expect(point(page)).toHaveAttribute('aria-valuetext', /^70 %/)
    await point(page).focus()
    await page.keyboard.press('ArrowRight')
    await expect(point(page)).toHaveAttribute('aria-valuetext', /^71 %, 26\d\d µm of moves$/)
    await expect(page.locator('.says[aria-live]')).toContainText('71 %')
    await page.keyboard.press('End')
    await expect(point(page)).toHaveAttribute('aria-valuetext', /^100 %, .*; no room for error$/)
    await expect(page.locator('.says[aria-live]')).toContainText('100 %')
    await page.keyboard.press('Home')
    await expect(point(page)).toHaveAttribute(
      'aria-valuetext',
      /no plan: the best reachable is 64 %$/,
    )
    await expect(headline(page)).toHaveText(/the best reachable is 6[34]\s%/)
    // why the floor is where it is, and the corners in digits
    await expect(page.locator('.floor-reason')).toContainText('no shim can close that')
    await page.getByText('corners of the curve').press('Enter')
    await expect(page.locator('.corners tbody tr').first()).toContainText('63.4 %')
    expect(seen.faults).toEqual([])
  },
)

test('the point is moved by a finger', { tag: '@whole' }, async ({ browser, baseURL }) => {
  const context = await browser.newContext({ hasTouch: true, ...(baseURL && { baseURL }) })
  const page = await context.newPage()
  await openSheet(page)
  await expect(page.locator('.curve canvas')).toBeVisible()
  await point(page).scrollIntoViewIfNeeded()
  const box = await point(page).boundingBox()
  if (!box) throw new Error('no slider')
  await page.touchscreen.tap(box.x + box.width - 23, box.y + box.height / 2)
  await expect(page.getByLabel('Tolerance to use at most in percent')).toHaveValue(/^(99|100)$/)
  await expect(page.locator('.says[aria-live]')).toContainText(/99 %|100 %/)
  await context.close()
})

test(
  'a conflict is told and marked; a remedy is put back by keys, another kept by mouse',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openImpossible(page)
    await expect(page.locator('.conflict-sentence')).toContainText('70 % of tolerance asked for')
    const members = await page.locator('.members li').count()
    expect(members).toBeGreaterThan(1)
    await expect(page.locator('.coupling.conflict h3')).toHaveText('low stage to gear')
    await expect(page.locator('.coupling .conflict-word')).toHaveText(['in conflict'])
    await expect(page.locator('.foot.conflict .conflict-word').first()).toHaveText('in conflict')
    await expect(page.locator('.conflict-mark').first()).toBeAttached()
    const remedy = page.locator('.remedy').first()
    await expect(remedy).toContainText('must agree')
    await expect(remedy).toContainText('common practice, no source')
    await remedy.getByRole('button').focus()
    await page.keyboard.press('Enter')
    const rows = page.locator('.trial tbody tr')
    await expect(rows.nth(0)).toHaveText(/status\s*no plan\s*a plan/)
    await expect(rows.nth(1)).toHaveText(/moves\s*none\s*\d+ µm/)
    await expect(headline(page)).toHaveText('Leave the low-stage compressor fixed.')
    await expect(page.getByRole('heading', { name: 'A copy is on the sheet' })).toBeFocused()
    await expect(page.locator('.conflict-mark')).toHaveCount(0)
    await page.keyboard.press('Tab')
    await expect(page.getByRole('button', { name: 'Back to the train as it is' })).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(headline(page)).toHaveText(/with the step-up gear fixed, the best reachable/i)
    await expect(page.locator('.trial')).toHaveCount(0)
    // what was found before is still known
    await expect(page.locator('.remedy').first()).toBeVisible()

    // by mouse, and kept
    await page
      .locator('.remedy')
      .nth(1)
      .getByRole('button', { name: /^try on a copy/ })
      .click()
    await expect(page.locator('.trial')).toContainText('the copy')
    await expect(headline(page)).toHaveText('Leave the steam turbine fixed.')
    await page.getByRole('button', { name: 'Keep this change' }).click()
    await expect(page.locator('.trial')).toHaveCount(0)
    await expect(headline(page)).toHaveText('Leave the steam turbine fixed.')
    await expect(page.locator('.holds .hold').nth(0)).toHaveAttribute('aria-pressed', 'true')
    expect(seen.faults).toEqual([])
  },
)

test(
  'in the drawer at 390 px a choice is adopted, and stays in sight',
  { tag: '@whole' },
  async ({ page }) => {
    await page.setViewportSize(sizes[2])
    await openSheet(page)
    await chooseExample(page, gearTrain)
    await page.locator('.drawer-pull').click()
    await listed(page)
    await adopt(page, 'The steam turbine fixed').click()
    await expect(page.locator('.drawer-pull')).toContainText('Fixed: the steam turbine')
    await expect(page.locator('.curve canvas')).toBeVisible()
    const wide = await page.evaluate(() => document.documentElement.scrollWidth)
    expect(wide).toBeLessThanOrEqual(sizes[2].width)
  },
)

for (const theme of ['light', 'dark'] as const)
  for (const size of [sizes[0], sizes[2]])
    test(
      `axe finds nothing in the ledger at ${size.width} px, ${theme}`,
      { tag: '@long' },
      async ({ page }) => {
        await page.setViewportSize(size)
        await page.emulateMedia({ colorScheme: theme })
        const check = async (what: string) => {
          const { violations } = await new AxeBuilder({ page }).include('.below').analyze()
          expect(
            violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`),
            what,
          ).toEqual([])
        }
        await openImpossible(page)
        if (size.width < 1200) await page.locator('.drawer-pull').click()
        await listed(page)
        for (const summary of await page.locator('.ledger summary').all()) await summary.click()
        await check('a conflict with its remedies')
        await page.locator('.remedy .tool').first().click()
        await drawn(page)
        await expect(page.locator('.trial')).toContainText('a plan')
        await listed(page)
        await check('a copy that is tried')
      },
    )
