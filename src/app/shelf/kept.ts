/**
 * The same work, done once for each thing it is done to and kept as long as that thing is: a document
 * of the sheet never changes once it is made, and is written at every change of what stands beside it.
 */
export function memoized<Key extends object, Value>(
  work: (key: Key) => Value,
): (key: Key) => Value {
  const done = new WeakMap<Key, { readonly value: Value }>()
  return (key) => {
    const known = done.get(key)
    if (known) return known.value
    const value = work(key)
    done.set(key, { value })
    return value
  }
}
