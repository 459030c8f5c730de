import { removed, valueAt, withList, withValue } from '../place'
import type { TrainDocument } from '../schema'
import { nextId, saidBody, type BodyAt } from './bodies'
import type { NamedEdit } from './machines'

/** Things that a body has any number of, entered in a table of their own. */
export type BodyList = 'restraints' | 'pins'

/** How the first of them is called, and what the edits say. */
const lists: Readonly<Record<BodyList, { readonly id: string; readonly one: string }>> = {
  restraints: { id: 'nozzle', one: 'a nozzle' },
  pins: { id: '1', one: 'a dowel or key block' },
}

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
    document: withList(document, [...body.path, of], (list) => [...list, made]),
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
  const path = [...body.path, of]
  const left = removed((valueAt(document, path) ?? []) as readonly unknown[], index)
  return {
    document: withValue(document, path, left.length === 0 ? undefined : left),
    name: `removed ${lists[of].one} of ${saidBody(body.name)}`,
  }
}
