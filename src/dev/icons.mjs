// Draws the icons of the installed app from src/app/icon.svg into src/app/public/: run by hand when the drawing changes.
import { mkdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { browserAdvice, findBrowser } from './browser.mjs'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const drawing = readFileSync(join(root, 'src/app/icon.svg'), 'utf8')
const executablePath = findBrowser()
if (executablePath === undefined) throw new Error(`no browser: ${browserAdvice}`)

mkdirSync(join(root, 'src/app/public'), { recursive: true })
const args = process.getuid?.() === 0 ? ['--no-sandbox'] : []
const browser = await chromium.launch({ executablePath, args })
for (const size of [192, 512]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  await page.setContent(`<style>*{margin:0;display:block}svg{width:100vw}</style>${drawing}`)
  await page.screenshot({
    path: join(root, 'src/app/public', `icon-${size}.png`),
    omitBackground: true,
  })
}
await browser.close()
