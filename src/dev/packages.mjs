import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** True when every package of the lock file is installed in the version it names. */
export function packagesInstalled(root) {
  const wanted = readPackages(join(root, 'package-lock.json'))
  const have = readPackages(join(root, 'node_modules', '.package-lock.json'))
  if (!wanted || !have) return false
  return Object.entries(wanted).every(
    ([path, { version, optional }]) =>
      path === '' ||
      have[path]?.version === version ||
      (optional === true && have[path] === undefined && !existsSync(join(root, path))),
  )
}

/** Packages of a lock file by their place; undefined where there is none. */
function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages
  } catch {
    return undefined
  }
}

/**
 * Installs the packages of the lock file.
 * @throws Error with what npm said when it fails
 */
export function installPackages(root) {
  const npm = process.env.npm_execpath
  const words = ['ci', '--loglevel=error', '--no-audit', '--no-fund']
  const [command, ...before] =
    npm?.endsWith('.js') || npm?.endsWith('.cjs') ? [process.execPath, npm] : ['npm']
  const done = spawnSync(command, [...before, ...words], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    shell: before.length === 0 && process.platform === 'win32',
  })
  if (done.status !== 0)
    throw new Error(
      `npm ci failed\n${done.stdout ?? ''}${done.stderr ?? ''}${done.error?.message ?? ''}`,
    )
}
