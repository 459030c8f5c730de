/**
 * Characters that a text may hold and nobody sees, and that do something to what is around them: control
 * characters (they steer a terminal), marks of writing direction (they turn what follows around), separators of
 * lines, halves of pairs and codes that are no character (no XML may hold them).
 */
const unseen =
  // eslint-disable-next-line no-control-regex -- these are the characters that are looked for
  /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|\p{Cs}/u
const allUnseen = new RegExp(unseen, 'gu')

/** What stands where an unseen character was: the sign for a character that cannot be shown. */
const inItsPlace = '\ufffd'

/**
 * A text that is safe wherever it is shown, printed or copied: line ends are line feeds, tabs stay, every other
 * unseen character is replaced by a sign for it.
 */
export const harmless = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(allUnseen, (sign) => (sign === '\n' || sign === '\t' ? sign : inItsPlace))

/** The same on one line, for names and sentences. */
export const harmlessLine = (text: string): string => harmless(text).replace(/[\n\t]+/g, ' ')

/** JSON as it is printed: the same value, with characters that a terminal or an editor obeys written as escapes. */
export const harmlessJson = (json: string): string =>
  json.replace(allUnseen, (sign) =>
    sign === '\n' ? sign : `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )

/** The first unseen character of a text: its code as people write it, and its place from 1; undefined where all are seen. */
export function firstUnseen(
  text: string,
): { readonly code: string; readonly place: number } | undefined {
  const index = text.search(unseen)
  if (index < 0) return undefined
  const code = text.charCodeAt(index).toString(16).toUpperCase().padStart(4, '0')
  return { code: `U+${code}`, place: Array.from(text.slice(0, index)).length + 1 }
}
