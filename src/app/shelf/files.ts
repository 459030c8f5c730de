import type { TrainDocument } from '../../document/schema'
import { isUnfinished } from '../../document/edits/unfinished'
import { readTrainText } from '../../document/readTrain'
import { handOver } from '../services/handOver'
import { contentOf } from '../../document/contentPrint'
import { unfinished } from './sheet'
import type { Refusal } from '../../document/refusal'

/** What of a file that cannot be opened is shown as text (characters). */
const looked = 100_000
/** A file with more bytes than this is no train file: its text is not even read. */
const largest = 40_000_000

export type FileRead =
  | { readonly ok: true; readonly text: string; readonly document: TrainDocument }
  | { readonly ok: false; readonly text: string; readonly refused: readonly Refusal[] }

/**
 * Reads a picked or dropped file, also one of a train under way; one that is damaged, foreign or newer
 * comes back with its text.
 */
export async function readFile(file: File): Promise<FileRead> {
  if (file.size > largest) {
    const why = `the file has ${Math.round(file.size / 1e6)} MB: at most 10 MB are read; it is no train file`
    return { ok: false, text: await file.slice(0, looked).text(), refused: [{ at: '', why }] }
  }
  const text = await file.text()
  const read = readTrainText(text)
  if (!read.ok) {
    const draft = draftOf(text)
    return isUnfinished(draft, read.refused)
      ? { ok: true, text, document: draft as TrainDocument }
      : { ok: false, text: text.slice(0, looked), refused: read.refused }
  }
  // the fields stay in the order in which the file has them
  const written = JSON.parse(text) as TrainDocument
  const same = contentOf(text) === contentOf(JSON.stringify(read.document))
  return { ok: true, text, document: same ? written : read.document }
}

/** What a file says that cannot be planned: perhaps a train that was saved before it was finished. */
function draftOf(text: string): unknown {
  try {
    return unfinished(JSON.parse(text))
  } catch {
    return undefined
  }
}

/** What of the File System Access API is used; not every browser has it. */
interface Writable {
  write: (text: string) => Promise<void>
  close: () => Promise<void>
}
export interface FileHandle {
  readonly name: string
  createWritable: () => Promise<Writable>
}
interface Picker {
  showSaveFilePicker?: (options: unknown) => Promise<FileHandle>
}

export interface Saved {
  readonly name: string
  /** Where the browser lets the page write to the file again. */
  readonly handle: FileHandle | undefined
}

/**
 * Saves a text as a file: where people choose, or among the downloads where the browser has no other
 * way. Undefined when they change their mind.
 */
export async function saveFile(
  name: string,
  text: string,
  again?: FileHandle,
): Promise<Saved | undefined> {
  const { showSaveFilePicker } = window as Picker
  if (!showSaveFilePicker) return download(name, text)
  let handle = again
  try {
    handle ??= await showSaveFilePicker({
      suggestedName: name,
      types: [{ description: 'Train file', accept: { 'application/json': ['.json'] } }],
    })
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return undefined
    return download(name, text)
  }
  const file = await handle.createWritable()
  await file.write(text)
  await file.close()
  return { name: handle.name, handle }
}

function download(name: string, text: string): Saved {
  handOver(new Blob([text], { type: 'application/json' }), name)
  return { name, handle: undefined }
}
