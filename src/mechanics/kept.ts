/**
 * The same work, done once for each thing it is done to and kept as long as that thing is. Trains and scales
 * never change once they are made; a plan that is dragged asks for what depends on them alone at every frame.
 */
export function kept<Key extends object, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const done = new WeakMap<Key, { readonly value: Value }>()
  return (key) => {
    const known = done.get(key)
    if (known) return known.value
    const value = work(key)
    done.set(key, { value })
    return value
  }
}
