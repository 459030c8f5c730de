import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync, readdirSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** File names of the browsers that share Chromium's engine. */
const browserFile = /^(chromium(-browser)?|([a-z]+-)?chrome(-stable)?|[a-z]+-edge(-stable)?)$/

/** The browser that CHROMIUM names, or the first of its family on PATH; undefined where there is none. */
export function findBrowser() {
  const named = process.env.CHROMIUM
  if (named !== undefined && named !== '') return runnable(named) ? named : undefined
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    const found = namesIn(folder)
      .filter((name) => browserFile.test(name))
      .map((name) => join(folder, name))
      .find(runnable)
    if (found !== undefined) return found
  }
  return namesIn('/Applications')
    .filter((name) => /chrom(e|ium)\.app$/i.test(name))
    .map((name) => join('/Applications', name, 'Contents', 'MacOS', name.replace(/\.app$/, '')))
    .find(runnable)
}

/** What a person can do where no browser was found. */
export const browserAdvice =
  'install Chromium or another browser of its family, or name one in CHROMIUM'

/** True where this program may install Chromium by itself: root on Debian. */
export const canInstallBrowser = () => existsSync('/etc/debian_version') && process.getuid?.() === 0

/**
 * Installs Debian's Chromium.
 * @throws Error with what apt-get said when it fails
 */
export function installBrowser() {
  for (const words of [['update'], ['install', '-y', '--no-install-recommends', 'chromium']]) {
    const done = spawnSync('apt-get', words, {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      stdio: ['ignore', 'pipe', 'pipe'],
      encoding: 'utf8',
    })
    if (done.status !== 0)
      throw new Error(
        `apt-get ${words[0]} failed\n${done.stderr ?? ''}${done.error?.message ?? ''}`,
      )
  }
}

function namesIn(folder) {
  try {
    return readdirSync(folder).sort()
  } catch {
    return []
  }
}

function runnable(path) {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}
