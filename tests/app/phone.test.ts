// @vitest-environment happy-dom
import type { Window } from 'happy-dom'
import { afterEach, expect, test } from 'vitest'
import { openSheet, page } from './sheet'
import { answering } from './workers'

const browser = window as unknown as Window
const { innerWidth: width, innerHeight: height } = window

afterEach(() => {
  browser.happyDOM.setViewport({ width, height })
})

/** Whether a part of the page comes before another. */
const isBefore = async (first: string, then: string): Promise<boolean> =>
  ((await page.locator(first).one()).compareDocumentPosition(await page.locator(then).one()) &
    Node.DOCUMENT_POSITION_FOLLOWING) !==
  0

test('the chance is told once: in the head, and on a phone under the table of feet', async () => {
  answering('work')
  await openSheet()
  const chance = page.locator('.sure-line')
  await expect(chance).toHaveText(/^About \d+ % that every state is in at the first run/)
  await expect(chance).toHaveCount(1)
  expect(await isBefore('.sure-line', '.foot-groups')).toBe(true)

  browser.happyDOM.setViewport({ width: 390, height: 844 })
  await expect(page.locator('.sentence .sure-line')).toHaveCount(0)
  await expect(chance).toHaveText(/^About \d+ % that every state is in at the first run/)
  await expect(chance).toHaveCount(1)
  expect(await isBefore('.sentence h1', '.foot-groups')).toBe(true)
  expect(await isBefore('.foot-groups', '.sure-line')).toBe(true)
  expect(await isBefore('.sure-line', '.band-couplings')).toBe(true)
})
