import { notEngaged } from '../language/engagedWords'
import { shareText } from '../language/amounts'
import type { CouplingFacts } from '../scene/couplingFacts'
import { circle, lineMark, rect } from '../scene/drawings/marks'
import { sharePlace, shareScale, type ShareScale } from '../scene/shareScale'
import { label, type Block, type Figure, type PaperMark } from './page'
import { pxPerMm, textWidth } from './size'
import { folded } from './textSize'

/** Columns of a row (mm): the name of the state, the scale, the share in digits. */
const [names, digits] = [46, 22]
/** Heights (mm): of a row, of what stands over the rows, of the scale under them. */
const [row, head, foot] = [4.6, 5.2, 4.8]
const px = (mm: number) => mm * pxPerMm
const size = 12.6

/**
 * Every coupling and state on one scale of tolerance used, a drawing a coupling: the bar is planned, the circle as found,
 * the long line what was asked for. Nothing of it needs colour.
 * @param asked share that the plan may use, as a part of 1
 */
export function shareCharts(facts: readonly CouplingFacts[], asked: number): Block[] {
  const shares = facts.flatMap(({ rows }) =>
    rows.flatMap(({ after, asFound }) => [asFound.share, ...(after ? [after.share] : [])]),
  )
  const scale = shareScale([asked, ...shares])
  return facts.map((one) => ({ kind: 'figures', figures: [chart(one, scale, asked)] }))
}

function chart({ name, rows, apart }: CouplingFacts, scale: ShareScale, asked: number): Figure {
  const [from, length] = [px(names), px(textWidth - names - digits)]
  const at = (share: number) => from + length * sharePlace(scale, share)
  const bottom = px(head + rows.length * row)
  const words = (x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end') =>
    label(x, y, text, { size, anchor })
  const marks: PaperMark[] = [
    label(
      0,
      px(head) - 6,
      apart.length === 0
        ? name
        : `${name}; ${notEngaged}: ${apart.map((state) => state.name).join(', ')}`,
      { size, anchor: 'start', bold: true },
    ),
    ...rows.flatMap(({ name: state, after, asFound }, r): PaperMark[] => {
      const middle = px(head + (r + 0.5) * row)
      const use = after ?? asFound
      const [short = state] = folded(state, size, px(names) - 6)
      return [
        words(0, middle + 4, short === state ? state : `${short} …`, 'start'),
        rect(
          from,
          middle - 4.5,
          Math.max(1, at(use.share) - from),
          9,
          use.over ? 'hatch' : 'solid',
        ),
        ...(use.over ? [rect(from, middle - 4.5, at(use.share) - from, 9, 'outline')] : []),
        words(px(textWidth), middle + 4, use.over ? `${use.percent} OVER` : use.percent, 'end'),
      ]
    }),
    lineMark(at(1), px(head) - 2, at(1), bottom + 2, 'leader'),
    lineMark(at(asked), px(head) - 4, at(asked), bottom + 2, 'edge'),
    ...(scale.breakAt === undefined ? [] : broken(from + length * scale.breakAt, px(head), bottom)),
    // over the break: what was found a little over the limit lies right behind it
    ...rows.flatMap(({ after, asFound, moved }, r): PaperMark[] => {
      const middle = px(head + (r + 0.5) * row)
      return after && moved
        ? [
            lineMark(at(after.share), middle, at(asFound.share), middle, 'leader', '2 3'),
            circle(at(asFound.share), middle, 3.6, 'gap'),
            circle(at(asFound.share), middle, 3.6, 'after'),
          ]
        : []
    }),
    ...scale.ticks.map((tick) =>
      words(at(tick), bottom + 14, shareText(tick), tick === 0 ? 'start' : 'middle'),
    ),
  ]
  return {
    width: textWidth,
    height: head + rows.length * row + foot,
    name: `Tolerance used by ${name}, state by state: ${rows
      .map(({ name: state, after, asFound }) => `${state} ${(after ?? asFound).percent}`)
      .join(', ')}`,
    marks,
  }
}

/** Where the scale is broken: two slanted strokes over a gap. */
const broken = (x: number, top: number, bottom: number): PaperMark[] => [
  rect(x - 2, top - 2, 4, bottom - top + 4, 'gap'),
  lineMark(x - 2.5, top - 2, x - 2.5, bottom + 2, 'leader'),
  lineMark(x + 2.5, top - 2, x + 2.5, bottom + 2, 'leader'),
]
