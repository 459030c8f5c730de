import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { topFolders } from '../dev/layers.mjs'
import { madeFrom, sourceList } from '../dev/sources.mjs'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const sources = [
  ...topFolders.filter((folder) => folder !== 'src/app' && folder !== 'src/worker'),
  'src/dev/browser.mjs',
  'package.json',
  'vite.cli.config.ts',
]
const bundle = join(root, 'dist-cli', 'cli.mjs')
const stamp = join(root, 'dist-cli', 'built-from')

/**
 * The bundled command line, built when it is missing or its sources have changed. It is built in a
 * folder of its own and moved into place, so two first calls at once do not meet half a file.
 * @returns its path
 * @throws Error when it is missing and cannot be built
 */
export function builtCommandLine() {
  // a package carries the build without the sources
  if (!existsSync(join(root, 'src', 'cli', 'main.ts')) && existsSync(bundle)) return bundle
  const wanted = sourceList(root, sources)
  if (existsSync(bundle) && madeFrom(stamp, wanted)) return bundle
  try {
    build(wanted)
  } catch (error) {
    // An older build is better than none where the tools for building are not installed.
    if (!existsSync(bundle)) throw error
    process.stderr.write(`using an older build, because building failed: ${error.message}\n`)
  }
  return bundle
}

function build(wanted) {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js')
  if (!existsSync(vite))
    throw new Error('the packages it is built with are not installed: run "npm ci" first')
  mkdirSync(join(root, '.cache'), { recursive: true })
  const folder = mkdtempSync(join(root, '.cache', 'cli-'))
  try {
    const made = spawnSync(
      process.execPath,
      [vite, 'build', '--config', 'vite.cli.config.ts', '--logLevel', 'error', '--emptyOutDir'],
      {
        cwd: root,
        env: { ...process.env, HOLDFAST_CLI_OUT: folder, NODE_ENV: 'production' },
        stdio: ['ignore', 'pipe', 'pipe'],
        encoding: 'utf8',
      },
    )
    if (made.status !== 0)
      throw new Error(
        `the command line could not be built\n${made.stdout ?? ''}${made.stderr ?? ''}`,
      )
    writeFileSync(join(folder, 'built-from'), wanted)
    mkdirSync(dirname(bundle), { recursive: true })
    renameSync(join(folder, 'cli.mjs'), bundle)
    renameSync(join(folder, 'built-from'), stamp)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

// Run by itself after packages are installed, so that the first call finds a build. An installation
// without the tools for building stays a good one.
if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    builtCommandLine()
  } catch (error) {
    process.stderr.write(`the command line is not built yet: ${error.message}\n`)
  }
}
