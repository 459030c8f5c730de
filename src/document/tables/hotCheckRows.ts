import { addHotCheck, hotCheckTitle } from '../edits/hotCheckEntry'
import { withValue } from '../place'
import type { TrainDocument } from '../schema'
import { same } from './bodyNamed'
import { saidIn } from './couplingRows'
import type { PasteColumn, PastedValues } from './pasted'

/** The column by which a row says which hot check it is of; an empty cell means the one above it. */
export const hotCheckColumn: PasteColumn = {
  key: 'check',
  heading: 'hot check',
  names: ['check'],
  kind: 'text',
  down: true,
}

/**
 * Which hot check a row is of, by its place in the document: the one that it names, else the last. The first row of all
 * begins one of the last state.
 * @returns why there is none, where there is none
 */
export function hotCheckOfRow(
  document: TrainDocument,
  values: PastedValues,
): { readonly start: TrainDocument; readonly h: number } | string {
  const named = saidIn(values, 'check')
  const start = (document.hotChecks ?? []).length === 0 ? begun(document, named) : document
  const checks = start.hotChecks ?? []
  if (checks.length === 0)
    return 'the train has no state that it could have run in: add the state first'
  const h =
    named === ''
      ? checks.length - 1
      : checks.findIndex(
          (check, i) => same(named, hotCheckTitle(check, i)) || same(named, check.id),
        )
  return h < 0 ? `no hot check is called “${named}”: add it, or write its name` : { start, h }
}

/** A hot check of that name with nothing in it; none where the train has no state. */
function begun(document: TrainDocument, name: string): TrainDocument {
  const { document: next } = addHotCheck(document)
  return name === '' || !next.hotChecks
    ? next
    : withValue(next, ['hotChecks', next.hotChecks.length - 1, 'name'], name)
}
