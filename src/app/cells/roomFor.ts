/** Most letters of a number that its box grows to: a sum longer than any that is typed in earnest is scrolled. */
const most = 40
/** The same of a text: an id is seen whole, a sentence is scrolled. */
export const mostOfText = 16

/** A box that is wide enough for what stands in it; its usual width stays where that is enough. */
export const roomFor = (text: string, letters = most): { readonly minWidth: string } => ({
  minWidth: `calc(${Math.min(text.length, letters)}ch + 12px)`,
})
