import { expect, type Page } from '@playwright/test'

/** The sheet is there with a plan of what stands on it. */
export async function ready(page: Page): Promise<void> {
  await expect(page.locator('.band-couplings')).toBeVisible()
  await expect(page.locator('.status')).toHaveText('')
}

/** Opens the page as it comes, with whatever the shelf holds. */
export async function openPage(page: Page): Promise<void> {
  await page.goto('./')
  await ready(page)
}

export const share = (page: Page) => page.getByLabel('Tolerance to use at most in percent')
export const kept = (page: Page) => page.locator('.kept')
export const notes = (page: Page) => page.locator('.shelf-note')
export const jobs = (page: Page) => page.locator('.shelf-columns > section > div.jobs .job-row')
export const versions = (page: Page) => page.locator('.versions > li')

/** Types a share, which is an edit like any other, and waits until it is kept. */
export async function keepShare(page: Page, percent: number): Promise<void> {
  await share(page).fill(String(percent))
  await isKept(page)
}

export async function isKept(page: Page): Promise<void> {
  await expect(kept(page)).toHaveText(/^\s*kept \d\d:\d\d:\d\d\s*$/)
}

export async function openShelf(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Shelf', exact: true }).click()
  await expect(page.locator('.shelf-panel')).toBeVisible()
}
