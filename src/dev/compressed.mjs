// Files of the app as they are sent: compressed where the browser takes it, each once; beforehand where they are built.
import { readFile, readdir, stat, writeFile } from 'node:fs/promises'
import { extname, join } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import { typeOf } from './mediaTypes.mjs'

const brotli = (quality) => (bytes) =>
  promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: quality } })

/**
 * Ways to compress, better ones first, with the ending of a file compressed so. Beforehand the best quality of brotli is
 * worth its seconds; nobody is kept waiting for it.
 */
const ways = {
  br: { now: brotli(9), beforehand: brotli(11) },
  gzip: {
    now: (bytes) => promisify(gzip)(bytes, { level: 9 }),
    beforehand: (bytes) => promisify(gzip)(bytes, { level: 9 }),
  },
}
const endings = { br: '.br', gzip: '.gz' }

/** Smaller files gain nothing; larger ones are no part of the app, and are not held in memory. */
const [smallest, largest] = [1024, 32_000_000]

/** Whether a file is worth compressing: texts and programs; pictures and fonts are so already. */
export const isCompressible = (type, size) =>
  /^(text\/|application\/(json|manifest\+json|wasm)|image\/svg)/.test(type) &&
  size >= smallest &&
  size <= largest

/** The best way that the header Accept-Encoding of a request allows; undefined for none. */
export function encodingFor(accepted = '') {
  const weights = new Map(
    accepted.split(',').map((part) => {
      const [name, ...settings] = part
        .trim()
        .toLowerCase()
        .split(/\s*;\s*/)
      const weight = settings.find((setting) => setting.startsWith('q='))
      return [name, weight === undefined ? 1 : Number(weight.slice(2))]
    }),
  )
  return Object.keys(ways).find((way) => (weights.get(way) ?? weights.get('*') ?? 0) > 0)
}

/** Compressed files by way and path, each with the state of the file it was made from. */
const kept = new Map()

/** The bytes of a file compressed one way; made once for each state of the file. */
export function compressed(file, way) {
  const { path, size, changed } = file
  const key = `${way} ${path}`
  const before = kept.get(key)
  if (before?.size === size && before.changed === changed) return before.bytes
  const bytes = madeBeforehand(file, way).catch(() => readFile(path).then(ways[way].now))
  kept.set(key, { size, changed, bytes })
  bytes.catch(() => kept.delete(key))
  return bytes
}

/** Rejects where there is none, or only one of an older state of the file. */
async function madeBeforehand({ path, changed }, way) {
  const made = path + endings[way]
  if ((await stat(made)).mtimeMs < changed) throw new Error('of an older state')
  return readFile(made)
}

/** Compresses every file under a folder that is worth it, each way, beside the file. */
export async function compressFolder(folder) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  await Promise.all(
    entries.map(async (entry) => {
      const path = join(entry.parentPath, entry.name)
      if (!entry.isFile() || Object.values(endings).includes(extname(path))) return
      const bytes = await readFile(path)
      if (!isCompressible(typeOf(path), bytes.length)) return
      for (const [way, ending] of Object.entries(endings))
        await writeFile(path + ending, await ways[way].beforehand(bytes))
    }),
  )
}
