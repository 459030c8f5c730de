import { pinKindWords, pinStateWords } from '../../language/pinWords'
import type { TrainDocument } from '../schema'
import { bodyRowPlace, bodyRows, withBodyRow } from './bodyRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'

/** Dowels and key blocks as a table: a row each. */
export const pinsTable: PasteTarget = {
  what: 'dowels and key blocks',
  columns: [
    { key: 'on', heading: 'on', names: ['machine', 'body', 'skid'], kind: 'text', down: true },
    { key: 'pin', heading: 'dowel or key', names: ['dowel', 'key', 'which', 'id'], kind: 'text' },
    { key: 'kind', heading: 'kind', names: [], kind: 'text' },
    { key: 'now', heading: 'now', names: [], kind: 'text' },
    { key: 'effort', heading: 'effort of drawing it', names: ['effort'], kind: 'fine' },
  ],
  needs: 'pin',
  put,
  rows: (document) =>
    bodyRows(document, 'pins').map(([body, { id, kind, now, effort }]) => ({
      on: body.name,
      pin: id,
      kind: kind === undefined ? undefined : pinKindWords[kind as keyof typeof pinKindWords],
      now,
      effort,
    })),
}

/** The choice that a cell means, by its own word or the first word people call it by; undefined where it means none. */
function choiceOf<T extends string>(
  words: Readonly<Record<T, string>>,
  said: string,
): T | undefined {
  const plain = said.trim().toLowerCase()
  return (Object.keys(words) as T[]).find((key) => plain === key || plain === words[key])
}

function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const place = bodyRowPlace(document, values, { list: 'pins', named: 'pin', first: '1' })
  if (typeof place === 'string') return { why: place }
  const kind =
    values['kind'] === undefined ? undefined : choiceOf(pinKindWords, String(values['kind']))
  if (values['kind'] !== undefined && kind === undefined)
    return { why: `kind: “${String(values['kind'])}” is none: write dowel, or key block` }
  const now =
    values['now'] === undefined ? undefined : choiceOf(pinStateWords, String(values['now']))
  if (values['now'] !== undefined && now === undefined)
    return {
      why: `now: “${String(values['now'])}” is none: write in, out (it fits as it is), or ream (it is to be fitted anew)`,
    }
  const { effort } = values
  if (Number(effort ?? 0) < 0) return { why: `effort: ${String(effort)} is below 0` }
  const next = withBodyRow(document, place, { kind, now, effort })
  if (typeof next === 'string') return { why: next }
  const words = kind === undefined ? 'dowel or key block' : pinKindWords[kind]
  return {
    document: next,
    does: `${place.adds ? 'adds' : 'changes'} ${words} ${place.id} of ${place.body.name}`,
  }
}
