import { expect, test } from '@playwright/test'
import { paperCode } from '../../src/document/paperCode'
import { savedTrain } from './figuresPage'
import { watch } from './sheet'
import { jobs, keepShare, openPage, openShelf } from './shelfPage'

test(
  'a code typed into the search of the shelf opens its job at its step',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    // stands in for a browser that reads codes in pictures
    await page.addInitScript(() => {
      class Detector {
        static getSupportedFormats() {
          return Promise.resolve(['qr_code'])
        }
        detect() {
          return Promise.resolve([{ rawValue: window.name }])
        }
      }
      Object.assign(window, { BarcodeDetector: Detector })
    })
    await openPage(page)
    await keepShare(page, 72)
    const code = paperCode(await savedTrain(page), 2)
    await openShelf(page)
    const search = page.getByRole('searchbox', { name: 'Search' })
    const said = page.locator('.code-found')

    await search.fill(`${code.slice(0, -1)}${code.endsWith('2') ? '3' : '2'}`)
    await expect(said).toContainText('a letter of it is wrong')
    await search.fill('2222-2222-2222')
    await expect(said).toContainText('not on this shelf')
    await expect(jobs(page)).toHaveCount(1)
    await search.fill(code.toLowerCase())
    await expect(said).toContainText('printed from the sheet as it stands here')
    await expect(page.getByRole('button', { name: 'Open it at step 2' })).toBeVisible()

    // read from a picture, it is as if it had been typed
    await search.fill('')
    await page.evaluate((text) => (window.name = text), code)
    const square = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    )
    await page
      .getByLabel('Picture of the code on the paper')
      .setInputFiles({ name: 'code.png', mimeType: 'image/png', buffer: square })
    await expect(search).toHaveValue(code)
    // typed with Enter at once, before anything could be looked up, as a hand scanner does
    await search.fill('')
    await expect(page.getByRole('button', { name: 'Open it at step 2' })).toHaveCount(0)
    await search.evaluate((box: HTMLInputElement, text) => {
      box.value = text
      box.dispatchEvent(new Event('input', { bubbles: true }))
      box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
    }, code)
    await expect(page.locator('.machine-face')).toBeVisible()
    await expect(page.locator('.machine-face')).toContainText('Step 2')
    expect(seen.faults).toEqual([])
  },
)
