import type { Coupling, Train } from '../train'
import { fitted, type FourNumbers } from './coupled'
import { foundLines } from './found'
import { parts, type Joint } from './joints'
import { misreads } from './misreads'
import { source, type Effect, type Source } from './source'

const usualGap = 100 // um: common practice, no source

/** The errors of the lines found, of surveys that join them, and of the gaps between shaft ends, in every state alike. */
export function readingErrors(train: Train, joints: readonly Joint[]): Source[] {
  const couplings = new Set(joints.map(({ c }) => c))
  const found = foundLines(train)
  const carried = (lines: ReadonlyMap<Coupling, FourNumbers>) =>
    [...lines].flatMap(([c, line]) =>
      lineEffects(
        joints.filter((joint) => joint.c === c),
        line,
      ),
    )
  const surveyed = found.surveyed.map(({ id, by }) => source('surveys', id, carried(by)))
  const read = [...couplings].flatMap((c) => {
    const of = joints.filter((joint) => joint.c === c)
    const fit = fitted(c)
    const lines = misreads(c, fit).map(({ group, changes }) =>
      source(group, c.id, carried(found.carried(c, fit.answering(changes)))),
    )
    if (!c.axial) return lines
    const gap = c.axial.u === undefined ? usualGap : c.axial.u * 1000
    const at = parts.indexOf('gap')
    const effects = of.map(({ first }) => ({ to: first + at, by: gap }))
    return [...lines, source('gap', c.id, effects)]
  })
  return [...read, ...surveyed]
}

/** A line's four numbers are the first four of a joint. */
const lineEffects = (joints: readonly Joint[], line: FourNumbers): Effect[] =>
  joints.flatMap(({ first }) => line.map((by, k) => ({ to: first + k, by })))
