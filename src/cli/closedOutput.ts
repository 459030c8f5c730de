import { readFileSync, readlinkSync } from 'node:fs'

/** Shells, by the names that Linux knows them by; they open `>/dev/null` for writing alone. */
const shells = new Set(['sh', 'bash', 'dash', 'zsh', 'ksh', 'ash', 'fish', 'busybox'])
/** Processes above this one that are looked at: a script runner or two stand between it and a shell. */
const most = 8

/**
 * Whether standard output was closed (`>&-`) when the command began. Node opens /dev/null in its place, for reading and
 * writing, before any line of a program runs, and from then on nothing written there fails. A shell that throws the answer
 * away opens /dev/null for writing alone; but other programs may open it for both, and mean that. So it is closed where the
 * outermost process that has such an output was started by a shell that has another.
 * Known on Linux alone, from /proc; anywhere else, and where that does not tell, it is not taken as closed.
 */
export function isOutputClosed(): boolean {
  if (process.platform !== 'linux') return false
  try {
    if (!isOpenForBoth('self')) return false
    let above = process.ppid
    for (let k = 0; k < most; k++) {
      if (!isOpenForBoth(above)) return shells.has(textOf(above, 'comm').trim())
      above = parentOf(above)
    }
  } catch {
    // a process that has gone or belongs to somebody else
  }
  return false
}

type Process = number | 'self'

const textOf = (id: Process, name: string): string => readFileSync(`/proc/${id}/${name}`, 'utf8')

/** Whether its standard output is /dev/null, opened for reading and writing; false where it has none. */
function isOpenForBoth(id: Process): boolean {
  try {
    if (readlinkSync(`/proc/${id}/fd/1`) !== '/dev/null') return false
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return false
    throw error
  }
  const flags = /^flags:\s*([0-7]+)$/m.exec(textOf(id, 'fdinfo/1'))?.[1] ?? '0'
  // the last octal digit of the flags: 0 reading, 1 writing, 2 both
  return (parseInt(flags, 8) & 3) === 2
}

/** The fourth word of its state; the second, its name, may have spaces and brackets in it. */
const parentOf = (id: Process): number =>
  Number(textOf(id, 'stat').replace(/^.*\)/s, '').trim().split(' ')[1])
