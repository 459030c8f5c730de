/** Where a value stands in a document: keys and indices from the top. */
export type Path = readonly (string | number)[]

/** The keys and indices of a place as `placeOf` writes it. */
export function pathFromPlace(place: string): Path {
  const parts = place.matchAll(/([A-Za-z_$][\w$]*)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]/g)
  return [...parts].map(([, name, index, text]) => {
    if (name !== undefined) return name
    return index === undefined ? (JSON.parse(text ?? '""') as string) : Number(index)
  })
}

/** The value at a path of a plain JSON document; undefined where there is nothing. */
export function valueAt(document: unknown, path: Path): unknown {
  let value: unknown = document
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined
    value = (value as Record<string | number, unknown>)[key]
  }
  return value
}

/**
 * The document with another value at a path; everything beside the path is shared with the old one.
 * Objects that are missing on the way are made. Undefined takes the key away, and objects that this
 * leaves empty with it, up to the nearest array; keys keep their order, new ones come last.
 */
export function withValue<T>(document: T, path: Path, value: unknown): T {
  return replaced(document, path, value) as T
}

function replaced(node: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  if (Array.isArray(node)) {
    const list = [...(node as unknown[])]
    list[Number(key)] = replaced(list[Number(key)], rest, value)
    return list
  }
  const fields = { ...(typeof node === 'object' ? (node as Record<string, unknown>) : {}) }
  const next = replaced(fields[key], rest, value)
  if (next === undefined || (value === undefined && isEmpty(next) && rest.length > 0))
    return without(fields, String(key))
  fields[key] = next
  return fields
}

const isEmpty = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.keys(value).length === 0

const without = (fields: Record<string, unknown>, key: string): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([name]) => name !== key))

/** The document with a list changed: a missing list counts as empty, an optional one that ends empty is kept. */
export function withList<T>(
  document: T,
  path: Path,
  change: (list: readonly unknown[]) => readonly unknown[],
): T {
  const now = valueAt(document, path)
  return withValue(document, path, change(Array.isArray(now) ? now : []))
}

/** The list with one more item at an index. */
export const inserted = <T>(list: readonly T[], index: number, item: T): T[] => [
  ...list.slice(0, index),
  item,
  ...list.slice(index),
]

/** The list without the item at an index. */
export const removed = <T>(list: readonly T[], index: number): T[] =>
  list.filter((_, i) => i !== index)

/** The list with the item at one index moved to another. */
export function moved<T>(list: readonly T[], from: number, to: number): T[] {
  const item = list[from]
  return item === undefined ? [...list] : inserted(removed(list, from), to, item)
}
