/**
 * Advance widths of Helvetica, in thousandths of its size, for the printable ASCII characters from
 * the space on. Source: the font metrics that Adobe published for the standard fonts of PDF
 * (Helvetica.afm, Helvetica-Bold.afm); Arial and its free twins are made to the same widths.
 */
const plain = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
  556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
  611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
  667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500,
  222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
]
const bold = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
  556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667,
  611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
  667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556,
  278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
]

/** The same of signs beyond ASCII that stand in texts: plain, bold. */
const signs: Readonly<Record<string, readonly [number, number]>> = {
  '\u00a0': [278, 278],
  µ: [556, 611],
  '°': [400, 400],
  '·': [278, 278],
  '×': [584, 584],
  '±': [584, 584],
  '–': [556, 556],
  '−': [584, 584],
  '’': [222, 278],
}

/** A character outside the table, such as one of a script that is not Latin: a full square. */
const square = 1000

const inTable = /^[ -~]*$/

/**
 * Width of a text on one line, as a part of its size. Accents add nothing to their letter; kerning,
 * which only draws letters closer, is left out.
 */
export function advance(text: string, isBold: boolean): number {
  const widths = isBold ? bold : plain
  let sum = 0
  // a sheet measures its texts by the million: letters are only taken apart where one is beyond the table
  for (const letter of inTable.test(text) ? text : text.normalize('NFD')) {
    const code = letter.codePointAt(0) ?? 0
    if (code >= 0x300 && code <= 0x36f) continue
    sum += widths[code - 32] ?? signs[letter]?.[isBold ? 1 : 0] ?? square
  }
  return sum / 1000
}
