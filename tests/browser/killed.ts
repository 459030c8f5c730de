import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { chromium, type Browser, type Page } from '@playwright/test'
import { findBrowser } from '../../src/dev/browser.mjs'

/** A browser of its own processes over a profile that outlives it. */
export interface Killable {
  readonly browser: Browser
  readonly page: Page
  /** Ends all its processes at once, as a machine going dark would. */
  readonly kill: () => Promise<void>
}

export function makeProfile(): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-profile-'))
  return {
    folder,
    remove: () => {
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
    },
  }
}

export async function startBrowser(folder: string): Promise<Killable> {
  const port = join(folder, 'DevToolsActivePort')
  rmSync(port, { force: true })
  // in a process group of its own, so that one signal reaches every part of it
  const child = spawn(
    findBrowser() ?? 'chromium',
    [
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${folder}`,
      '--no-first-run',
      '--hide-crash-restore-bubble',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      'about:blank',
    ],
    { detached: true, stdio: 'ignore' },
  )
  const ended = new Promise<void>((end) =>
    child.once('exit', () => {
      end()
    }),
  )
  const { pid } = child
  if (pid === undefined) throw new Error('the browser did not start')
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portIn(port)}`)
  const [context] = browser.contexts()
  const page = await context?.newPage()
  if (!page) throw new Error('the browser has no window')
  return {
    browser,
    page,
    kill: async () => {
      process.kill(-pid, 'SIGKILL')
      await ended
      await browser.close().catch(() => undefined)
    },
  }
}

async function portIn(file: string): Promise<string> {
  for (let tries = 0; tries < 300; tries++) {
    try {
      const [port] = readFileSync(file, 'utf8').split('\n')
      if (port) return port
    } catch {
      // not written yet
    }
    await pause(100)
  }
  throw new Error('the browser did not say where it listens')
}
