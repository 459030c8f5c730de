import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { fileServer, listen } from '../../src/dev/serve.mjs'

// the app as it is served, from a folder of its own, so that a newer version can be put there
test.use({ serviceWorkers: 'allow' })

test(
  'kept by the browser it starts and plans without a network; a newer version waits until it is taken',
  { tag: '@whole' },
  async ({ page, context }) => {
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-offline-'))
    cpSync('dist', folder, { recursive: true })
    const server = fileServer(folder)
    const address = await listen(server, 0, true)
    try {
      await page.goto(address)
      await expect(page.locator('.sentence h1')).toBeVisible()
      const keptFiles = await page.evaluate(async () => {
        await navigator.serviceWorker.ready
        const [name = ''] = (await caches.keys()).filter((key) => key.includes('precache'))
        return (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname)
      })
      for (const kind of [
        /\.wasm$/,
        /planner\.worker/,
        /paper\.worker/,
        /MachineFace/,
        /pump-and-motor/,
      ])
        expect(
          keptFiles.some((path) => kind.test(path)),
          String(kind),
        ).toBe(true)
      const sentence = await page.locator('.sentence h1').textContent()

      await context.setOffline(true)
      server.closeAllConnections()
      const cold = await context.newPage()
      await cold.goto(address)
      await expect(cold.locator('.sentence h1')).toHaveText(sentence ?? '')
      await cold.close()
      await context.setOffline(false)
      // from its second loading on a page lives on what is kept
      await page.reload()
      await expect(page.locator('.sentence h1')).toBeVisible()

      appendFileSync(join(folder, 'sw.js'), '// newer')
      await page.evaluate(async () => {
        document.documentElement.dataset['before'] = 'yes'
        await (await navigator.serviceWorker.ready).update()
      })
      const note = page.locator('.version-note')
      await expect(note).toContainText('It waits until you take it')
      await expect(page.locator('html')).toHaveAttribute('data-before', 'yes')
      const other = await context.newPage()
      await other.goto(address)
      await expect(other.locator('.sentence h1')).toBeVisible()
      await note.getByRole('button', { name: 'Take the newer version' }).click()
      await expect(page.locator('html')).not.toHaveAttribute('data-before', 'yes')
      await expect(page.locator('.sentence h1')).toHaveText(sentence ?? '')
      await expect(page.locator('.version-note')).toHaveCount(0)
      // nothing is loaded anew under the hands of whoever works in the other window
      await expect(other.locator('.version-note')).toContainText('taken in another window')
    } finally {
      server.close()
      server.closeAllConnections()
      rmSync(folder, { recursive: true })
    }
  },
)

test(
  'a newer version that the browser does not change over to is taken from the network, and other windows are told',
  { tag: '@whole' },
  async ({ page, context }) => {
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-offline-'))
    cpSync('dist', folder, { recursive: true })
    const server = fileServer(folder)
    const address = await listen(server, 0, true)
    try {
      await page.goto(address)
      await expect(page.locator('.sentence h1')).toBeVisible()
      await page.evaluate(async () => {
        await navigator.serviceWorker.ready
      })
      await page.reload()
      // as Chromium is at times: the newer one is told to take over, and stays waiting
      const file = join(folder, 'sw.js')
      const deaf = readFileSync(file, 'utf8').replace('self.skipWaiting()', 'void 0')
      expect(deaf).not.toContain('skipWaiting()')
      writeFileSync(file, deaf)
      await page.evaluate(async () => {
        document.documentElement.dataset['before'] = 'yes'
        await (await navigator.serviceWorker.ready).update()
      })
      const note = page.locator('.version-note')
      await expect(note).toContainText('It waits until you take it')
      const other = await context.newPage()
      await other.goto(address)
      await expect(other.locator('.sentence h1')).toBeVisible()
      await note.getByRole('button', { name: 'Take the newer version' }).click()
      await expect(note).toContainText('The newer version is coming in')
      await expect(page.locator('html')).not.toHaveAttribute('data-before', 'yes')
      await expect(page.locator('.sentence h1')).toBeVisible()
      await expect(note).toHaveCount(0)
      await expect(other.locator('.version-note')).toContainText('taken in another window')
    } finally {
      server.close()
      server.closeAllConnections()
      rmSync(folder, { recursive: true })
    }
  },
)
