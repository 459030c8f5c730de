import type { Refusal } from '../document/refusal'

/** What holds for every train of many. */
export interface EachTrain {
  readonly sure: boolean
  readonly work: number
}

/** Plans for the trains of one file, one a line. */
export interface LinesRequest extends EachTrain {
  readonly command: 'plan-lines'
  readonly file: string
  readonly json: true
}

/** Plans for many train files. */
export interface FilesRequest extends EachTrain {
  readonly command: 'plan-files'
  /** Train files, and folders of such. */
  readonly files: readonly string[]
  readonly json: true
  /** Worker threads; as many as there are processors where it is not given. */
  readonly jobs?: number
  /** Lines of an earlier run: what stands there of unchanged files is not planned again. */
  readonly known?: string
}

interface Given extends EachTrain {
  readonly files: readonly [string, ...string[]]
  readonly lines: boolean
}

/** What was asked for many trains, or what is wrong with it. */
export function manyRequest(
  { files, lines, sure, work }: Given,
  options: ReadonlyMap<string, string>,
): LinesRequest | FilesRequest | Refusal {
  const each = { json: true, sure, work } as const
  if (lines) {
    for (const at of ['--jobs', '--known'])
      if (options.has(at))
        return { at, why: 'it belongs to many files: with --lines trains are planned one by one' }
    return { command: 'plan-lines', file: files[0], ...each }
  }
  if (files.includes('-'))
    return { at: '-', why: 'standard input is one train, or many with --lines: give files here' }
  if (files.includes(''))
    return { at: 'FILE', why: 'empty: give the name of a train file or of a folder of them' }
  const known = options.get('--known')
  if (known === '') return { at: '--known', why: 'empty: give the name of the file to read' }
  const words = options.get('--jobs')
  const jobs = words === undefined ? undefined : Number(words)
  if (
    words === '' ||
    (jobs !== undefined && !(Number.isInteger(jobs) && jobs >= 1 && jobs <= mostJobs))
  )
    return {
      at: '--jobs',
      why: `"${words ?? ''}" is no whole number from 1 to ${mostJobs}: give how many files to plan side by side, such as 4`,
    }
  return {
    command: 'plan-files',
    files,
    ...each,
    ...(jobs !== undefined && { jobs }),
    ...(known !== undefined && { known }),
  }
}

/** More threads than any machine has processors for; each takes some 30 MB. */
const mostJobs = 256
