import type { TrainDocument } from '../schema'
import { bodiesAt, nextId } from '../edits/bodies'
import { bodyNamed, same } from './bodyNamed'
import { onlyNames } from './couplingRows'
import type { CsvCell } from './csv'
import { feetColumns as columns } from './feetColumns'
import type { PasteTarget, PastedValues, PasteOutcome } from './pasted'
import { valueAt, withList, withValue } from '../place'

/** The feet of a train as a table to be pasted into and to be exported. */
export const feetTable: PasteTarget = {
  what: 'feet',
  columns,
  put,
  rows: (document) =>
    bodiesAt(document).flatMap((body) =>
      body.feet.map((foot) =>
        Object.fromEntries(
          columns.map(({ key, path }): [string, CsvCell] => {
            if (key === 'machine') return [key, body.name]
            if (key === 'foot') return [key, foot.id]
            return [key, valueAt(foot, path) as CsvCell]
          }),
        ),
      ),
    ),
}

/** Changes the foot that a row names, or adds it. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const body = bodyNamed(document, values['machine'])
  if (typeof body === 'string') return { why: body }
  const low = columns.find(({ key, least }) => least === 0 && Number(values[key] ?? 0) < 0)
  if (low) return { why: `${low.heading}: ${String(values[low.key])} is below 0` }
  const named = values['foot'] === undefined ? undefined : String(values['foot'])
  const index = body.feet.findIndex(({ id }) => same(id, named))
  const adds = index < 0
  if (adds && values['x'] === undefined)
    return {
      why: `${body.name} has no foot ${named ?? 'without a name'}, and a new one needs its x`,
    }
  const id = named ?? nextId(body.feet.map((foot) => foot.id))
  const at = adds ? body.feet.length : index
  const start = adds
    ? withList(document, [...body.path, 'feet'], (feet) => [...feet, { id }])
    : document
  const given = columns.filter(({ key, path }) => path.length > 0 && values[key] !== undefined)
  if (given.length === 0) return { why: onlyNames }
  const next = given.reduce((now, { key, path, kind }) => {
    // what a file takes anyway is not written
    const value = kind === 'yes' && values[key] === true ? undefined : values[key]
    return withValue(now, [...body.path, 'feet', at, ...path], value)
  }, start)
  const what = given.map(({ heading }) => heading).join(', ')
  return {
    document: next,
    does: `${adds ? 'adds' : 'changes'} ${body.name} foot ${id}: ${what}`,
  }
}
