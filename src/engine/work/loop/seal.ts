/**
 * A digest that shows whether a page was changed: 64-bit FNV-1a (Fowler, Noll, Vo; parameters from
 * memory) over UTF-8, as 16 hexadecimal digits. It shows slips, damage and honest edits; whoever
 * means to forge a page can work out a new one.
 */
export function digest(text: string): string {
  let hash = 0xcbf29ce484222325n
  for (const byte of bytesOf(text)) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & mask
  return hash.toString(16).padStart(16, '0')
}

const mask = 0xffffffffffffffffn

/** UTF-8 by its definition: the engine has no encoder of a platform. A lone half of a pair counts by itself. */
function* bytesOf(text: string): Generator<number> {
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0
    if (code < 0x80) yield code
    else if (code < 0x800) yield* [0xc0 | (code >> 6), tail(code)]
    else if (code < 0x10000) yield* [0xe0 | (code >> 12), tail(code >> 6), tail(code)]
    else yield* [0xf0 | (code >> 18), tail(code >> 12), tail(code >> 6), tail(code)]
  }
}

const tail = (code: number): number => 0x80 | (code & 0x3f)

/** JSON with the keys of every object in order, so that the same content has one text. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((entry) => canonical(entry ?? null)).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value)
      .filter(([, entry]) => entry !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    return `{${entries.map(([key, entry]) => `${JSON.stringify(key)}:${canonical(entry)}`).join(',')}}`
  }
  return JSON.stringify(value ?? null)
}
