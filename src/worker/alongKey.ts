/**
 * Tells documents apart but for the share asked for, which is what a point dragged along the trade-off
 * changes. The order of fields counts: what is compared must come from the same hands.
 */
export function alongKey(document: object): string {
  const plan = (document as { readonly plan?: object }).plan
  return JSON.stringify({ ...document, plan: { ...plan, share: undefined } })
}
