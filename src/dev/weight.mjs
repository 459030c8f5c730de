// npm run weight: what a browser fetches until the first plan can be read, as it is sent, against the budget. Of the built
// app in dist/; fails above the budget.
import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync } from 'node:zlib'
import { isCompressible } from './compressed.mjs'
import { typeOf } from './mediaTypes.mjs'

/** Most that may be fetched until the first plan can be read (bytes). */
export const budget = 350_000

/** Beside what the page itself names: the planner and its solver, what it plans first, and the font of the sheet. */
const beside =
  /^(planner\.worker-.*\.js|glpk-.*\.wasm|piped-compressor-.*\.js|source-sans-3-latin-wght-.*\.woff2|icon-.*\.svg)$/

/** How many files `beside` stands for: a build that names one otherwise is told, and not counted too light. */
const besides = 5

/**
 * The files of a built app that its first plan needs, each with its size as it is sent (bytes), largest first.
 * @param folder the built app
 */
export function firstLoad(folder) {
  const files = new Set(['index.html'])
  const follow = (file) => {
    if (files.has(file)) return
    files.add(file)
    if (!file.endsWith('.js')) return
    const text = readFileSync(join(folder, file), 'utf8')
    for (const [, name] of text.matchAll(/(?:from|import)\s*["'`]\.\/([^"'`]+\.js)["'`]/g))
      follow(`assets/${name}`)
  }
  const html = readFileSync(join(folder, 'index.html'), 'utf8')
  for (const [, file] of html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g))
    follow(file)
  const named = readdirSync(join(folder, 'assets')).filter((name) => beside.test(name))
  if (named.length !== besides)
    throw new Error(
      `${besides} files were looked for beside the page: there are ${named.join(', ')}`,
    )
  for (const name of named) follow(`assets/${name}`)
  return [...files]
    .map((file) => ({ file, sent: sentSize(join(folder, file)) }))
    .sort((a, b) => b.sent - a.sent)
}

/** The size of a file as it is sent to a browser that takes brotli (bytes). */
function sentSize(path) {
  if (existsSync(`${path}.br`)) return readFileSync(`${path}.br`).length
  const bytes = readFileSync(path)
  return isCompressible(typeOf(path), bytes.length)
    ? brotliCompressSync(bytes).length
    : bytes.length
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
  const files = firstLoad(join(root, 'dist'))
  const sum = files.reduce((all, { sent }) => all + sent, 0)
  const row = (bytes, what) => `${(bytes / 1000).toFixed(1).padStart(7)} kB  ${what}`
  for (const { file, sent } of files) console.log(row(sent, file))
  console.log(row(sum, `until the first plan is read, in ${files.length} files`))
  console.log(row(budget, 'at most'))
  if (sum > budget) {
    console.error(`The first load is ${sum - budget} bytes over its budget.`)
    process.exitCode = 1
  }
}
