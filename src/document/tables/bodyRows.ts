import { bodiesAt, nextId, type BodyAt } from '../edits/bodies'
import { bodyListPath, mayHave, type BodyList } from '../edits/bodyLists'
import { valueAt, withList, withValue, type Path } from '../place'
import type { TrainDocument } from '../schema'
import { bodyNamed, same } from './bodyNamed'
import { onlyNames } from './couplingRows'
import type { CsvCell } from './csv'
import type { PastedValues } from './pasted'

/** Where a row of a table of things on bodies goes: to one that is there, or after the last one. */
export interface BodyRowPlace {
  readonly body: BodyAt
  readonly path: Path
  readonly id: string
  readonly adds: boolean
}

type Listed = Readonly<Record<string, CsvCell>> & { readonly id: string }

const listOf = (document: TrainDocument, body: BodyAt, list: BodyList): readonly Listed[] =>
  (valueAt(document, bodyListPath(body, list)) ?? []) as readonly Listed[]

/** Every thing of one kind with the body it stands on, for export. */
export const bodyRows = (
  document: TrainDocument,
  list: BodyList,
): readonly (readonly [BodyAt, Listed])[] =>
  bodiesAt(document)
    .filter((body) => mayHave(body, list))
    .flatMap((body) => listOf(document, body, list).map((one) => [body, one] as const))

/**
 * Finds the place of a row by the body and the id it names; without an id it is a new one.
 * @param first id of the first one on a body
 * @returns the place, or why there is none
 */
export function bodyRowPlace(
  document: TrainDocument,
  values: PastedValues,
  {
    list,
    named,
    first,
  }: { readonly list: BodyList; readonly named: string; readonly first: string },
): BodyRowPlace | string {
  const body = bodyNamed(document, values['on'])
  if (typeof body === 'string') return body
  if (!mayHave(body, list)) return `${body.name} is a skid: name the machine`
  const all = listOf(document, body, list)
  const id = values[named] === undefined ? undefined : String(values[named])
  const found = all.findIndex((one) => same(one.id, id))
  const adds = found < 0
  return {
    body,
    path: [...bodyListPath(body, list), adds ? all.length : found],
    id:
      id ??
      nextId(
        all.map((one) => one.id),
        first,
      ),
    adds,
  }
}

/** The document with what a row gives for its thing, which is added where it is new; or why nothing is entered. */
export function withBodyRow(
  document: TrainDocument,
  { path, id, adds }: BodyRowPlace,
  fields: Readonly<Record<string, number | string | boolean | undefined>>,
): TrainDocument | string {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined)
  if (given.length === 0 && !adds) return onlyNames
  const start = adds ? withList(document, path.slice(0, -1), (list) => [...list, { id }]) : document
  return given.reduce((now, [key, value]) => withValue(now, [...path, key], value), start)
}
