import type { TrainDocument } from '../schema'
import { bodiesAt, type BodyAt } from '../edits/bodies'
import type { PastedValues } from './pasted'

/** The machine or skid a row names by name or id; the only one where none is named; else why there is none. */
export function bodyNamed(
  document: TrainDocument,
  value: PastedValues[string] | undefined,
): BodyAt | string {
  const bodies = bodiesAt(document)
  const only = bodies[0]
  if (value === undefined)
    return bodies.length === 1 && only
      ? only
      : 'the machine is not named: add a column with its name'
  const named = String(value)
  const found =
    bodies.find(({ id, name }) => same(name, named) || same(id, named)) ??
    bodies.find(({ name }) => same(name.replace(/^the /i, ''), named.replace(/^the /i, '')))
  return found ?? `no machine or skid is called “${named}”`
}

/** Whether two names are one, written in capitals or not. */
export const same = (a: string, b: string | undefined): boolean =>
  b !== undefined && a.trim().toLowerCase() === b.trim().toLowerCase()
