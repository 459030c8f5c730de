import type { TrainDocument } from '../schema'
import { bodyRowPlace, bodyRows, withBodyRow } from './bodyRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'

const numbers = [
  { key: 'at', heading: 'x', names: ['at'], kind: 'length' },
  { key: 'top', heading: 'air gap at 12', names: ['top'], kind: 'fine' },
  { key: 'three', heading: 'air gap at 3', names: ['three'], kind: 'fine' },
  { key: 'bottom', heading: 'air gap at 6', names: ['bottom'], kind: 'fine' },
  { key: 'nine', heading: 'air gap at 9', names: ['nine'], kind: 'fine' },
] as const

/** Air gaps of stators as a table: a row a place along the shaft. */
export const airGapsTable: PasteTarget = {
  what: 'air gaps',
  columns: [
    { key: 'on', heading: 'of', names: ['machine', 'generator'], kind: 'text', down: true },
    { key: 'gap', heading: 'where', names: ['place', 'id', 'end'], kind: 'text' },
    ...numbers,
  ],
  needs: 'top',
  put,
  rows: (document) =>
    bodyRows(document, 'air gaps').map(([body, { id, at, top, three, bottom, nine }]) => ({
      on: body.name,
      gap: id,
      ...{ at, top, three, bottom, nine },
    })),
}

function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const place = bodyRowPlace(document, values, {
    list: 'air gaps',
    named: 'gap',
    first: 'left end',
  })
  if (typeof place === 'string') return { why: place }
  const lacks = numbers.find(({ key }) => place.adds && values[key] === undefined)
  if (lacks)
    return {
      why: `${place.body.name} has no air gap ${place.id}, and a new one needs its ${lacks.heading}`,
    }
  const low = numbers.find(({ key }) => key !== 'at' && Number(values[key] ?? 1) <= 0)
  if (low) return { why: `${low.heading}: ${String(values[low.key])} is not above 0` }
  const given = Object.fromEntries(numbers.map(({ key }) => [key, values[key]]))
  const next = withBodyRow(document, place, given)
  if (typeof next === 'string') return { why: next }
  return {
    document: next,
    does: `${place.adds ? 'adds' : 'changes'} air gap ${place.id} of ${place.body.name}`,
  }
}
