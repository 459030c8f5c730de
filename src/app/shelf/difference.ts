import { placeOf } from '../../document/refusal'

/** A place where two documents differ; what is undefined is not there. */
export interface Difference {
  /** Place in the newer document, or in the older one for what is gone. */
  readonly at: string
  /** The same with the names of things in place of their numbers. */
  readonly where: string
  readonly before: unknown
  readonly after: unknown
}

interface Place {
  readonly path: readonly PropertyKey[]
  readonly words: readonly string[]
}

/**
 * Places where two documents differ, in the order of the newer one. Things with an id are compared
 * with the thing of that id, wherever it stands in its list; the order itself counts as one place.
 */
export function differences(before: unknown, after: unknown): Difference[] {
  return [...walk(before, after, { path: [], words: [] })]
}

function* walk(before: unknown, after: unknown, place: Place): Generator<Difference> {
  if (Array.isArray(before) && Array.isArray(after)) yield* lists(before, after, place)
  else if (isGroup(before) && isGroup(after)) {
    const keys = new Set([...Object.keys(after), ...Object.keys(before)])
    for (const key of keys) yield* walk(before[key], after[key], deeper(place, key, key))
  } else if (JSON.stringify(before) !== JSON.stringify(after))
    yield {
      at: placeOf(place.path),
      where: place.words.join(', ') || 'the whole document',
      before,
      after,
    }
}

function* lists(before: unknown[], after: unknown[], place: Place): Generator<Difference> {
  const [old, now] = [idsOf(before), idsOf(after)]
  if (!old || !now) {
    if (!before.some(isGroup) && !after.some(isGroup)) yield* whole(before, after, place)
    else
      for (let i = 0; i < Math.max(before.length, after.length); i++)
        yield* walk(before[i], after[i], deeper(place, i, String(i + 1)))
    return
  }
  for (const [i, id] of now.entries())
    yield* walk(before[old.indexOf(id)], after[i], deeper(place, i, nameOf(after[i], id)))
  for (const [i, id] of old.entries())
    if (!now.includes(id))
      yield* walk(before[i], undefined, deeper(place, i, nameOf(before[i], id)))
  const both = (ids: string[], others: string[]) => ids.filter((id) => others.includes(id))
  if (both(old, now).join('\n') !== both(now, old).join('\n'))
    yield* whole(old, now, { ...place, words: [...place.words, 'order'] })
}

function* whole(before: unknown, after: unknown, { path, words }: Place): Generator<Difference> {
  if (JSON.stringify(before) !== JSON.stringify(after))
    yield { at: placeOf(path), where: words.join(', '), before, after }
}

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Ids of a list in which everything has one of its own. */
function idsOf(list: unknown[]): string[] | undefined {
  const ids = list.map((item) => (isGroup(item) ? item['id'] : undefined))
  const sound = ids.every((id) => typeof id === 'string') && new Set(ids).size === ids.length
  return sound ? ids : undefined
}

const nameOf = (item: unknown, id: string): string => {
  const name = isGroup(item) ? item['name'] : undefined
  return typeof name === 'string' && name !== '' ? name : id
}

const deeper = (place: Place, key: PropertyKey, word: string): Place => ({
  path: [...place.path, key],
  words: [...place.words, word],
})
