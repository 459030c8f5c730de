import { casingAbove } from '../scene/drawings/above'
import { circle, lineMark, rect } from '../scene/drawings/marks'
import { sideNoun, upThePage } from '../language/sides'
import { capital, inSentence } from '../language/names'
import type { Body, Train } from '../mechanics/train'
import { label, type Figure, type PaperMark } from './page'
import { pxPerMm, textWidth } from './size'
import { folded } from './textSize'

/** Beside wide and beside narrow cards, which are taller (mm). */
const heights = { wide: 20, narrow: 25 }
const words = 13.4

/** One machine from above as it lies on the drawing: its feet where they are, both sides and both ends by name. */
export function footMap(train: Train, index: number, cards: 'wide' | 'narrow'): Figure {
  const height = heights[cards]
  const body = train.bodies[index]
  if (!body) throw new RangeError(`no body ${index}`)
  const up = upThePage(train)
  const [wide, high] = [textWidth * pxPerMm, height * pxPerMm]
  const xs = body.feet.map(({ x }) => x)
  const ys = [...body.feet.map(({ y }) => y), body.axis.left.y, body.axis.right.y]
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)]
  const [y0, y1] = [Math.min(...ys), Math.max(...ys)]
  const along = (wide - 2 * 190) / Math.max(1, x1 - x0)
  const perMm = Math.min(along, (high - 2 * 29) / Math.max(1, y1 - y0))
  // many rows are drawn apart, so that their names have room
  const stretched = cards === 'narrow' && along > perMm
  const perX = stretched ? along : perMm
  const at = (x: number) => wide / 2 + (x - (x0 + x1) / 2) * perX
  const across = (y: number) => high / 2 - up * (y - (y0 + y1) / 2) * perMm
  const [l, r] = [at(x0), at(x1)]
  const [top, bottom] = [Math.min(across(y0), across(y1)), Math.max(across(y0), across(y1))]
  const axis = across(body.axis.left.y)
  const [far, near] = up === 1 ? [1, -1] : [-1, 1]
  const ends = { left: endLines(train, index, 'left'), right: endLines(train, index, 'right') }
  const emptier = ends.left.length <= ends.right.length ? 'left' : 'right'
  return {
    width: textWidth,
    height,
    name: `${body.name} from above`,
    marks: [
      rect(l - 16, top - 11, r - l + 32, bottom - top + 22, 'outline', 3),
      ...casing(body, l, r, axis, (bottom - top) / 2),
      lineMark(l - 40, axis, r + 40, axis, 'centre'),
      ...body.feet.flatMap(({ id, x, y }): PaperMark[] => {
        const [px, py] = [at(x), across(y)]
        const end = x === x0 ? 'end' : 'start'
        return [
          rect(px - 8, py - 8, 16, 16, 'body'),
          circle(px, py, 2.2, 'solid'),
          label(px + (end === 'end' ? -24 : 24), py + 5, id, {
            size: 15,
            bold: true,
            anchor: end,
            halo: true,
          }),
        ]
      }),
      sideLabel(train, far, wide / 2, 13),
      label(
        emptier === 'left' ? 0 : wide,
        high - 5,
        stretched ? 'from above, stretched' : 'from above',
        {
          anchor: emptier === 'left' ? 'start' : 'end',
        },
      ),
      sideLabel(train, near, wide / 2, high - 5),
      ...endWords(ends.left, 'left', 0, high / 2),
      ...endWords(ends.right, 'right', wide, high / 2),
    ],
  }
}

function casing(body: Body, l: number, r: number, axis: number, half: number): PaperMark[] {
  if (body.kind === 'skid') return []
  const room = Math.max(10, half * 0.62)
  return body.role === 'gearbox'
    ? [rect(l, axis - room, r - l, 2 * room, 'shade', 4)]
    : casingAbove(body.role, { l: l - 10, r: r + 10, axis, half: room })
}

const sideLabel = (train: Train, y: number, x: number, at: number) =>
  label(x, at, sideWords(train, y).toUpperCase(), { size: 15, bold: true })

/** "stairs side, 3 o'clock"; the hour alone where the file names no side. */
function sideWords(train: Train, y: number): string {
  const hour = y > 0 ? "3 o'clock" : "9 o'clock"
  const noun = sideNoun(train, y)
  return /^\d/.test(noun) ? `${hour} side` : `${noun} side, ${hour}`
}

/** An end by name, and what lies beyond it. */
function endLines(train: Train, index: number, end: 'left' | 'right'): string[] {
  const heading = `${capital(end)} end`
  if (train.bodies[index]?.kind === 'skid') return [heading]
  const neighbour = train.machines[index + (end === 'left' ? -1 : 1)]
  const text = neighbour ? `toward ${inSentence(neighbour.name)}` : 'free end'
  return [heading, ...folded(text, words, 130)]
}

function endWords(
  lines: readonly string[],
  end: 'left' | 'right',
  x: number,
  y: number,
): PaperMark[] {
  // under three lines may stand the words "from above", which want their own
  const middle = lines.length > 2 ? y - 6 : y
  return lines.map((line, i) =>
    label(x, middle + (i - (lines.length - 1) / 2) * 17, line, {
      size: words,
      anchor: end === 'left' ? 'start' : 'end',
      bold: i === 0,
    }),
  )
}
