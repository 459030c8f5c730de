/**
 * FNV-1a (Fowler, Noll, Vo; parameters from memory): a short mark of a text, that shows slips, damage
 * and honest edits. Marks of different texts may agree by accident, and whoever means to forge one can.
 */

/** Where a run of 32 bits begins. */
const start = 0x811c9dc5

/** 32 bits over whole numbers, such as the units or code points of a text, as 8 hexadecimal digits. */
export function fnv32(numbers: Iterable<number>, from: number = start): string {
  let hash = from
  for (const number of numbers) hash = Math.imul(hash ^ number, 0x01000193)
  return (hash >>> 0).toString(16).padStart(8, '0')
}

/** 64 bits over the UTF-8 of a text, as 16 hexadecimal digits. */
export function fnv64(text: string): string {
  let hash = 0xcbf29ce484222325n
  for (const byte of bytesOf(text)) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & mask
  return hash.toString(16).padStart(16, '0')
}

const mask = 0xffffffffffffffffn

/** Code points of a text; a lone half of a pair counts by itself. */
export function* pointsOf(text: string): Generator<number> {
  for (const character of text) yield character.codePointAt(0) ?? 0
}

/** UTF-16 units of a text. */
export function* utf16Of(text: string): Generator<number> {
  for (let i = 0; i < text.length; i++) yield text.charCodeAt(i)
}

/** UTF-8 by its definition: the engine has no encoder of a platform. */
function* bytesOf(text: string): Generator<number> {
  for (const code of pointsOf(text)) {
    if (code < 0x80) yield code
    else if (code < 0x800) yield* [0xc0 | (code >> 6), tail(code)]
    else if (code < 0x10000) yield* [0xe0 | (code >> 12), tail(code >> 6), tail(code)]
    else yield* [0xf0 | (code >> 18), tail(code >> 12), tail(code >> 6), tail(code)]
  }
}

const tail = (code: number): number => 0x80 | (code & 0x3f)
