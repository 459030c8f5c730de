/**
 * How much room text takes, without a browser. The style sheet asks first for fonts that are all as
 * wide as Arial; in a wider one a page runs on over two sheets, and nothing is cut.
 */

/** mm in a printer's point. */
const point = 25.4 / 72

/** Mean width of a letter of Arial as a part of its size, measured on these texts: plain 0.45, bold 0.49. */
const letter = 0.462
const boldLetter = 0.5
/** Labels in drawings are short and may be bold or in capitals: more room, as they cannot fold by themselves. */
const labelLetter = 0.56

/** Lines that a text takes at `points`, folded to `width` mm. */
export function linesOf(text: string, points: number, width: number, bold = false): number {
  const room = Math.max(1, Math.floor(width / ((bold ? boldLetter : letter) * points * point)))
  let lines = 1
  let used = 0
  for (const word of text.split(/\s+/)) {
    const size = word.length
    if (used > 0 && used + 1 + size > room) {
      lines++
      used = 0
    }
    if (size > room) {
      lines += Math.ceil(size / room) - 1
      used = size % room
    } else used += (used > 0 ? 1 : 0) + size
  }
  return lines
}

/** Height of so many lines (mm). */
export const linesHeight = (lines: number, points: number, leading = 1.28): number =>
  lines * points * point * leading

/** Width of a short label in px of its own size. */
export const labelWidth = (text: string, size: number): number => text.length * size * labelLetter

/** Folds a label so that no line is wider than `width` px; words longer than that are broken. */
export function folded(text: string, size: number, width: number): string[] {
  const room = Math.max(3, Math.floor(width / (size * labelLetter)))
  const lines: string[] = []
  let line = ''
  for (const whole of text.trim().split(/\s+/)) {
    let word = whole
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line)
      line = ''
    }
    while (word.length > room) {
      lines.push(word.slice(0, room))
      word = word.slice(room)
    }
    line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line]
}

/** Width of a text on one line (mm). */
export const textLength = (text: string, points: number, bold = false): number =>
  text.length * (bold ? boldLetter : letter) * points * point
