import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect, test } from '@playwright/test'
import { drawn } from './sheet'

test(
  'as one file it opens without a server: it plans, keeps and prints, and says what a browser refuses there',
  { tag: '@whole' },
  async ({ page }) => {
    const folder = mkdtempSync(join(tmpdir(), 'holdfast-single-'))
    try {
      const made = spawnSync('npm', ['run', '--silent', 'build:single', '--', '--outDir', folder], {
        encoding: 'utf8',
      })
      expect(made.status, made.stderr).toBe(0)
      expect(readdirSync(folder)).toEqual(['holdfast.html'])
      // alone, under another name, as on a stick
      const file = join(folder, 'on a stick.html')
      cpSync(join(folder, 'holdfast.html'), file)
      rmSync(join(folder, 'holdfast.html'))
      const faults: string[] = []
      page.on('console', (message) => {
        if (['error', 'warning'].includes(message.type())) faults.push(message.text())
      })
      page.on('pageerror', ({ message }) => faults.push(message))
      page.on('request', (request) => {
        const own = /^(data|blob):/.test(request.url()) || request.url() === address
        if (!own) faults.push(`asks for ${request.url().slice(0, 200)}`)
      })
      const address = pathToFileURL(file).href
      await page.goto(address)
      await drawn(page)
      await expect(page.locator('.sentence h1')).toHaveText('Leave the air compressor fixed.')
      await expect(page.locator('.sentence .proof').first()).toContainText('1871 µm')
      await expect(page.locator('.file-note')).toContainText('open as a file, without a server')
      await page.locator('.share-field input').fill('60')
      await drawn(page)
      await expect(page.locator('.kept')).toHaveText(/^kept \d/)
      await page.evaluate(() => {
        window.print = () => undefined
      })
      await page.getByRole('button', { name: 'Print the work sheet' }).click()
      await expect(page.locator('.printed-paper')).toHaveCount(1)
      await page.reload()
      await drawn(page)
      await expect(page.locator('.share-field input')).toHaveValue('60')
      expect(faults).toEqual([])
    } finally {
      rmSync(folder, { recursive: true })
    }
  },
)
