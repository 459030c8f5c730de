/** Width of a usual letter, where a digit has 1. */
const letter = 17 / 20
/** Most letters of a number that its box grows to: a sum longer than any that is typed in earnest is scrolled. */
const most = 40
/** The same of a text: an id is seen whole, a sentence is scrolled. */
export const mostOfText = 16

/** A box that is wide enough for what stands in it; its usual width stays where that is enough. */
export const roomFor = (text: string, letters = most): { readonly minWidth: string } => ({
  minWidth: `calc(${Math.min(text.length, letters)}ch + 12px)`,
})

/** The same for words that stand in place of a number: their letters are narrower than digits. */
export const roomForWords = (words: string): { readonly minWidth: string } => ({
  minWidth: `calc(${(Math.min(words.length, most) * letter).toFixed(1)}ch + 12px)`,
})
