import { signedDigits } from '../language/amounts'
import { minutesText } from '../language/hotCheckWords'
import { towardSide } from '../language/sides'
import { coverage95 } from '../mechanics/coverage'
import type { HotCheck } from '../mechanics/hotCheck'
import { linesAtStop, type AtStop } from '../mechanics/hotCheck/atStop'
import { lineAfter } from '../mechanics/hotCheck/cooling'
import { expectedRunning } from '../mechanics/hotCheck/movement'
import type { Train } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import { labelFree, labelLetter, type ChartFigure, type ChartLabel } from './chartFigure'
import { circle, lineMark, poly, rect, type Mark } from './drawings/marks'

/** Offset at mid-span of one direction: where it stands among the numbers of a line, and how it is drawn. */
const ways = [
  { at: 2, shift: -2, dash: undefined },
  { at: 0, shift: 2, dash: '3 3' },
] as const

/** Heights (px): of a coupling's name, of its plot, of what is written under it. */
const [head, plot, foot] = [18, 120, 20]
/** Room right of the plot, and length of the bar for what was expected (px). */
const [right, bar] = [20, 9]
/** The curve is drawn in so many straight pieces. */
const pieces = 40

/** A number of a line with its standard uncertainty (um). */
interface Told {
  readonly value: number
  readonly u: number
}

/** One coupling of a check: what was read, what it says of the stop, and what was expected. */
interface Cooled {
  readonly line: AtStop
  readonly expected: readonly number[]
}

/**
 * What was read after a stop over time (minutes), a coupling below the other on one scale: rise as dots, sideways as
 * squares, the cooling that is fitted to them as a curve, hollow what it says of the stop, each with its uncertainty 19
 * times of 20 as a stroke; beside it as a short bar what was expected of the coupling as it ran.
 * @returns undefined where nothing was read at a time after the stop
 */
export function coolingChart(
  train: Train,
  check: HotCheck,
  width: number,
): ChartFigure | undefined {
  const shown = linesAtStop(train, check)
    .filter(({ times }) => times.some(({ after }) => after > 0))
    .flatMap((line): Cooled[] => {
      const coupling = train.couplings[line.coupling]
      if (!coupling) return []
      return [{ line, expected: expectedRunning(train, coupling, line.coupling, check.state) }]
    })
  if (shown.length === 0) return undefined
  const scale = scaleOf(train, shown)
  const last = Math.max(...shown.flatMap(({ line }) => line.times.map(({ after }) => after)))
  const side = Math.max(scale.top.length, scale.bottom.length) * labelLetter + labelFree + bar
  const x = (after: number) => side + (after / last) * (width - side - right)
  const rows = shown.map((one, row) => {
    const top = row * (head + plot + foot)
    return drawn(train, one, { top, scale, x, last })
  })
  return {
    width,
    height: shown.length * (head + plot + foot),
    marks: rows.flatMap(({ marks }) => marks),
    labels: rows.flatMap(({ labels }) => labels),
    name: `${check.name}: rise and side of ${shown.length === 1 ? 'a coupling' : 'couplings'} at mid-span over ${minutesText(last)} after the stop, right machine against left, from ${scale.bottom} to ${scale.top}`,
  }
}

/** What the marks mean. */
export const coolingKey = (train: Train): string =>
  `right machine against left at mid-span; dot, solid: rise, + is up; square, dashed: sideways, + is ${towardSide(train, 1)}; hollow: carried back to the stop; upright stroke: 19 times of 20; short bar at the stop: what was expected`

interface Scale {
  readonly low: number
  readonly high: number
  readonly bottom: string
  readonly top: string
}

/** From the least to the largest of all that is shown. */
function scaleOf(train: Train, shown: readonly Cooled[]): Scale {
  const all = shown.flatMap(({ line, expected }) =>
    ways.flatMap((way) => [
      expected[way.at] ?? 0,
      ...[...readOf(line, way.at), ...stopOf(line, way.at)].flatMap(({ value, u }) => [
        value - coverage95 * u,
        value + coverage95 * u,
      ]),
    ]),
  )
  const [low, high] = [Math.min(0, ...all), Math.max(0, ...all)]
  const text = (value: number) =>
    `${signedDigits(value, train.units)} ${fineSign[train.units.fine]}`
  return { low, high: high > low ? high : low + 1, bottom: text(low), top: text(high) }
}

const readOf = ({ times }: AtStop, at: number): (Told & { after: number })[] =>
  times.map(({ after, numbers, covariance }) => ({
    after,
    value: numbers[at] ?? 0,
    u: Math.sqrt(covariance[at]?.[at] ?? 0),
  }))

/** What the readings say of the stop, where it was not read then. */
function stopOf(line: AtStop, at: number): Told[] {
  if (line.how === 'open' || line.how === 'at the stop') return []
  const { y, sy, z, sz } = line.line
  const u = Math.hypot(...line.errors.map(({ by }) => by[at] ?? 0))
  return [{ value: [y, sy, z, sz][at] ?? 0, u }]
}

interface Frame {
  readonly top: number
  readonly scale: Scale
  readonly x: (after: number) => number
  readonly last: number
}

function drawn(
  train: Train,
  { line, expected }: Cooled,
  { top, scale, x, last }: Frame,
): { readonly marks: Mark[]; readonly labels: ChartLabel[] } {
  const bottom = top + head + plot
  const y = (value: number) => bottom - ((value - scale.low) / (scale.high - scale.low)) * plot
  const stroke = (px: number, { value, u }: Told) =>
    lineMark(px, y(value - coverage95 * u), px, y(value + coverage95 * u), 'fine')
  const marks: Mark[] = [
    lineMark(x(0), y(0), x(last), y(0), 'zero'),
    lineMark(x(0), top + head, x(last), top + head, 'grid'),
    lineMark(x(0), bottom, x(last), bottom, 'grid'),
    lineMark(x(0), top + head, x(0), bottom, 'grid'),
  ]
  for (const { at, shift, dash } of ways) {
    const cooling = line.how === 'fitted' ? line.cooling : undefined
    if (cooling)
      marks.push(
        poly(
          Array.from({ length: pieces + 1 }, (_, i) => {
            const after = (last * i) / pieces
            return [x(after), y(lineAfter(cooling, after)[at] ?? 0)] as const
          }),
          'fine',
          false,
          dash,
        ),
      )
    const wanted = y(expected[at] ?? 0)
    marks.push(lineMark(x(0) - bar, wanted, x(0), wanted, 'after', dash))
    const shape = (px: number, py: number, look: 'solid' | 'outline') =>
      at === 2 ? circle(px, py, 3.2, look) : rect(px - 2.6, py - 2.6, 5.2, 5.2, look)
    for (const one of readOf(line, at))
      marks.push(
        stroke(x(one.after) + shift, one),
        shape(x(one.after) + shift, y(one.value), 'solid'),
      )
    for (const one of stopOf(line, at))
      marks.push(stroke(x(0) + shift, one), shape(x(0) + shift, y(one.value), 'outline'))
  }
  const left = x(0) - bar - labelFree
  const nought = y(0)
  const labels: ChartLabel[] = [
    {
      x: 0,
      y: top + 12,
      text: train.couplings[line.coupling]?.name ?? '',
      anchor: 'start',
      bold: true,
    },
    { x: left, y: top + head + 10, text: scale.top, anchor: 'end' },
    { x: left, y: bottom, text: scale.bottom, anchor: 'end' },
    // not written into the ends of the scale
    ...(nought > top + head + 24 && nought < bottom - 14
      ? [{ x: left, y: nought + 4, text: '0', anchor: 'end' } as const]
      : []),
    { x: x(0), y: bottom + 14, text: 'stop', anchor: 'start' },
    { x: x(last), y: bottom + 14, text: minutesText(last), anchor: 'end' },
  ]
  return { marks, labels }
}
