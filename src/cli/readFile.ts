import { createReadStream, fstatSync, type Stats } from 'node:fs'
import { stat } from 'node:fs/promises'
import type { Readable, Writable } from 'node:stream'
import type { Refusal } from '../document/refusal'

/** Largest file that is read, in bytes. */
export const largestFile = 10_000_000

export type FileText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly refused: readonly Refusal[] }

/** Reads a file, or standard input for "-", as UTF-8 text; a byte order mark is left out. */
export async function readText(file: string, path: string, input: Readable): Promise<FileText> {
  const name = file === '-' ? 'standard input' : file
  const read = await readBytes(name, file === '-' ? input : path)
  if (!Buffer.isBuffer(read)) return { ok: false, refused: read }
  return utf8Text(read, (why) => ({ ok: false, refused: [{ at: name, why }] }))
}

/**
 * Reads a file by its path, or a stream, to its end.
 * @param name as it is told where it cannot be read
 */
export async function readBytes(
  name: string,
  from: string | Readable,
): Promise<Buffer | readonly Refusal[]> {
  const refuse = (why: string): readonly Refusal[] => [{ at: name, why }]
  const tooLarge = refuse(
    `larger than 10 MB: at most ${largestFile} bytes are read; is this a train file?`,
  )
  try {
    if (typeof from === 'string') {
      const known = await stat(from)
      if (known.isDirectory()) return refuse('a folder: give a file')
      if (known.size > largestFile) return tooLarge
    }
    return (await collect(typeof from === 'string' ? createReadStream(from) : from)) ?? tooLarge
  } catch (error) {
    return refuse(fileErrorText(error))
  }
}

async function collect(stream: Readable): Promise<Buffer | undefined> {
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk as Uint8Array)
    size += bytes.length
    if (size > largestFile) return undefined
    chunks.push(bytes)
  }
  return Buffer.concat(chunks)
}

/** Bytes as UTF-8 text; a byte order mark is left out. */
export function utf8Text(bytes: Buffer, refuse: (why: string) => FileText): FileText {
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    const written = Buffer.from(bytes.toString('utf8'))
    const at = bytes.findIndex((byte, i) => byte !== written[i])
    const line = bytes.subarray(0, at).filter((byte) => byte === 0x0a).length + 1
    return refuse(
      `not UTF-8 text: byte ${at + 1}, on line ${line}, belongs to no character; save the file as UTF-8`,
    )
  }
}

/** What the system knows of a file, links followed; undefined where there is none. */
export const fileStat = (path: string): Promise<Stats | undefined> =>
  stat(path).catch(() => undefined)

/** The same of what an open stream reads or writes; undefined for one that has no file of the system. */
export function openFileStat(stream: Readable | Writable): Stats | undefined {
  if (!('fd' in stream) || typeof stream.fd !== 'number') return undefined
  try {
    return fstatSync(stream.fd)
  } catch {
    return undefined
  }
}

/** Why a file could not be read or written, in words. */
export function fileErrorText(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  return reasons[code] ?? (error instanceof Error ? error.message : String(error))
}

const reasons: Record<string, string> = {
  ENOENT: 'no such file or folder: check the name',
  ENOTDIR: 'a part of the path is no folder: check the name',
  EISDIR: 'a folder: give a file',
  EACCES: 'no permission: check who may use the file',
  EPERM: 'no permission: check who may use the file',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  EIO: 'the device does not work',
  EFBIG: 'the file would be too large',
  EDQUOT: 'the disk space allowed is used up',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'the links go round in a circle',
}
