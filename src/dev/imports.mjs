import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'

/** What imports, exports from, imports lazily or loads as a worker. */
const importing =
  /(?:\bfrom|\bimport\(|\bimport|new URL\(|v-src=)\s*(['"])(\.{1,2}\/[^'"?]*)(?:\?[^'"]*)?\1/g

/**
 * Every source file below a folder with the files of the project that it imports.
 * @param root the project's folder
 * @returns a map from path to paths, both from the root, with "/" between folders
 */
export function importsOf(root, folder = 'src') {
  const files = sourceFiles(join(root, folder))
  return new Map(
    files.map((file) => [named(root, file), importsIn(root, file, readFileSync(file, 'utf8'))]),
  )
}

function importsIn(root, file, text) {
  const found = new Set()
  for (const [, , path] of text.matchAll(importing)) {
    const target = fileAt(resolve(dirname(file), path))
    if (target !== undefined && target !== file) found.add(named(root, target))
  }
  return [...found].sort()
}

const endings = ['', '.ts', '.vue', '.mjs', '.js', '.d.ts']

function fileAt(path) {
  return endings
    .map((ending) => path + ending)
    .find((file) => existsSync(file) && statSync(file).isFile() && isSource(file))
}

const isSource = (file) => /\.(ts|vue|mjs|js)$/.test(file)

function sourceFiles(folder) {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && isSource(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort()
}

const named = (root, file) => relative(root, file).split('\\').join('/')
