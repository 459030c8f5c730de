/**
 * What is drawn next, with every part that is equal to what was drawn before replaced by that very object:
 * whoever draws sees by identity what need not be drawn again. For plain data, as it can be sent to a worker.
 */
export function unchanged<Value>(before: unknown, next: Value): Value {
  if (Object.is(before, next)) return next
  if (typeof before !== 'object' || typeof next !== 'object' || !before || !next) return next
  if (Array.isArray(next)) return Array.isArray(before) ? (list(before, next) as Value) : next
  if (Array.isArray(before)) return next
  if (next instanceof Map) return (before instanceof Map ? map(before, next) : next) as Value
  if (before instanceof Map) return next
  return fields(before as Fields, next as Fields) as Value
}

type Items = ReadonlyMap<unknown, unknown>
type Fields = Readonly<Record<string, unknown>>

// This runs at every frame of a drag: nothing is copied before a part is found that is not new.

function list(before: readonly unknown[], next: readonly unknown[]): readonly unknown[] {
  let same = before.length === next.length
  let shared: unknown[] | undefined
  for (let i = 0; i < next.length; i++) {
    const one = unchanged(before[i], next[i])
    if (!Object.is(one, before[i])) same = false
    if (!Object.is(one, next[i])) (shared ??= [...next])[i] = one
  }
  return same ? before : (shared ?? next)
}

function map(before: Items, next: Items): Items {
  let same = before.size === next.size
  const shared = new Map<unknown, unknown>()
  for (const [key, item] of next) {
    const one = unchanged(before.get(key), item)
    if (!before.has(key) || !Object.is(one, before.get(key))) same = false
    shared.set(key, one)
  }
  return same ? before : shared
}

function fields(before: Fields, next: Fields): Fields {
  const keys = Object.keys(next)
  let same = keys.length === Object.keys(before).length
  let shared: Record<string, unknown> | undefined
  for (const key of keys) {
    const [was, now] = [before[key], next[key]]
    const one = unchanged(was, now)
    if (!Object.is(one, was) || (was === undefined && !(key in before))) same = false
    if (!Object.is(one, now)) (shared ??= { ...next })[key] = one
  }
  return same ? before : (shared ?? next)
}
