import type { Coupling, ReadingSet, Sweep } from '../train'
import { counted } from '../train'
import { fitted, shows, type Fitted, type FourNumbers } from './coupled'
import { parts, type Joint } from './joints'
import { source, type Effect, type Source } from './source'

const usual = { place: 1, gap: 100 } // mm, um

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
    const place = set.kind === 'rim' ? (set.uAt ?? usual.place) : (set.uDiameter ?? usual.place)
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

/** The errors of the lines found and of the gaps between shaft ends, in every state alike. */
export function readingErrors(joints: readonly Joint[]): Source[] {
  const couplings = new Set(joints.map(({ c }) => c))
  return [...couplings].flatMap((c) => {
    const of = joints.filter((joint) => joint.c === c)
    const fit = fitted(c)
    const lines = misreads(c, fit).map(({ group, changes }) =>
      source(group, c.id, lineEffects(of, fit.answering(changes))),
    )
    if (!c.axial) return lines
    const gap = c.axial.u === undefined ? usual.gap : c.axial.u * 1000
    const at = parts.indexOf('gap')
    const effects = of.map(({ first }) => ({ to: first + at, by: gap }))
    return [...lines, source('gap', c.id, effects)]
  })
}

/** A line's four numbers are the first four of a joint. */
const lineEffects = (joints: Joint[], line: FourNumbers): Effect[] =>
  joints.flatMap(({ first }) => line.map((by, k) => ({ to: first + k, by })))
