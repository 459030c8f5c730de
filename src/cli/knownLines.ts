import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { exitOf, refusedExit } from './exitStatus'
import { inputLines } from './lineStream'

/** A line of an earlier run that may be told again. */
interface KnownLine {
  readonly sha256: string
  readonly exit: number
  readonly start: number
  readonly length: number
}

/** Lines of an earlier run; only where each stands is kept in memory. */
export interface KnownLines {
  /** By the name of their file. */
  readonly byFile: ReadonlyMap<string, KnownLine>
  /** Lines that are none of an earlier run, or cut off. */
  readonly strange: number
  read(line: KnownLine): Promise<string>
  close(): Promise<void>
}

/** Longest answer that is taken in again, in bytes. */
const longest = 50_000_000

/**
 * Reads the lines of an earlier run. A train that stopped is planned again, as is one planned by something else or
 * with other options.
 * @param by what the lines must have been planned by
 * @throws Error where the file cannot be read
 */
export async function knownLines(path: string, by: string): Promise<KnownLines> {
  const file = await open(path)
  const byFile = new Map<string, KnownLine>()
  let strange = 0
  try {
    for await (const { start, bytes } of inputLines(createReadStream(path), longest)) {
      if (bytes?.length === 0) continue
      const line = bytes && parsed(bytes.toString('utf8'))
      if (line === undefined) strange++
      else if (line.sha256 !== undefined && line.by === by && line.exit < exitOf.stopped)
        byFile.set(line.file, {
          sha256: line.sha256,
          exit: line.exit,
          start,
          length: bytes?.length ?? 0,
        })
    }
  } catch (error) {
    await file.close()
    throw error
  }
  return {
    byFile,
    strange,
    read: async ({ start, length }) => {
      const { buffer } = await file.read(Buffer.alloc(length), 0, length, start)
      return `${buffer.toString('utf8')}\n`
    },
    close: () => file.close(),
  }
}

function parsed(text: string) {
  let line: unknown
  try {
    line = JSON.parse(text)
  } catch {
    return undefined
  }
  if (typeof line !== 'object' || line === null || !('file' in line)) return undefined
  const { file, sha256, by, status, refused } = line as Record<string, unknown>
  const exit = Array.isArray(refused) ? refusedExit : exitOfStatus(status)
  if (typeof file !== 'string' || exit === undefined) return undefined
  return { file, sha256: typeof sha256 === 'string' ? sha256 : undefined, by, exit }
}

const exitOfStatus = (status: unknown): number | undefined =>
  Object.entries(exitOf).find(([name]) => name === status)?.[1]
