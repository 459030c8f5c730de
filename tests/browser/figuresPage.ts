import { readFileSync } from 'node:fs'
import { expect, type Page } from '@playwright/test'
import type { TrainDocument } from '../../src/document/schema'

/** Most keys of one walk: far more than any sheet has stops. */
const longWalk = 600

/** Walks by the Tab key alone until what has the focus bears this name, and says how many keys it took. */
export async function tabTo(page: Page, name: string | RegExp): Promise<number> {
  for (let keys = 0; keys <= longWalk; keys++) {
    const now = await page.evaluate(() => {
      const element = document.activeElement
      if (!(element instanceof HTMLElement)) return ''
      const label = element.closest('label')?.textContent
      return (element.getAttribute('aria-label') ?? label ?? element.textContent)
        .replace(/\s+/g, ' ')
        .trim()
    })
    if (typeof name === 'string' ? now === name : name.test(now)) return keys
    await page.keyboard.press('Tab')
  }
  throw new Error(`the Tab key does not come to ${String(name)}`)
}

/** The name of what has the focus. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

/** Opens the figures of a band. */
export async function layOpen(page: Page, band: string): Promise<void> {
  const figures = page.locator(`[data-figures="${band}"]`)
  await figures.locator('.figures-button').click()
  await expect(figures.locator('.figures-body')).toBeVisible()
}

/** The document on the sheet, as it would be saved. */
export async function savedTrain(page: Page): Promise<TrainDocument> {
  // without a picker of its own the browser puts a file among the downloads
  await page.evaluate(() => {
    Object.assign(window, { showSaveFilePicker: undefined })
  })
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a file' }).click(),
  ])
  return JSON.parse(readFileSync(await file.path(), 'utf8')) as TrainDocument
}
