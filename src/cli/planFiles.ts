import { availableParallelism } from 'node:os'
import { resolve } from 'node:path'
import { version } from '../../package.json'
import type { Refusal } from '../document/refusal'
import { answerLost, exitOf, exitOfMany, refusedExit } from './exitStatus'
import type { FileAnswer, FileJob } from './fileJob'
import { knownLines, type KnownLines } from './knownLines'
import type { EachTrain, FilesRequest } from './manyArguments'
import { fileErrorText, fileStat, openFileStat } from './readFile'
import { isNames, trainFiles } from './trainFiles'
import { send, type Shell } from './shell'
import { answerLine, stoppedAnswer } from './trainAnswer'
import { WorkerPool } from './workerPool'

/** Answers that may wait for one before them, for each worker: a slow train then holds nobody up for long. */
const ahead = 8

/**
 * Plans many train files over worker threads and answers one line a file, in the order of the files.
 * @returns the exit status, or what was refused before any file was planned
 */
export async function planFiles(
  request: FilesRequest,
  shell: Shell,
): Promise<number | readonly Refusal[]> {
  const files = await trainFiles(request.files, shell.folder)
  if (!isNames(files)) return files
  const by = plannedBy(request)
  const known = await openKnown(request.known, by, shell)
  if (known && !('byFile' in known)) return known
  const size = Math.min(request.jobs ?? availableParallelism(), files.length)
  const pool = new WorkerPool<FileJob, FileAnswer>(new URL(import.meta.url), size)
  const { sure, work } = request
  const ask = (name: string) =>
    pool.ask({
      ...{ name, path: resolve(shell.folder, name), by, sure, work },
      known: known?.byFile.get(name)?.sha256,
    })
  const told = { files: 0, refused: 0, stopped: 0, again: 0 }
  let exit = 0
  try {
    const running: { name: string; done: ReturnType<typeof ask> }[] = []
    const left = files.values()
    const fill = (): void => {
      while (running.length < size * ahead) {
        const { value: name, done } = left.next()
        if (done) return
        running.push({ name, done: ask(name) })
      }
    }
    fill()
    for (let first = running.shift(); first; first = running.shift()) {
      const done = await first.done
      fill()
      let line: { readonly line: string; readonly exit: number }
      if (done.kind === 'died') {
        const answer = stoppedAnswer(`the worker that had this file died: ${done.why}`)
        line = { line: answerLine({ file: first.name }, answer), exit: answer.exit }
      } else if (done.answer === 'known') {
        line = await knownAgain(known, first.name)
        told.again++
      } else line = done.answer
      exit = exitOfMany(exit, line.exit)
      told.files++
      if (line.exit === refusedExit) told.refused++
      if (line.exit === exitOf.stopped) told.stopped++
      if (!(await send(shell, line.line))) return answerLost
      shell.progress?.(
        `${told.files} of ${files.length} files: ${told.again} known, ${told.refused} refused, ${told.stopped} stopped`,
      )
    }
  } finally {
    await Promise.all([pool.close(), known?.close()])
  }
  return exit
}

/** Program and options that decide an answer, beside the file. */
const plannedBy = ({ sure, work }: EachTrain): string =>
  `holdfast ${version} plan${sure ? ' --sure' : ''}${work === 1 ? '' : ` --work ${work}`}`

async function knownAgain(known: KnownLines | undefined, name: string) {
  const line = known?.byFile.get(name)
  if (!known || !line) throw new Error(`no earlier answer of ${name}`)
  return { line: await known.read(line), exit: line.exit }
}

async function openKnown(
  name: string | undefined,
  by: string,
  { folder, output, complain }: Shell,
): Promise<KnownLines | readonly Refusal[] | undefined> {
  if (name === undefined) return undefined
  const path = resolve(folder, name)
  const [read, written] = [await fileStat(path), openFileStat(output)]
  if (read?.isFile() && read.dev === written?.dev && read.ino === written.ino)
    return [{ at: name, why: 'standard output goes into this very file: give it another one' }]
  try {
    const known = await knownLines(path, by)
    if (known.strange > 0)
      complain(
        `passed over: ${known.strange} of the known lines are cut off or no answers for files\n`,
      )
    return known
  } catch (error) {
    return [{ at: name, why: fileErrorText(error) }]
  }
}
