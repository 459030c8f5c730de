import type { Readable } from 'node:stream'

/** One line of a stream of bytes. */
export interface InputLine {
  /** From 1; blank lines count. */
  readonly number: number
  /** Where it begins, in bytes. */
  readonly start: number
  /** Without its line feed; undefined where it is longer than may be read. */
  readonly bytes: Buffer | undefined
}

const lineFeed = 0x0a

/**
 * Lines as they come. Of the stream no more is held than the line that is being read and the chunk it ends in; of a line
 * that is too long nothing is.
 * @param largest most bytes of a line
 */
export async function* inputLines(stream: Readable, largest: number): AsyncGenerator<InputLine> {
  let number = 1
  let start = 0
  let size = 0
  let parts: Buffer[] = []
  const add = (bytes: Buffer): void => {
    size += bytes.length
    if (size > largest) parts = []
    else parts.push(bytes)
  }
  const taken = (): InputLine => {
    const line = { number, start, bytes: size > largest ? undefined : Buffer.concat(parts) }
    number++
    start += size + 1
    size = 0
    parts = []
    return line
  }
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk as Uint8Array)
    let from = 0
    for (;;) {
      const end = bytes.indexOf(lineFeed, from)
      if (end < 0) break
      add(bytes.subarray(from, end))
      yield taken()
      from = end + 1
    }
    add(bytes.subarray(from))
  }
  if (size > 0) yield taken()
}
