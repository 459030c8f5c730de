import type { Coupling, ReadingSet, Sweep } from '../train'
import { counted } from '../train'
import { shows, type Fitted } from './coupled'

const usualPlace = 1 // mm: common practice, no source

/** One error of what was read: by how much a draw of 1 changes each read of the coupling. */
interface Misread {
  group: 'readings' | 'brackets'
  changes: number[]
}

/** A bar is known better where its sag was entered. */
function sagKnownTo(set: Extract<Sweep, { kind: 'rim' | 'face' | 'spool' }>): number {
  if (set.uSag !== undefined) return set.uSag
  const entered = set.sag !== undefined
  return set.kind === 'rim' ? (entered ? 10 : 25) : entered ? 3 : 5
}

/**
 * By how much a set that stands otherwise than is written would change what is read, of the line found:
 * every reading is linear in sag, place and diameter, so that one unit more tells all.
 */
function otherwise(c: Coupling, { reads, line }: Fitted, set: Sweep, more: Sweep, u: number) {
  return reads.map((read) => {
    if (read.set !== set || read.hour === undefined) return 0
    return u * (shows(c, more, read.hour, line) - shows(c, set, read.hour, line))
  })
}

/** The bracket that a set hangs on: its own, unless it names one. */
const bracketOf = (set: ReadingSet, i: number): string =>
  set.kind !== 'line' && set.kind !== 'gap' && set.bracket !== undefined
    ? `bracket ${set.bracket}`
    : `the bracket of set ${i}`

/** Every error of one coupling's readings, one draw each. */
export function misreads(c: Coupling, fit: Fitted): Misread[] {
  const all: Misread[] = fit.reads.map(({ u }, k) => ({
    group: 'readings',
    changes: fit.reads.map((_, i) => (i === k ? u : 0)),
  }))
  const brackets = new Map<string, number[]>()
  counted(c).forEach((set, i) => {
    if (set.kind === 'line') return
    const place = set.kind === 'rim' ? (set.uAt ?? usualPlace) : (set.uDiameter ?? usualPlace)
    const more =
      set.kind === 'rim' ? { ...set, at: set.at + 1 } : { ...set, diameter: set.diameter + 1 }
    all.push({ group: 'readings', changes: otherwise(c, fit, set, more, place) })
    if (set.kind === 'gap') return
    const sagging = { ...set, sag: (set.sag ?? 0) + 1 }
    const changes = otherwise(c, fit, set, sagging, sagKnownTo(set))
    const bracket = bracketOf(set, i)
    const before = brackets.get(bracket)
    brackets.set(
      bracket,
      changes.map((change, k) => change + (before?.[k] ?? 0)),
    )
  })
  return [
    ...all,
    ...[...brackets.values()].map((changes) => ({ group: 'brackets', changes }) as const),
  ]
}
