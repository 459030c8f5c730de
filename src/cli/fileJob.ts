import { createHash } from 'node:crypto'
import type { MessagePort } from 'node:worker_threads'
import type { Solver } from '../engine/lp/solver'
import { glpkSolver } from '../solvers/glpk'
import type { EachTrain } from './manyArguments'
import { readBytes, utf8Text } from './readFile'
import { answerLine, refusedAnswer, trainAnswer } from './trainAnswer'

/** A train file that a worker is to plan. */
export interface FileJob extends EachTrain {
  /** As it is told. */
  readonly name: string
  readonly path: string
  /** By what it is planned, for the line. */
  readonly by: string
  /** Hash of the file that an earlier answer is for; it need not be planned again where it is the same. */
  readonly known?: string | undefined
}

/** The line of a file with its exit status alone, or that the earlier one still holds. */
export type FileAnswer = { readonly line: string; readonly exit: number } | 'known'

async function answerOf(job: FileJob, solver: Solver): Promise<FileAnswer> {
  const { name: file, by } = job
  const read = await readBytes(file, job.path)
  if (!Buffer.isBuffer(read)) {
    const told = refusedAnswer(read)
    return { line: answerLine({ file }, told), exit: told.exit }
  }
  const sha256 = createHash('sha256').update(read).digest('hex')
  if (sha256 === job.known) return 'known'
  const text = utf8Text(read, (why) => ({ ok: false, refused: [{ at: file, why }] }))
  const told = trainAnswer(text, solver, job)
  return { line: answerLine({ file, sha256, by }, told), exit: told.exit }
}

/** What a worker does: answers each file that it is handed. */
export async function answerJobs(port: MessagePort): Promise<void> {
  const solver = await glpkSolver()
  port.on('message', (job: FileJob) => {
    void answerOf(job, solver).then((answer) => {
      port.postMessage(answer)
    })
  })
}
