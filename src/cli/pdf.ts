import { spawn } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { browserAdvice, findBrowser } from '../dev/browser.mjs'

export type Pdf =
  { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false; readonly why: string }

/** A browser that takes longer (ms) is given up. */
const patience = 120_000

/** Prints a page that needs nothing else to PDF, with an installed browser of the Chromium family. */
export async function pdfOf(html: string): Promise<Pdf> {
  const browser = findBrowser()
  if (browser === undefined)
    return { ok: false, why: `no browser to make a PDF with: ${browserAdvice}; or ask for .html` }
  const folder = await mkdtemp(join(tmpdir(), 'holdfast-'))
  try {
    const [page, out] = [join(folder, 'sheet.html'), join(folder, 'sheet.pdf')]
    await writeFile(page, html)
    const said = await run(browser, [
      '--headless',
      '--disable-gpu',
      // Chromium's sandbox refuses to run as root; the page is our own and has no scripts
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      `--user-data-dir=${join(folder, 'profile')}`,
      '--no-pdf-header-footer',
      `--print-to-pdf=${out}`,
      pathToFileURL(page).href,
    ])
    const bytes = await readFile(out).catch(() => undefined)
    return bytes === undefined
      ? { ok: false, why: `${browser} made no PDF: ${said}` }
      : { ok: true, bytes }
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 })
  }
}

/** Runs a browser to its end; answers the last of what it said. */
function run(browser: string, words: readonly string[]): Promise<string> {
  return new Promise((done) => {
    const child = spawn(browser, words, {
      stdio: ['ignore', 'ignore', 'pipe'],
      timeout: patience,
    })
    let said = ''
    child.stderr.setEncoding('utf8')
    child.stderr.on('data', (text: string) => {
      said = (said + text).slice(-1000)
    })
    child.on('error', (error) => {
      done(error.message)
    })
    child.on('close', (status) => {
      const last = said.trim().split('\n').at(-1) ?? ''
      done(`it ended with status ${status ?? 'none'}${last === '' ? '' : `, saying: ${last}`}`)
    })
  })
}
