import { path } from '../scene/drawings/marks'
import { modulesOf } from './modules'
import type { Figure } from './page'
import { pxPerMm } from './size'

/** Of a square (mm): 0.5 is read by a phone at arm's length from a worn sheet (common practice, no source). */
const square = 0.57

/** White left around, in squares, as ISO/IEC 18004 wants it. */
const quiet = 4

/** A text as a QR code, with the white that belongs around it. */
export function symbolFigure(text: string): Figure {
  const rows = modulesOf(text)
  const side = rows.length + 2 * quiet
  const columns = rows.map((_, c) => rows.map((row) => row[c] === true))
  // runs both ways: where two squares meet no printer leaves a hairline
  const across = rows.flatMap((row, r) =>
    runs(row).map(([c, length]) => `M${c + quiet} ${r + quiet}h${length}v1h-${length}z`),
  )
  const down = columns.flatMap((column, c) =>
    runs(column).flatMap(([r, length]) =>
      length > 1 ? [`M${c + quiet} ${r + quiet}h1v${length}h-1z`] : [],
    ),
  )
  return {
    width: side * square,
    height: side * square,
    name: `QR code: ${text}`,
    marks: [path([...across, ...down].join(''), 'solid')],
    enlarged: square * pxPerMm,
  }
}

/** Where dark squares follow each other: the first, and how many. */
function runs(line: readonly boolean[]): [start: number, length: number][] {
  const found: [number, number][] = []
  for (const [i, dark] of line.entries()) {
    const last = found.at(-1)
    if (!dark) continue
    if (last && last[0] + last[1] === i) last[1]++
    else found.push([i, 1])
  }
  return found
}
