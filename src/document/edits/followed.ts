import { placeOf } from '../refusal'
import { pathFromPlace, valueAt, withValue, type Path } from '../place'

/**
 * Entries that are no values yet, after things were added to, taken out of or moved within lists: each
 * stays with the thing it was typed for, and goes with it.
 */
export function followed(
  entries: Readonly<Record<string, string>>,
  before: unknown,
  after: unknown,
): Readonly<Record<string, string>> {
  const places = Object.keys(entries)
  if (places.length === 0) return entries
  const next = places.flatMap((place) => {
    const path = placeAfter(pathFromPlace(place), before, after)
    return path ? [[placeOf(path), entries[place] ?? ''] as const] : []
  })
  const same = next.length === places.length && next.every(([place], i) => place === places[i])
  return same ? entries : Object.fromEntries(next)
}

/** Answers to what was asked about values go with them, too. */
export function answersFollowed<T extends { readonly record?: unknown }>(before: T, after: T): T {
  const sure = valueAt(after, surePath)
  if (!Array.isArray(sure) || sure.length === 0) return after
  const next = sure.flatMap((one: unknown) => {
    const at = valueAt(one, ['at'])
    const path = typeof at === 'string' && placeAfter(pathFromPlace(at), before, after)
    return path ? [withValue(one, ['at'], placeOf(path))] : []
  })
  const same = next.length === sure.length && next.every((one, i) => sameAt(one, sure[i]))
  return same ? after : withValue(after, surePath, next)
}

const surePath = ['record', 'sure']
const sameAt = (a: unknown, b: unknown) => valueAt(a, ['at']) === valueAt(b, ['at'])

function placeAfter(path: Path, before: unknown, after: unknown): Path | undefined {
  const out: (string | number)[] = []
  for (let i = 0; i < path.length; i++) {
    const key = path[i] ?? ''
    const was = valueAt(before, path.slice(0, i))
    const now = valueAt(after, out)
    if (!Array.isArray(was) || typeof key !== 'number') out.push(key)
    else {
      const at = indexAfter(was, key, Array.isArray(now) ? now : [])
      if (at === undefined) return undefined
      out.push(at)
    }
  }
  return out
}

/** Where an item of a list has gone: by itself, by its id, else it keeps its place in a list as long as before. */
function indexAfter(
  was: readonly unknown[],
  index: number,
  now: readonly unknown[],
): number | undefined {
  const item = was[index]
  const id = valueAt(item, ['id'])
  if (typeof item === 'object' && item !== null) {
    const same = now.indexOf(item)
    if (same >= 0) return same
    if (id !== undefined) {
      const again = now.findIndex((one) => valueAt(one, ['id']) === id)
      return again >= 0 ? again : undefined
    }
  }
  if (index >= was.length) return index - was.length + now.length
  return was.length === now.length ? index : undefined
}
