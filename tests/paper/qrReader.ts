// Reads a QR code of version 1 as ISO/IEC 18004 says: format, mask, codewords, their check, the text. It knows nothing of
// how the code was made.

/** Squares as dark or light, with the quiet zone around them. */
export type Squares = readonly (readonly boolean[])[]

/** A printed path of rectangles, "M4 4h7v1h-7z", painted into squares of one unit. */
export function painted(d: string, side: number): Squares {
  const field = Array.from({ length: side }, () => Array.from({ length: side }, () => false))
  const all = [...d.matchAll(/M(\d+) (\d+)h(\d+)v(\d+)h-(\d+)z/gi)]
  if (all.map(([whole]) => whole).join('') !== d) throw new Error(`not rectangles alone: ${d}`)
  for (const [, x = '', y = '', w = '', h = '', back] of all) {
    if (back !== w) throw new Error('a rectangle that does not close')
    for (let r = Number(y); r < Number(y) + Number(h); r++)
      for (let c = Number(x); c < Number(x) + Number(w); c++) {
        const row = field[r]
        if (row?.[c] === undefined) throw new Error(`beyond the field: ${c}, ${r}`)
        row[c] = true
      }
  }
  return field
}

const size = 21
/** Dark and light of the format are turned by this, so that no format is all light. */
const formatMask = 0b101010000010010
const formatCheck = 0b10100110111

export interface QrText {
  readonly level: 'L' | 'M' | 'Q' | 'H'
  readonly mask: number
  readonly codewords: readonly number[]
  readonly text: string
}

/** @param field a code of version 1 with its quiet zone of four squares */
export function readQr(field: Squares): QrText {
  const quiet = (field.length - size) / 2
  if (quiet !== 4) throw new Error(`a quiet zone of ${quiet} squares`)
  field.forEach((row, r) => {
    row.forEach((dark, c) => {
      const inside = [r, c].every((at) => at >= quiet && at < quiet + size)
      if (dark && !inside) throw new Error(`dark in the quiet zone: ${c}, ${r}`)
    })
  })
  const dark = (r: number, c: number) => field[r + quiet]?.[c + quiet] === true
  for (const [r, c] of [
    [0, 0],
    [0, size - 7],
    [size - 7, 0],
  ] as const)
    finder(dark, r, c)
  for (let i = 8; i < size - 8; i++)
    if (dark(6, i) !== (i % 2 === 0) || dark(i, 6) !== (i % 2 === 0)) throw new Error('timing')
  if (!dark(size - 8, 8)) throw new Error('the square that is always dark')
  const { level, mask } = format(dark)
  const codewords = wordsOf(dark, mask)
  const checks = { L: 7, M: 10, Q: 13, H: 17 }[level]
  for (let i = 0; i < checks; i++)
    if (at(codewords, power(i)) !== 0) throw new Error(`check ${i} of the codewords`)
  return { level, mask, codewords, text: textOf(codewords.slice(0, -checks)) }
}

type Dark = (row: number, column: number) => boolean

/** Seven squares with a ring of light in them, and light around where the code goes on. */
function finder(dark: Dark, r: number, c: number): void {
  for (let i = -1; i <= 7; i++)
    for (let j = -1; j <= 7; j++) {
      const out = [r + i, c + j].some((place) => place < 0 || place >= size)
      const ring = Math.max(Math.abs(i - 3), Math.abs(j - 3))
      if (!out && dark(r + i, c + j) !== (ring !== 2 && ring !== 4)) throw new Error('finder')
    }
}

/** Both copies of the format: which correction, which mask. */
function format(dark: Dark): Pick<QrText, 'level' | 'mask'> {
  const first = [
    ...[0, 1, 2, 3, 4, 5, 7, 8].map((c) => dark(8, c)),
    ...[7, 5, 4, 3, 2, 1, 0].map((r) => dark(r, 8)),
  ]
  const second = [
    ...[0, 1, 2, 3, 4, 5, 6].map((i) => dark(size - 1 - i, 8)),
    ...[8, 7, 6, 5, 4, 3, 2, 1].map((i) => dark(8, size - i)),
  ]
  if (first.join() !== second.join()) throw new Error('two formats')
  const bits = first.reduce((sum, one) => sum * 2 + Number(one), 0) ^ formatMask
  let left = bits
  for (let i = 14; i >= 10; i--) if ((left >> i) & 1) left ^= formatCheck << (i - 10)
  if (left !== 0) throw new Error('the check of the format')
  const level = (['M', 'L', 'H', 'Q'] as const)[bits >> 13]
  if (level === undefined) throw new Error('level')
  return { level, mask: (bits >> 10) & 7 }
}

const masks: readonly ((r: number, c: number) => boolean)[] = [
  (r, c) => (r + c) % 2 === 0,
  (r) => r % 2 === 0,
  (_, c) => c % 3 === 0,
  (r, c) => (r + c) % 3 === 0,
  (r, c) => (Math.floor(r / 2) + Math.floor(c / 3)) % 2 === 0,
  (r, c) => ((r * c) % 2) + ((r * c) % 3) === 0,
  (r, c) => (((r * c) % 2) + ((r * c) % 3)) % 2 === 0,
  (r, c) => (((r + c) % 2) + ((r * c) % 3)) % 2 === 0,
]

/** Finders with their light and the format, and the timing between them, hold no data. */
const holdsData = (r: number, c: number): boolean =>
  r !== 6 && c !== 6 && !(r < 9 && (c < 9 || c >= size - 8)) && !(r >= size - 8 && c < 9)

/** Codewords in pairs of columns from the right, up and down in turn; the timing's column is passed over. */
function wordsOf(dark: Dark, mask: number): number[] {
  const bits: number[] = []
  let up = true
  for (let right = size - 1; right > 0; right -= 2) {
    if (right === 6) right--
    for (let i = 0; i < size; i++) {
      const r = up ? size - 1 - i : i
      for (const c of [right, right - 1])
        if (holdsData(r, c)) bits.push(Number(dark(r, c) !== (masks[mask]?.(r, c) ?? false)))
    }
    up = !up
  }
  return Array.from({ length: bits.length / 8 }, (_, i) => number(bits.slice(8 * i, 8 * i + 8)))
}

const number = (bits: readonly number[]): number => bits.reduce((sum, bit) => sum * 2 + bit, 0)

/** Products in the field of 256 over x^8 + x^4 + x^3 + x^2 + 1. */
function times(a: number, b: number): number {
  let product = 0
  for (let i = 7; i >= 0; i--) {
    product = (product << 1) ^ (product & 0x80 ? 0x11d : 0)
    if ((b >> i) & 1) product ^= a
  }
  return product
}

const power = (n: number): number => Array.from({ length: n }).reduce<number>((p) => times(p, 2), 1)

/** The codewords as coefficients, taken at x. */
const at = (words: readonly number[], x: number): number =>
  words.reduce((sum, word) => times(sum, x) ^ word, 0)

const alphanumeric = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'

function textOf(words: readonly number[]): string {
  const bits = words.flatMap((word) => Array.from({ length: 8 }, (_, i) => (word >> (7 - i)) & 1))
  const take = (count: number) => number(bits.splice(0, count))
  const mode = take(4)
  if (mode === 1) {
    const count = take(10)
    return Array.from({ length: Math.ceil(count / 3) }, (_, i) => {
      const digits = Math.min(3, count - 3 * i)
      return String(take(3 * digits + 1)).padStart(digits, '0')
    }).join('')
  }
  if (mode !== 2) throw new Error(`mode ${mode}`)
  const count = take(9)
  return Array.from({ length: Math.ceil(count / 2) }, (_, i) => {
    const pair = count - 2 * i > 1
    const value = take(pair ? 11 : 6)
    const [high, low] = [Math.floor(value / 45), value % 45]
    return `${pair ? alphanumeric.charAt(high) : ''}${alphanumeric.charAt(low)}`
  }).join('')
}
