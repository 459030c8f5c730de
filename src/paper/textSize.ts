import { withUnitsKept } from '../language/firmSpaces'
import { advance } from './advanceWidths'
import { print } from './print'

/**
 * How much room text takes, without a browser. The style sheet asks first for fonts that are all as
 * wide as Arial; in a wider one a page runs on over two sheets, and nothing is cut.
 */

/** mm in a printer's point. */
const point = 25.4 / 72

/** Lines that a text takes at `points`, folded to `width` mm. */
export const linesOf = (text: string, points: number, width: number, bold = false): number =>
  folds(text, width / (points * point), bold).length

/** Height of so many lines (mm). */
export const linesHeight = (
  lines: number,
  points: number,
  leading: number = print.leading,
): number => lines * points * point * leading

/** Width of a label in px; labels in drawings may be bold, so that much room is taken for all. */
export const labelWidth = (text: string, size: number): number => advance(text, true) * size

/** Folds a text, or a label, so that no line is wider than `width`, in the unit of `size`; longer words are broken. */
export const folded = (text: string, size: number, width: number, bold = true): string[] =>
  folds(text, width / size, bold)

/** Width of a text on one line (mm). */
export const textLength = (text: string, points: number, bold = false): number =>
  advance(text, bold) * points * point

/** The lines of a text folded to `width` times its size, one line at least. */
function folds(text: string, width: number, bold: boolean): string[] {
  const space = advance(' ', bold)
  const lines: string[] = []
  let line = ''
  let used = 0
  // as it is printed: a number stays with its unit
  for (const whole of withUnitsKept(text.trim()).split(/[^\S\u00a0]+/)) {
    let word = whole
    let room = advance(word, bold)
    if (line !== '' && used + space + room > width) {
      lines.push(line)
      line = ''
    }
    while (room > width) {
      const fits = fitting(word, width, bold)
      if (fits === word.length) break
      lines.push(word.slice(0, fits))
      word = word.slice(fits)
      room = advance(word, bold)
    }
    used = line === '' ? room : used + space + room
    line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line]
}

/** How many characters of a word fit one line; one at least. */
function fitting(word: string, width: number, bold: boolean): number {
  let used = 0
  let count = 0
  for (const letter of word) {
    used += advance(letter, bold)
    if (used > width && count > 0) return count
    count += letter.length
  }
  return count
}
