/**
 * Fetches a part of a program once, for all who ask. They wait for one promise, so that they go on in the order in which
 * they asked; two fetches of one part may end the other way round. Where it could not be fetched the next one tries again.
 */
export function fetchedOnce<Part>(fetch: () => Promise<Part>): () => Promise<Part> {
  let fetched: Promise<Part> | undefined
  return () =>
    (fetched ??= fetch().catch((error: unknown) => {
      fetched = undefined
      throw error
    }))
}
