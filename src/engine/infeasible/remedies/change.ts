import type { TrainDocument } from '../../../document/schema'

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

/** One field of a train file before and after; null where it is not there. */
export interface FieldChange {
  /** Place in the document, such as `machines[1].feet[0].hole.clearance`. */
  at: string
  from: Json
  to: Json
}

/** The field at a place of a document; null where it is not there. */
export function fieldAt(document: unknown, at: string): Json {
  let here: unknown = document
  for (const key of keysOf(at)) {
    if (typeof here !== 'object' || here === null) return null
    here = (here as Record<string, unknown>)[key]
  }
  return (here ?? null) as Json
}

/**
 * A copy of a document with fields changed; objects on the way to a new field are made.
 * @throws RangeError where a place leads through something that is no object
 */
export function changed(document: TrainDocument, changes: readonly FieldChange[]): TrainDocument {
  const copy = JSON.parse(JSON.stringify(document)) as Json
  for (const { at, to } of changes) {
    const keys = keysOf(at)
    const last = keys.pop() ?? ''
    let here = copy
    for (const key of keys) {
      if (typeof here !== 'object' || here === null) throw new RangeError(`no place ${at}`)
      const inside = here as Record<string, Json>
      here = inside[key] ??= {}
    }
    if (typeof here !== 'object' || here === null) throw new RangeError(`no place ${at}`)
    const inside = here as Record<string, Json>
    if (to === null) Reflect.deleteProperty(inside, last)
    else inside[last] = to
  }
  return copy as unknown as TrainDocument
}

/** A copy of the train file as the remedy changes it, for trying side by side or solving elsewhere. */
export const applyRemedy = (
  document: TrainDocument,
  { change }: { readonly change: readonly FieldChange[] },
): TrainDocument => changed(document, change)

const keysOf = (at: string): string[] => at.split(/[.[\]]+/).filter((key) => key !== '')
