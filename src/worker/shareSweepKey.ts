import type { TrainDocument } from '../document/schema'

/**
 * Tells documents apart but for the share asked for, which is what a point dragged along the trade-off
 * changes. The order of fields counts: what is compared must come from the same hands.
 */
export function alongKey(document: object): string {
  const plan = (document as { readonly plan?: object }).plan
  return JSON.stringify({ ...document, plan: { ...plan, share: undefined } })
}

/** Whether two documents that came from one by edits differ in nothing but the share, seen without looking deep. */
export function sameButShare(a: TrainDocument, b: TrainDocument): boolean {
  if (a === b) return true
  if (!a.plan || !b.plan) return false
  return (
    sameFields({ ...a, plan: undefined }, { ...b, plan: undefined }) &&
    sameFields({ ...a.plan, share: undefined }, { ...b.plan, share: undefined })
  )
}

/** The same values in the same order, as the key compares them. */
function sameFields(a: object, b: object): boolean {
  const [as, bs] = [Object.entries(a), Object.entries(b)]
  return (
    as.length === bs.length &&
    as.every(([name, value], i) => bs[i]?.[0] === name && Object.is(bs[i][1], value))
  )
}
