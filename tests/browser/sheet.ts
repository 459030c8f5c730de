import { readFileSync, readdirSync } from 'node:fs'
import { expect, type Locator, type Page } from '@playwright/test'

const folder = new URL('../../examples/', import.meta.url)
export const exampleFiles = readdirSync(folder).filter((file) => file.endsWith('.json'))
export const exampleText = (file: string): string => readFileSync(new URL(file, folder), 'utf8')

export const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
] as const

/** Faults of a page that no test may see: errors on the console, and requests to anywhere else. */
export function watch(page: Page): { faults: string[] } {
  const faults: string[] = []
  page.on('console', (message) => {
    // the runner keeps service workers away, and tells the page so
    if (message.text().includes('Service Worker registration blocked by Playwright')) return
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text())
  })
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('request', (request) => {
    const url = new URL(request.url())
    if (url.hostname !== '127.0.0.1') faults.push(`request to ${request.url()}`)
  })
  return { faults }
}

/** Opens the page and waits until its first plan is drawn. */
export async function openSheet(page: Page): Promise<void> {
  await page.goto('./')
  await drawn(page)
}

/** Waits until what is on the sheet is the newest plan, in its own font. */
export async function drawn(page: Page): Promise<void> {
  await expect(page.locator('.band-couplings')).toBeVisible()
  await expect(page.locator('p.status')).toHaveText('')
  await page.evaluate(async () => {
    await document.fonts.ready
  })
}

/** Waits until work was made of the plan, which comes after it. */
export async function worked(page: Page): Promise<void> {
  await expect(page.locator('.band-ready .ready-sentence')).toBeVisible()
  await expect(page.locator('.ready.old')).toHaveCount(0)
}

/** Gives the page another size, and waits until it is laid out for that. */
export async function resized(
  page: Page,
  size: { readonly width: number; readonly height: number },
): Promise<void> {
  await page.setViewportSize(size)
  // sizes are told with one frame, what they change is drawn with the next
  await frames(page, 3)
  await drawn(page)
}

/**
 * Waits for so many frames. On a loaded machine a browser without a screen may stop drawing them, and would be waited
 * for until the test is out of time: a picture makes it draw.
 */
export async function frames(page: Page, count: number): Promise<void> {
  for (let i = 0; i < count; i++) {
    const drew = await page.evaluate(
      () =>
        new Promise<boolean>((done) => {
          requestAnimationFrame(() => {
            done(true)
          })
          setTimeout(() => {
            done(false)
          }, 2000)
        }),
    )
    if (!drew) await page.screenshot()
  }
}

/** Where an element lies once the sheet around it moves no more: what comes after the plan may lay it out anew. */
export async function atRest(
  page: Page,
  element: Locator,
): Promise<NonNullable<Awaited<ReturnType<Locator['boundingBox']>>>> {
  await worked(page)
  for (let before = ''; ;) {
    const box = await element.boundingBox()
    if (box && JSON.stringify(box) === before) return box
    before = JSON.stringify(box)
    await frames(page, 3)
  }
}

/** Lays out the tools of the head, which a phone folds away. */
async function layTools(page: Page): Promise<void> {
  const tools = page.getByRole('button', { name: 'Tools', exact: true, expanded: false })
  if (await tools.isVisible()) await tools.click()
}

export async function chooseExample(page: Page, file: string): Promise<void> {
  await layTools(page)
  await page.getByLabel('Example').selectOption(file)
  const { name } = JSON.parse(exampleText(file)) as { name: string }
  await expect(page.locator('.train-name')).toHaveText(name)
  await drawn(page)
}

export async function openText(page: Page, name: string, text: string): Promise<void> {
  await page
    .locator('input[data-opens-files]')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })
}

/** Drops a file anywhere on the page, as a hand would. */
export async function dropText(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([file, content]) => {
      const transfer = new DataTransfer()
      transfer.items.add(new File([content ?? ''], file ?? '', { type: 'application/json' }))
      return transfer
    },
    [name, text],
  )
  await page.dispatchEvent('body', 'dragover', { dataTransfer: data })
  await expect(page.locator('.dropping')).toBeVisible()
  await page.dispatchEvent('body', 'drop', { dataTransfer: data })
}
