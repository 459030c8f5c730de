import { tol } from '../mechanics/tolerances'
import { circle, lineMark, rect } from '../scene/drawings/marks'
import { label, type Figure, type PaperMark } from './page'
import { pxPerMm } from './size'

/** A reading at an hour as text; an empty text is a box to write in. */
export interface AtHour {
  readonly hour: number
  readonly text: string
}

const width = 44
const height = 44
const digits = 14.5
const box = { width: 42, height: 25 }

/** True where readings stand far enough apart to be written around a clock face. */
export function fitsClock(hours: readonly number[]): boolean {
  const sorted = [...hours].sort((a, b) => a - b)
  return sorted.every((hour, i) => {
    const next = sorted[i + 1] ?? (sorted[0] ?? 0) + 12
    return sorted.length < 2 || next - hour >= 1.5 - tol.dust
  })
}

/** A coupling as seen from the stated end: readings stand where they are read. */
export function clockFace(caption: string, readings: readonly AtHour[]): Figure {
  const [wide, high] = [width * pxPerMm, height * pxPerMm]
  const [x, y] = [wide / 2, high / 2]
  const r = 34
  const out = 54
  const place = (hour: number, radius: number) => {
    const angle = (hour * Math.PI) / 6
    return { x: x + radius * 1.06 * Math.sin(angle), y: y - radius * Math.cos(angle) }
  }
  const quarters = [12, 3, 6, 9]
  return {
    width,
    height,
    name: caption,
    caption,
    marks: [
      circle(x, y, r, 'edge'),
      circle(x, y, 2, 'solid'),
      ...readings.flatMap(({ hour }): PaperMark[] => {
        const [a, b] = [place(hour, r - 4), place(hour, r + 4)]
        return [lineMark(a.x, a.y, b.x, b.y, 'edge')]
      }),
      ...quarters.map((hour) => {
        const at = place(hour, r - 13)
        return label(at.x, at.y + 4.5, String(hour), { size: 13.4 })
      }),
      ...readings.flatMap(({ hour, text }): PaperMark[] => {
        const at = place(hour, out + (text === '' ? 1 : 2))
        return text === ''
          ? [rect(at.x - box.width / 2, at.y - box.height / 2, box.width, box.height, 'outline')]
          : [label(at.x, at.y + 5, text, { size: digits, bold: true })]
      }),
    ],
  }
}
