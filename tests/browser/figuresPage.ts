import { readFileSync } from 'node:fs'
import { expect, type Download, type Page } from '@playwright/test'
import type { TrainDocument } from '../../src/document/schema'

/** Most keys of one walk: far more than any sheet has stops. */
const longWalk = 600
/** Keys that are sent in one go; once the place is reached the page takes no more of them. */
const atOnce = 12

/** Walks by the Tab key alone until what has the focus bears this name, and says how many keys it took. */
export async function tabTo(page: Page, name: string | RegExp): Promise<number> {
  const asked = typeof name === 'string' ? { is: name } : { like: name.source, flags: name.flags }
  await page.evaluate((wanted) => {
    const { is, like, flags } = wanted as { is?: string; like?: string; flags?: string }
    const walk = { keys: 0, there: false }
    const look = (): boolean => {
      const element = document.activeElement
      if (!(element instanceof HTMLElement)) return false
      const label = element.closest('label')?.textContent
      const now = (element.getAttribute('aria-label') ?? label ?? element.textContent)
        .replace(/\s+/g, ' ')
        .trim()
      return like === undefined ? now === is : new RegExp(like, flags).test(now)
    }
    // a key that comes when the place is reached goes no further; every one before it is the browser's own
    const onKey = (event: KeyboardEvent): void => {
      walk.there ||= look()
      if (walk.there) {
        event.preventDefault()
        event.stopImmediatePropagation()
      } else walk.keys++
    }
    window.addEventListener('keydown', onKey, { capture: true })
    Object.assign(window, {
      tabWalk: {
        state: () => {
          walk.there ||= look()
          return walk
        },
        end: () => {
          window.removeEventListener('keydown', onKey, { capture: true })
        },
      },
    })
  }, asked)
  const state = () => page.evaluate<{ keys: number; there: boolean }>('tabWalk.state()')
  try {
    for (let sent = 0; sent <= longWalk; sent += atOnce) {
      const { there, keys } = await state()
      if (there) return keys
      await Promise.all(Array.from({ length: atOnce }, () => page.keyboard.press('Tab')))
    }
  } finally {
    await page.evaluate('tabWalk.end()')
  }
  throw new Error(`the Tab key does not come to ${String(name)}`)
}

/** The name of what has the focus. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

/** Opens the figures of a band. */
export async function layOpen(page: Page, band: string): Promise<void> {
  await page.locator(`.figures-button[data-enters="${band}"]`).click()
  await expect(page.locator(`[data-figures="${band}"] > .figures-body`)).toBeVisible()
}

/** The document on the sheet, as it would be saved. */
export async function savedTrain(page: Page): Promise<TrainDocument> {
  // without a picker of its own the browser puts a file among the downloads
  await page.evaluate(() => {
    Object.assign(window, { showSaveFilePicker: undefined })
  })
  const file = await downloaded(page)
  return JSON.parse(readFileSync(await file.path(), 'utf8')) as TrainDocument
}

/** Presses "Save a file" and takes what comes; a browser with much to do may lose a download, which is then asked for again. */
async function downloaded(page: Page): Promise<Download> {
  for (let tries = 1; ; tries++)
    try {
      const [file] = await Promise.all([
        page.waitForEvent('download', { timeout: 30_000 }),
        page.getByRole('button', { name: 'Save a file' }).click(),
      ])
      return file
    } catch (error) {
      if (tries === 3) throw error
    }
}
