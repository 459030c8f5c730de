import { lineValueAt } from '../mechanics/growth'
import type { AxisLines } from '../scene/axisLines'
import type { Figures } from '../scene/figures'
import { lineMark, poly, rect, type Look, type Mark } from '../scene/drawings/marks'
import { sideNoun, upThePage } from '../language/sides'
import { stateDash } from '../scene/stateStyle'
import { toFine, toLength, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { graphScale, type GraphScale } from './graphScale'
import { label, type Figure, type PaperMark } from './page'
import { pxPerMm, textWidth } from './size'
import { folded } from './textSize'

/** Distances on paper (mm). */
const left = 15
const right = 5
const top = 6
const under = 8
const plotHeight = 44
/** Beside another one, on half the width. */
const plotHeightBeside = 38

export type GraphPlane = 'rise' | 'side'

/** One plane of the train on paper, to scale: as found, planned cold, every state, the openings it must pass; in so much width (mm). */
export function graph(
  train: Train,
  figures: Figures,
  way: GraphPlane,
  width: number = textWidth,
): { readonly figure: Figure; readonly scale: GraphScale } {
  const up = way === 'rise' ? 1 : upThePage(train)
  const { lines } = figures
  const gates = figures.gates.filter((gate) => gate.way === way)
  const [first, last] = [
    Math.min(...lines.map(({ from }) => from)),
    Math.max(...lines.map(({ to }) => to)),
  ]
  const values = [
    0,
    ...lines.flatMap((piece) =>
      axesOf(piece).flatMap((axis) => endsOf(piece).map((x) => lineValueAt(axis[way], x))),
    ),
    ...gates.flatMap(({ low, high }) => [low.value, high.value]),
  ]
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const plot = width < textWidth ? plotHeightBeside : plotHeight
  const scale = graphScale(
    train,
    { length: last - first, span: Math.max(high - low, 20) },
    { width: width - left - right, height: plot - 4 },
  )
  const middle = (low + high) / 2
  const start = left + (width - left - right - (last - first) / scale.along) / 2
  const px = (mm: number) => mm * pxPerMm
  const x = (at: number) => px(start + (at - first) / scale.along)
  const y = (value: Micrometres) =>
    px(top + plot / 2 - up * ((value - middle) / 1000) * scale.across)
  const trace = (piece: AxisLines, axis: AxisLines['found'], look: Look, dash?: string): Mark =>
    poly(
      endsOf(piece).map((at) => [x(at), y(lineValueAt(axis[way], at))] as const),
      look,
      false,
      dash,
    )
  const frame = { l: px(left), r: px(width - right), t: px(top), b: px(top + plot) }
  const names = machineLabels(train, lines, x, frame.b)
  return {
    scale,
    figure: {
      width,
      height: top + plot + under + names.extra / pxPerMm,
      name: way === 'rise' ? 'shaft lines up and down' : 'shaft lines to the sides',
      marks: [
        ...grid(train, scale, { first, last, low: middle, x, y }, frame),
        ...lines.map((piece) => trace(piece, piece.found, 'found')),
        ...lines.flatMap((piece) =>
          piece.states.map((axis, s) => trace(piece, axis, 'state', stateDash(s))),
        ),
        ...lines.flatMap((piece) =>
          piece.planned ? [trace(piece, piece.planned, 'planned')] : [],
        ),
        ...gates.flatMap((gate) => posts(x(gate.x), y(gate.low.value), y(gate.high.value), frame)),
        rect(frame.l, frame.t, frame.r - frame.l, frame.b - frame.t, 'outline'),
        label(
          frame.l + 5,
          frame.t + 15,
          way === 'rise' ? 'HIGH' : sideNoun(train, up).toUpperCase(),
          {
            anchor: 'start',
            bold: true,
            halo: true,
          },
        ),
        label(
          frame.l + 5,
          frame.b - 6,
          way === 'rise' ? 'LOW' : sideNoun(train, -up).toUpperCase(),
          {
            anchor: 'start',
            bold: true,
            halo: true,
          },
        ),
        ...names.marks,
      ],
    },
  }
}

const axesOf = ({ found, planned, states }: AxisLines) => [
  found,
  ...(planned ? [planned] : []),
  ...states,
]
const endsOf = ({ from, to }: AxisLines): number[] => [from, to]

interface Frame {
  readonly l: number
  readonly r: number
  readonly t: number
  readonly b: number
}

interface Places {
  readonly first: number
  readonly last: number
  /** The value in the middle of the drawing. */
  readonly low: Micrometres
  readonly x: (at: number) => number
  readonly y: (value: Micrometres) => number
}

function grid(train: Train, scale: GraphScale, places: Places, frame: Frame): PaperMark[] {
  const { lengthStep, valueStep } = scale
  const { x, y, first, low } = places
  const marks: PaperMark[] = []
  const reach = Math.ceil(((plotHeight / 2 + 1) * 1000) / scale.across / valueStep)
  const centre = Math.round(low / valueStep)
  for (let k = centre - reach; k <= centre + reach; k++) {
    const at = y(k * valueStep)
    if (at < frame.t - 0.5 || at > frame.b + 0.5) continue
    marks.push(
      lineMark(frame.l, at, frame.r, at, k === 0 ? 'zero' : 'grid'),
      label(frame.l - 4, at + 4.5, plain(toFine(Math.abs(k * valueStep), train.units)), {
        anchor: 'end',
        size: 13.4,
      }),
    )
  }
  const from = Math.floor(first / lengthStep) - Math.ceil((textWidth * scale.along) / lengthStep)
  for (let k = from; k < from + 400; k++) {
    const at = x(k * lengthStep)
    if (at < frame.l - 0.5 || at > frame.r + 0.5) continue
    marks.push(
      lineMark(at, frame.t, at, frame.b, 'grid'),
      label(at, frame.t - 6, plain(toLength(k * lengthStep, train.units)), { size: 13.4 }),
    )
  }
  return marks
}

const plain = (value: number): string => String(Number(value.toPrecision(6)))

/** Two posts, hatched on the forbidden side; what lies beyond the drawing is left out. */
function posts(x: number, low: number, high: number, frame: Frame): Mark[] {
  const deep = 14
  const one = (at: number, out: 1 | -1): Mark[] => {
    if (at < frame.t || at > frame.b) return []
    const end = Math.min(frame.b, Math.max(frame.t, at + out * deep))
    return [
      rect(x - 4, Math.min(at, end), 8, Math.abs(end - at), 'hatch'),
      lineMark(x - 6, at, x + 6, at, 'gate'),
    ]
  }
  const outward = low > high ? 1 : -1
  return [...one(low, outward), ...one(high, outward === 1 ? -1 : 1)]
}

/** Names under their shafts; feet as short strokes on the lower edge, flex planes as long ones. */
function machineLabels(
  train: Train,
  lines: readonly AxisLines[],
  x: (at: number) => number,
  floor: number,
): { marks: PaperMark[]; extra: number } {
  const spans = train.machines.map((_, m) => {
    const own = lines.filter(({ machine }) => machine === m)
    return [Math.min(...own.map(({ from }) => from)), Math.max(...own.map(({ to }) => to))] as const
  })
  const names = train.machines.map(({ name }, m) => {
    const [from = 0, to = 0] = spans[m] ?? []
    return folded(name, 13.4, Math.max(56, x(to) - x(from) + 6))
  })
  const most = Math.max(1, ...names.map((list) => list.length))
  return {
    extra: (most - 1) * 15,
    marks: [
      ...train.machines.flatMap((machine, m) => {
        const [from = 0, to = 0] = spans[m] ?? []
        return [
          ...(names[m] ?? []).map((text, i) =>
            label((x(from) + x(to)) / 2, floor + 22 + i * 15, text, { size: 13.4 }),
          ),
          ...[...new Set(machine.feet.map((foot) => foot.x))].map((at) =>
            lineMark(x(at), floor - 6, x(at), floor + 6, 'gate'),
          ),
        ]
      }),
      ...train.couplings.flatMap(({ p, q }) =>
        [...new Set([p, q])].map((at) => lineMark(x(at), floor - 14, x(at), floor, 'leader')),
      ),
    ],
  }
}
