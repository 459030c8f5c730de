import { firm, withUnitsKept } from '../language/firmSpaces'
import { harmless } from '../language/harmless'

/** Width of the text sheet: what a terminal and a mail show without folding. */
export const sheetWidth = 80

/** The lines of a sheet as one text, with nothing in it that steers a terminal or turns what follows around. */
export const sheetText = (lines: readonly string[]): string => harmless(lines.join('\n'))

/** Folds text at spaces, never between a number and its unit, and prints firm spaces as plain ones; words longer than a line are broken. */
export function fold(text: string, width: number): string[] {
  return foldWords(withUnitsKept(text).split(/[ \t\r\n]+/), width).map((line) =>
    line.replaceAll(firm, ' '),
  )
}

function foldWords(words: readonly string[], width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of words.filter((part) => part !== '')) {
    if (line !== '' && length(line) + 1 + length(word) > width) {
      lines.push(line)
      line = ''
    }
    const pieces = broken(word, width)
    const rest = pieces.pop() ?? ''
    lines.push(...pieces)
    line = line === '' ? rest : `${line} ${rest}`
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line]
}

/** A word in pieces of at most so many characters; in one where it is no longer. */
function broken(word: string, width: number): string[] {
  if (length(word) <= width) return [word]
  const signs = Array.from(word.normalize('NFC'))
  return Array.from({ length: Math.ceil(signs.length / width) }, (_, i) =>
    signs.slice(i * width, (i + 1) * width).join(''),
  )
}

/** A paragraph behind a lead such as "  - ", its further lines hanging under the first. */
export function paragraph(text: string, lead = '', hang = lead.length): string[] {
  const margin = ' '.repeat(hang)
  return fold(text, sheetWidth - Math.max(lead.length, hang)).map((line, i) =>
    `${i === 0 ? lead.padEnd(hang) : margin}${line}`.trimEnd(),
  )
}

/** A heading with what it is about, and the blank line before it. */
export const heading = (title: string, about = ''): string[] => [
  '',
  ...paragraph(about === '' ? title : `${title}: ${about}`),
]

export interface TextColumn {
  readonly head: string
  readonly align?: 'left' | 'right'
}

/** Narrowest that a column is squeezed to before its words are broken. */
const narrowest = 6
const gutter = 2

/** A table that never leaves the sheet: columns too wide for it fold their cells. */
export function table(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  indent = 2,
): string[] {
  const widths = columns.map(({ head }, c) =>
    Math.min(
      sheetWidth,
      rows.reduce((most, row) => Math.max(most, length(row[c] ?? '')), length(head)),
    ),
  )
  const room = sheetWidth - indent - gutter * (columns.length - 1)
  const taken = () => widths.reduce((a, b) => a + b, 0)
  while (taken() > room) {
    const widest = widths.indexOf(Math.max(...widths))
    if ((widths[widest] ?? 0) <= narrowest) break
    widths[widest] = (widths[widest] ?? 0) - 1
  }
  const heads = columns.map(({ head }) => head)
  const all = heads.some((head) => head !== '') ? [heads, ...rows] : rows
  return all.flatMap((row) => tableRow(columns, widths, row, indent))
}

function tableRow(
  columns: readonly TextColumn[],
  widths: readonly number[],
  row: readonly string[],
  indent: number,
): string[] {
  const cells = columns.map((_, c) => fold(row[c] ?? '', widths[c] ?? narrowest))
  const height = Math.max(...cells.map((lines) => lines.length))
  return Array.from({ length: height }, (_, i) =>
    (
      ' '.repeat(indent) +
      columns
        .map(({ align }, c) => {
          const line = cells[c]?.[i] ?? ''
          const space = ' '.repeat(Math.max(0, (widths[c] ?? 0) - length(line)))
          return align === 'right' ? space + line : line + space
        })
        .join(' '.repeat(gutter))
    ).trimEnd(),
  )
}

/** Texts without an accent or a sign beyond the basic plane: most by far, and one character a letter. */
const plain = /^[ -\u024f\u2000-\u20cf\u2100-\u22ff]*$/

/** Characters as they stand in a row, accents joined to their letters. */
const length = (text: string): number =>
  plain.test(text) ? text.length : Array.from(text.normalize('NFC')).length
