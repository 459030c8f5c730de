import { tol } from '../mechanics/tolerances'
import { lineValueAt } from '../mechanics/growth'
import { handEnds, type HandEnd } from '../engine/studies/hand/handPlan'
import { fineSign, toFine, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { Axis, AxisLines } from './axisLines'
import { breakMarks } from './breakMarks'
import type { Drift } from './drift'
import type { Figures } from './figures'
import { gateMarks, type GateScene } from './gateMarks'
import { lineMark, poly, type Look, type Mark } from './drawings/marks'
import { stateDash } from './stateStyle'
import { sideName, upThePage } from '../language/sides'
import type { XScale } from './xScale'
import { yScale, type YScale } from './yScale'

/** Rise or side: shaft lines, exaggerated, and the gates they must pass. */
export interface Chart {
  readonly way: 'rise' | 'side'
  readonly height: number
  readonly marks: readonly Mark[]
  readonly gates: readonly GateScene[]
  readonly ticks: readonly { readonly y: number; readonly label: string }[]
  /** What up and down the page mean. */
  readonly up: string
  readonly down: string
  readonly ratio: number
  readonly bar: { readonly height: number; readonly label: string }
  /** Ends of shafts that a hand can carry. */
  readonly handles: readonly HandleScene[]
  /** What one px up the page is worth: + is up, or toward 3 o'clock (um). */
  readonly umPerPx: Micrometres
  /** What the scale was fitted to, so that it can be kept while something is dragged. */
  readonly extent: Extent
}

/** Lowest and highest value that a scale shows. */
export type Extent = readonly [low: Micrometres, high: Micrometres]

/** Where a machine's planned line can be taken hold of. */
export interface HandleScene {
  readonly machine: number
  readonly end: HandEnd
  readonly x: number
  readonly y: number
  /** The line's value there from the sheet's zero (um). */
  readonly value: Micrometres
}

/** Digits stand left of the drawing, the scale bar right of it (px). */
export const plot = { left: 52, right: 58 } as const

export interface ChartSettings {
  readonly way: 'rise' | 'side'
  readonly height: number
  /** A state chosen to be seen alone. */
  readonly chosen?: number | undefined
  /** What to fit the scale to instead of what is drawn. */
  readonly extent?: Extent | undefined
  /** What the scale shows at the least. */
  readonly least?: Extent | undefined
}

export function chart(
  train: Train,
  figures: Figures,
  scale: XScale,
  { way, height, chosen, extent: kept, least = [0, 0] }: ChartSettings,
): Chart {
  const up = way === 'rise' ? 1 : upThePage(train)
  const { lines, drift } = figures
  const gates = figures.gates.filter((gate) => gate.way === way)
  const fitted =
    kept ??
    extentOf([
      ...least,
      ...lines.flatMap((piece) =>
        [piece.found, ...(piece.planned ? [piece.planned] : []), ...piece.states].flatMap((axis) =>
          [piece.from, piece.to].map((x) => lineValueAt(axis[way], x)),
        ),
      ),
      ...gates.flatMap(({ low, high }) => [low.value, high.value]),
    ])
  const y = yScale(train, fitted, height, scale.perMm, up)
  const clipped = (value: number): number => Math.min(height, Math.max(0, y.at(value)))
  const trace = (piece: AxisLines, axis: Axis, look: Look, dash?: string): Mark =>
    poly(
      alongBreaks(piece, scale).map((x) => [scale.at(x), y.at(lineValueAt(axis[way], x))] as const),
      look,
      false,
      dash,
    )
  const marks: Mark[] = [
    ...y.ticks.map((tick) =>
      lineMark(
        plot.left,
        tick.y,
        scale.width - plot.right,
        tick.y,
        Math.abs(tick.value) < tol.dust ? 'zero' : 'grid',
      ),
    ),
    ...drift.flatMap((one) => {
      const own = lines.filter((piece) => piece.machine === one.machine)
      const found = own[0]?.found
      if (!found) return []
      const fan = (unsure: (point: Drift['points'][number]) => number, look: Look) => {
        if (one.points.every((point) => unsure(point) * pxPerUm(y) < 1)) return []
        const edge = (sign: 1 | -1) =>
          one.points.map(
            (p) =>
              [scale.at(p.x), clipped(lineValueAt(found[way], p.x) + sign * unsure(p))] as const,
          )
        return [poly([...edge(1), ...edge(-1).reverse()], look)]
      }
      // with growth, of the state that is shown, or of the one that is least known
      const grown = ({ grown: states }: Drift['points'][number]) =>
        chosen === undefined
          ? Math.max(0, ...states.map((state) => state[way]))
          : (states[chosen]?.[way] ?? 0)
      return [...fan((point) => point[way], 'drift'), ...fan(grown, 'drift-grown')]
    }),
    ...lines.map((piece) => trace(piece, piece.found, 'found')),
    ...lines.flatMap((piece) =>
      piece.states.flatMap((axis, s) =>
        chosen === undefined || chosen === s ? [trace(piece, axis, 'state', stateDash(s))] : [],
      ),
    ),
    ...lines.flatMap((piece) => (piece.planned ? [trace(piece, piece.planned, 'planned')] : [])),
    ...breakMarks(scale, height),
  ]
  /** Steps are round, so a tick needs no more digits than its step. */
  const plain = (value: number): string =>
    String(Number(toFine(Math.abs(value), train.units).toPrecision(6)))
  return {
    way,
    height,
    marks,
    gates: gateMarks(train, gates, scale, y, chosen),
    ticks: y.ticks.map((tick) => ({
      y: tick.y,
      label: plain(tick.value),
    })),
    up: way === 'rise' ? 'high' : sideName(train, up),
    down: way === 'rise' ? 'low' : sideName(train, -up),
    ratio: y.ratio,
    handles: handlesOf(train, figures.lines, way, (x, value) => [scale.at(x), y.at(value)]),
    umPerPx: 1 / (y.at(0) - y.at(1)),
    extent: fitted,
    bar: { height: pxPerUm(y) * y.step, label: `${plain(y.step)} ${fineSign[train.units.fine]}` },
  }
}

function handlesOf(
  train: Train,
  lines: readonly AxisLines[],
  way: 'rise' | 'side',
  place: (x: number, value: Micrometres) => readonly [number, number],
): HandleScene[] {
  return train.machines.flatMap((_, machine) => {
    const own = lines.filter((piece) => piece.machine === machine)
    const [first, last] = [own[0], own.at(-1)]
    if (!first?.planned || !last?.planned) return []
    const at: Record<HandEnd, readonly [AxisLines, number]> = {
      left: [first, first.from],
      both: [first, (first.from + last.to) / 2],
      right: [last, last.to],
    }
    return handEnds(train, machine, way).map((end) => {
      const [piece, x] = at[end]
      const value = piece.planned ? lineValueAt(piece.planned[way], x) : 0
      const [px, py] = place(x, value)
      return { machine, end, x: px, y: py, value }
    })
  })
}

const extentOf = (values: readonly Micrometres[]): Extent => [
  Math.min(...values),
  Math.max(...values),
]

const pxPerUm = (y: YScale): number => Math.abs(y.at(1) - y.at(0))

/** The ends of a piece and the edges of any break inside it, where its drawn slope changes. */
const alongBreaks = ({ from, to }: AxisLines, scale: XScale): number[] =>
  [from, ...scale.breaks.flatMap((b) => [b.from, b.to]).filter((x) => x > from && x < to), to].sort(
    (a, b) => a - b,
  )
