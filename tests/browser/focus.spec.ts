import { expect, test, type Page } from '@playwright/test'
import { chooseExample, openSheet, worked } from './sheet'

/** What has the focus, or "page" where nothing has. */
const place = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const now = document.activeElement
    if (!now || now === document.body) return 'page'
    return now.getAttribute('aria-label') ?? now.textContent.trim()
  })

test(
  'a press never drops the keyboard to the page, whatever it takes away',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await worked(page)
    const press = async (name: string | RegExp, within = page.locator('body')) => {
      await within.getByRole('button', { name }).first().press('Enter')
      // what was pressed may go with the next plan only
      await page.waitForTimeout(400)
      const now = await place(page)
      expect(now, String(name)).not.toBe('page')
      return now
    }
    const ready = page.locator('.band-ready')
    await ready.getByLabel(/^Your name/).fill('A. Fitter')
    await press(/^Yes, so it is/, ready)
    expect(await press(/^go without/, ready)).toBe('')
    await page.keyboard.type('checked last week')
    await press(/^Accept without it/, ready)
    await press(/^take that back/, ready)
    await press(/^go without/, ready)
    await press('leave it', ready)

    // the order of work: at the end there is no later
    const order = page.locator('.band-order')
    await press(/^later/, order)
    await worked(page)
    await press(/^earlier/, order.locator('.reorder').last())
    await worked(page)
    await press('take the usual order again', order)

    // by hand and back
    await page
      .getByRole('slider', { name: /put by hand/ })
      .first()
      .focus()
    await page.keyboard.press('ArrowUp')
    await press('Back to best')

    // undo until there is nothing to undo
    const undo = page.getByRole('button', { name: /^Undo/ })
    while (await undo.isEnabled()) {
      await undo.focus()
      await page.keyboard.press('Enter')
      await page.waitForTimeout(100)
    }
    expect(await place(page)).not.toBe('page')

    // rows that are taken away
    await page.locator('.figures-button[data-enters="states"]').press('Enter')
    await press(/^Remove /, page.locator('[data-figures="states"]'))

    // something typed that is no value, taken back from the head
    const cell = page.locator('[data-at="states[0].tolerance"]')
    await cell.fill('many')
    await press(/^Take it back/, page.locator('.stale-note'))

    // to the machine and back
    expect(await press('At the machine')).toBe('At the machine')
    await press('The sheet', page.locator('.machine-face'))

    // another train on the sheet
    await chooseExample(page, 'skid-as-one.json')
    expect(await place(page)).not.toBe('page')
  },
)
