import { readFileSync } from 'node:fs'
import { expect, test, type Page } from '@playwright/test'
import { chooseExample, drawn, openSheet, openText, resized, sizes, watch, worked } from './sheet'

const band = (page: Page) => page.locator('.band-record')
const pages = (page: Page) => band(page).locator('.pages li')
const press = (page: Page, name: string) => band(page).getByRole('button', { name }).click()

async function saved(page: Page, press: () => Promise<void>): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), press()])
  return readFileSync(await file.path(), 'utf8')
}

test(
  'pages of the record are dated and signed, outlive a reload, and a changed one is named',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await chooseExample(page, 'leave-it-alone.json')
    await page.getByLabel('Your name, for what you confirm or accept without').fill('A. Fitter')
    await expect(band(page)).toContainText('no page yet')
    await worked(page)
    await press(page, 'Write down as found')
    // the sheet is not ready: somebody's words and name are wanted first
    await press(page, 'Write down: nothing needs to move')
    // what to enter first, then what is open, a line each
    const refusal = band(page).getByRole('alert')
    await expect(refusal.locator('p')).toHaveText(
      /^Not written down: 9 things are open\. Enter why it is accepted, in words, and who accepts it for operations\.$/,
    )
    await expect(refusal.locator('li')).toHaveCount(9)
    await expect(refusal.locator('li').first()).toHaveText(
      'Soft foot of Main pump is not measured.',
    )
    await expect(pages(page)).toHaveCount(1)
    await press(page, 'Enter facts of the record')
    await band(page).getByLabel('accepted for operations by').fill('B. Owner')
    await band(page).getByLabel('accepted because').fill('read in spring, inside tolerance')
    await press(page, 'Write down: nothing needs to move')
    await expect(pages(page)).toHaveText([
      /^as found, \d{4}-\d\d-\d\d \d\d:\d\d:\d\d UTC, A\. Fitter\. As found\. The tightest coupling uses 61 %/,
      /^nothing moved, .* UTC, A\. Fitter\. Nothing needs to move, and nothing was moved\./,
    ])
    // a page can be read and nothing else
    await expect(pages(page).locator('input, button, textarea, [contenteditable]')).toHaveCount(0)

    // what follows leaves them as they are, and so does taking it back
    const before = await pages(page).allTextContents()
    await page.getByLabel('Tolerance to use at most in percent').fill('60')
    await drawn(page)
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(page.getByLabel('Tolerance to use at most in percent')).not.toHaveValue('60')
    expect(await pages(page).allTextContents()).toEqual(before)
    await page.getByLabel('Tolerance to use at most in percent').fill('65')
    await drawn(page)
    await expect(page.locator('.kept')).toHaveText(/^\s*kept \d\d:\d\d:\d\d\s*$/)
    await page.reload()
    await drawn(page)
    await expect(page.locator('.train-name')).toHaveText('Water injection train')
    expect(await pages(page).allTextContents()).toEqual(before)
    await expect(band(page).getByRole('alert')).toHaveCount(0)

    const text = await saved(page, () => press(page, 'save the record as text'))
    expect(text).toContain('2 pages, each as it was written.')
    expect(text).toMatch(/Page 1: as found, \d{4}-.*, A\. Fitter/)
    expect(text.match(/^Seal [0-9a-f]+$/gm)).toHaveLength(2)

    // the same file with one word of a page changed by somebody else's hand
    await page.evaluate(() => {
      Object.assign(window, { showSaveFilePicker: undefined })
    })
    await page.getByRole('button', { name: 'Shelf', exact: true }).click()
    const file = await saved(page, () =>
      page.getByRole('button', { name: 'Save a file', exact: true }).click(),
    )
    await page.keyboard.press('Escape')
    const document = JSON.parse(file) as { name: string; record: { pages: { words: string }[] } }
    expect(document.record.pages).toHaveLength(2)
    const [first] = document.record.pages
    if (!first) throw new Error('the file holds no page')
    first.words = first.words.replace('61 %', '16 %')
    document.name = 'Water injection train, changed'
    await openText(page, 'changed.json', JSON.stringify(document))
    await expect(page.locator('.train-name')).toHaveText(document.name)
    await drawn(page)
    await expect(band(page).getByRole('alert')).toHaveText(
      /^Page 1 \(as found, .*\) is not as it was written, or a page before it is missing\.$/,
    )
    const told = await saved(page, () => press(page, 'save the record as text'))
    expect(told).toContain('Page 1 (as found')
    expect(told).not.toContain('each as it was written')
    expect(seen.faults).toEqual([])
  },
)

test('a long reason stands whole in its box, on a phone too', async ({ page }) => {
  const reason =
    'The motor was set on a machined base in spring, every foot was measured then with the same gauge and stood within 30 µm, and nothing was loosened since'
  await openSheet(page)
  const unseen = async (label: string) => {
    const box = page.getByLabel(label)
    await box.fill(reason)
    return box.evaluate((el) => [
      el.scrollWidth - el.clientWidth,
      el.scrollHeight - el.clientHeight,
    ])
  }
  for (const size of [sizes[0], sizes[2]]) {
    await resized(page, size)
    const ready = page.locator('.band-ready')
    await ready
      .getByRole('button', { name: /^go without/ })
      .first()
      .click()
    expect(await unseen('Why can the work go on without it?')).toEqual([0, 0])
    await ready.getByRole('button', { name: 'leave it' }).click()
    await press(page, 'Enter facts of the record')
    expect(await unseen('accepted because')).toEqual([0, 0])
    await press(page, 'Put away facts of the record')
  }
})
