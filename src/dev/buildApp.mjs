import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { topFolders } from './layers.mjs'
import { madeFrom, sourceList } from './sources.mjs'

const sources = [
  ...[
    'index.html',
    'vite.config.ts',
    'src/dev/installed.ts',
    'src/dev/builtApp.ts',
    'src/dev/firstChunks.ts',
    'src/dev/sharedWorkers.ts',
    'src/dev/compressBuild.ts',
    'src/dev/compressed.mjs',
    'src/dev/mediaTypes.mjs',
    'package.json',
    'examples',
    'shared/catalogues',
  ],
  ...topFolders.filter((folder) => folder !== 'src/cli'),
  'src/env.d.ts',
]

/**
 * Builds the app into dist/ when it is missing or its sources have changed.
 * @returns true when it was built, false when it was already there
 * @throws Error with what the build said when it fails
 */
export function buildApp(root) {
  const stamp = join(root, '.cache', 'app-built-from')
  const wanted = sourceList(root, sources)
  if (existsSync(join(root, 'dist', 'index.html')) && madeFrom(stamp, wanted)) return false
  rmSync(stamp, { force: true })
  const made = spawnSync(
    process.execPath,
    [join(root, 'node_modules', 'vite', 'bin', 'vite.js'), 'build', '--logLevel', 'warn'],
    {
      cwd: root,
      env: { ...process.env, NODE_ENV: 'production' },
      stdio: ['ignore', 'pipe', 'pipe'],
      encoding: 'utf8',
    },
  )
  if (made.status !== 0)
    throw new Error(`the app could not be built\n${made.stdout ?? ''}${made.stderr ?? ''}`)
  mkdirSync(join(root, '.cache'), { recursive: true })
  writeFileSync(stamp, wanted)
  return true
}
