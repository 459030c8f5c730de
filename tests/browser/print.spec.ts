import { expect, test, type Page } from '@playwright/test'
import { exampleOf, made } from '../paper/sheets'
import { chooseExample, drawn, openSheet, watch } from './sheet'

/** What stands beside the page for print: its pages as text, and what marks them. */
interface Printed {
  readonly pages: readonly string[]
  readonly notices: readonly string[]
}

/** Print is stood in for by taking down what the browser would then put on paper. */
async function standIn(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.print = () => {
      document.documentElement.dataset['printed'] = String(
        Number(document.documentElement.dataset['printed'] ?? 0) + 1,
      )
    }
  })
}

const prints = (page: Page) =>
  page.evaluate(() => Number(document.documentElement.dataset['printed'] ?? 0))

const onPaper = (page: Page): Promise<Printed | undefined> =>
  page.evaluate(() => {
    const root = document.querySelector('.printed-paper')?.shadowRoot
    if (!root) return undefined
    const texts = (selector: string) =>
      [...root.querySelectorAll(selector)].map(({ textContent }) => textContent)
    return { pages: texts('.page'), notices: texts('.notice') }
  })

const tell = (page: Page, event: 'beforeprint' | 'afterprint') =>
  page.evaluate((name) => window.dispatchEvent(new Event(name)), event)

/** Waits until everything that belongs on paper is worked out. */
async function settled(page: Page): Promise<void> {
  await drawn(page)
  await expect(page.locator('.step-list')).toBeVisible()
  await expect(page.locator('.order.old')).toHaveCount(0)
  await expect(page.locator('.progress')).toHaveText(/^\s*all \d+ choices solved/)
  // chances along the curve come last
  await expect(page.locator('.chance-key')).toBeVisible()
}

test('the print button, its keys and the browser’s own menu put the same whole work sheet on paper', async ({
  page,
}) => {
  const seen = watch(page)
  await standIn(page)
  await openSheet(page)
  const { paper } = await made(exampleOf('piped-compressor'))
  const revision = `revision ${paper.revision}`
  const count = paper.pages.length

  await page.getByRole('button', { name: 'Print the work sheet' }).click()
  await expect.poll(() => prints(page)).toBe(1)
  const first = await onPaper(page)
  expect(first?.pages.length).toBe(count)
  for (const [i, text] of (first?.pages ?? []).entries()) {
    expect(text).toContain(`page ${i + 1} of ${count}`)
    expect(text).toContain(revision)
    expect(text).toMatch(/printed \d{4}-\d\d-\d\d/)
  }
  expect(new Set(first?.notices)).toEqual(new Set(['NOT READY: see page 1']))
  await tell(page, 'afterprint')
  expect(await onPaper(page)).toBeUndefined()

  await settled(page)
  await page.keyboard.press('Control+p')
  await expect.poll(() => prints(page)).toBe(2)
  expect(await onPaper(page)).toEqual(first)
  await tell(page, 'afterprint')

  // the browser's menu: nothing can be waited for
  await tell(page, 'beforeprint')
  expect(await onPaper(page)).toEqual(first)
  const bytes = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
  expect((bytes.match(/\/Type\s*\/Page\b/g) ?? []).length).toBe(count)
  // A4 is 595 by 842 points
  expect(bytes).toMatch(/\/MediaBox\s*\[0 0 59[45](\.\d+)? 84[12]/)
  await tell(page, 'afterprint')
  expect(await onPaper(page)).toBeUndefined()

  // an entry that is no value yet: every page says so, and is of the value that stood there
  await page.getByRole('button', { name: 'Enter machines, skids and nozzles' }).click()
  await page.getByLabel('height of the axis of Motor, mm').fill('71o')
  await page.getByRole('button', { name: 'Print the work sheet' }).click()
  await expect.poll(() => prints(page)).toBe(3)
  const open = await onPaper(page)
  expect(open?.notices).toHaveLength(count)
  expect(new Set(open?.notices)).toEqual(new Set(['NOT READY: see page 1; AN ENTRY IS OPEN']))
  expect(open?.pages[0]).toContain(revision)
  expect(seen.faults).toEqual([])
})

test(
  'paper goes with the units of the train, and says what of the screen is not on it',
  { tag: '@whole' },
  async ({ page }) => {
    await standIn(page)
    await openSheet(page)
    await chooseExample(page, 'pump-and-motor.json')
    await settled(page)
    await tell(page, 'beforeprint')
    const { paper } = await made(exampleOf('pump-and-motor'), 'letter')
    expect((await onPaper(page))?.pages[0]).toContain(`revision ${paper.revision}`)
    await tell(page, 'afterprint')

    // machines put by hand: the button says that it prints the plan, and so does every page
    const end = page
      .locator('.band-rise')
      .getByRole('slider', { name: /^the motor, right end: put by hand/ })
    await end.focus()
    await page.keyboard.press('ArrowUp')
    await page.getByRole('button', { name: 'Print the best plan (not this one)' }).click()
    await expect.poll(() => prints(page)).toBe(1)
    const best = await onPaper(page)
    expect(best?.notices).toHaveLength(paper.pages.length)
    for (const notice of best?.notices ?? [])
      expect(notice).toBe('NOT READY: see page 1; BEST PLAN, not as put by hand')
    expect(best?.pages[0]).toContain(`revision ${paper.revision}`)
    await tell(page, 'afterprint')
    const told = page.getByText(
      'These cards are of the best plan, not of the machines as they were put by hand.',
    )
    await page.getByRole('button', { name: 'At the machine' }).click()
    await expect(told).toBeVisible()
    await page.getByRole('button', { name: 'The sheet' }).click()
    await page.getByRole('button', { name: 'Back to best' }).click()
    await expect(page.getByRole('button', { name: 'Print the work sheet' })).toBeVisible()

    // another plan, and print before its work is worked out
    const { notices, pages } = await page.evaluate(async () => {
      const slider = document.querySelector<HTMLInputElement>('.margin input[type=range]')
      if (!slider) throw new Error('no trade-off')
      slider.value = String(Number(slider.value) + 5)
      slider.dispatchEvent(new Event('input', { bubbles: true }))
      await new Promise((later) => requestAnimationFrame(later))
      window.dispatchEvent(new Event('beforeprint'))
      const root = document.querySelector('.printed-paper')?.shadowRoot
      const notices = [...(root?.querySelectorAll('.notice') ?? [])]
      return {
        notices: notices.map(({ textContent }) => textContent),
        pages: root?.querySelectorAll('.page').length ?? 0,
      }
    })
    expect(pages).toBeGreaterThan(2)
    expect(notices).toHaveLength(pages)
    expect(new Set(notices)).toEqual(
      new Set(['NOT COMPLETE: for the whole work sheet use its own print button']),
    )
  },
)
