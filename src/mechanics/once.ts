/** The same work, done when it is first asked for and not again. */
export function once<Value>(work: () => Value): () => Value {
  let done: { readonly value: Value } | undefined
  return () => (done ??= { value: work() }).value
}
