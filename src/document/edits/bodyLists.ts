import { removed, valueAt, withList, withValue, type Path } from '../place'
import type { TrainDocument } from '../schema'
import { nextId, saidBody, type BodyAt } from './bodies'
import type { NamedEdit } from './machines'

/** Things that a body has any number of, entered in a table of their own. */
export type BodyList = 'restraints' | 'pins' | 'air gaps' | 'stator feet'

/** Where they stand in a body, how the first of them is called, and what the edits say. */
const lists: Readonly<
  Record<BodyList, { readonly in: Path; readonly id: string; readonly one: string }>
> = {
  restraints: { in: ['restraints'], id: 'nozzle', one: 'a nozzle' },
  pins: { in: ['pins'], id: '1', one: 'a dowel or key block' },
  'air gaps': { in: ['stator', 'airGaps'], id: 'left end', one: 'an air gap' },
  'stator feet': { in: ['stator', 'feet'], id: 'S1', one: 'a foot of the stator' },
}

/** Where the list of a body stands in the document. */
export const bodyListPath = ({ path }: BodyAt, of: BodyList): Path => [...path, ...lists[of].in]

/** A stator stands around the rotor of a machine, never of a skid. */
export const mayHave = ({ kind }: BodyAt, of: BodyList): boolean =>
  kind === 'machine' || lists[of].in[0] !== 'stator'

/** One more on a body; all but its name is still to be entered. */
export function addToBody(
  document: TrainDocument,
  body: BodyAt,
  of: BodyList,
  taken: readonly string[],
): NamedEdit {
  const { id, one } = lists[of]
  const made = { id: nextId(taken, id) }
  return {
    document: withList(document, bodyListPath(body, of), (list) => [...list, made]),
    name: `added ${one} of ${saidBody(body.name)}`,
  }
}

/** A body without one of them, and without the list where it was the last. */
export function removeFromBody(
  document: TrainDocument,
  body: BodyAt,
  of: BodyList,
  index: number,
): NamedEdit {
  const path = bodyListPath(body, of)
  const left = removed((valueAt(document, path) ?? []) as readonly unknown[], index)
  return {
    document: withValue(document, path, left.length === 0 ? undefined : left),
    name: `removed ${lists[of].one} of ${saidBody(body.name)}`,
  }
}
