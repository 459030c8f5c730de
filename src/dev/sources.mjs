import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Every file under the given paths with its time and size: what a build was made from. Paths that do
 * not exist are left out.
 */
export function sourceList(root, paths) {
  return paths.flatMap((path) => filesUnder(root, path)).join('\n')
}

function filesUnder(root, path) {
  const full = join(root, path)
  if (!existsSync(full)) return []
  const found = statSync(full)
  if (!found.isDirectory()) return [`${path} ${found.mtimeMs} ${found.size}`]
  return readdirSync(full)
    .sort()
    .flatMap((name) => filesUnder(root, `${path}/${name}`))
}

/** True when the build that left this stamp was made from exactly these sources. */
export function madeFrom(stamp, sources) {
  try {
    return readFileSync(stamp, 'utf8') === sources
  } catch {
    return false
  }
}
