// Files of the app as they are sent: compressed where the browser takes it, each once.
import { readFile } from 'node:fs/promises'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'

/** Ways to compress, better ones first; the best quality of brotli takes seconds for a few bytes less. */
const ways = {
  br: (bytes) =>
    promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }),
  gzip: (bytes) => promisify(gzip)(bytes, { level: 9 }),
}

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
export function compressed({ path, size, changed }, way) {
  const key = `${way} ${path}`
  const before = kept.get(key)
  if (before?.size === size && before.changed === changed) return before.bytes
  const bytes = readFile(path).then(ways[way])
  kept.set(key, { size, changed, bytes })
  bytes.catch(() => kept.delete(key))
  return bytes
}
