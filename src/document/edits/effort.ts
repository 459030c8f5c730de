import { toFine } from '../../mechanics/units'
import { listed } from '../../language/names'
import { withValue } from '../place'
import type { TrainDocument } from '../schema'
import { bodiesAt, saidBody, type BodyAt } from './bodies'
import type { NamedEdit } from './machines'

/** What makes a machine hard to move, and what it counts like when choices are ranked (um of moves); common practice, no source. */
export const hardToMove = {
  piped: 500,
  heavy: 200,
  doweled: 300,
} as const

export type HardToMove = keyof typeof hardToMove

/** Machines and skids of which nobody has said how hard they are to move. */
export const withoutEffort = (document: TrainDocument): BodyAt[] =>
  bodiesAt(document).filter((at) => {
    const body = (at.kind === 'machine' ? document.machines : (document.skids ?? []))[at.index]
    return body?.effort === undefined && body?.anchored === undefined
  })

/** What it counts like altogether, in the fine unit of the document; nothing of it: 0, which is an answer too. */
export function usualEffort(
  document: Pick<TrainDocument, 'units'>,
  hard: readonly HardToMove[],
): number {
  const sum = hard.reduce((total, one) => total + hardToMove[one], 0)
  return Number(toFine(sum, { ...document.units, temperature: 'C' }).toPrecision(3))
}

/** Enters what was said of a machine as its effort. */
export function withEffort(
  document: TrainDocument,
  { path, name }: Pick<BodyAt, 'path' | 'name'>,
  hard: readonly HardToMove[],
): NamedEdit {
  const said = hard.length === 0 ? 'easy to move' : listed([...hard])
  return {
    document: withValue(document, [...path, 'effort'], usualEffort(document, hard)),
    name: `said that ${saidBody(name)} is ${said}`,
  }
}
