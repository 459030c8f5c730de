/** Most letters of a number that its box grows to: a sum longer than any that is typed in earnest is scrolled. */
const most = 40

/** A box that is wide enough for a number, however many digits it has; its usual width stays where that is enough. */
export const roomFor = (text: string): { readonly minWidth: string } => ({
  minWidth: `calc(${Math.min(text.length, most)}ch + 12px)`,
})
