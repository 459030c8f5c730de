import type { Train } from '../mechanics/train'
import type { DrawnAnswer } from './drawnAnswer'
import { chart, plot, type Chart, type ChartSettings, type Extent } from './chart'
import { couplingsNeed, couplingsScene, type CouplingsScene } from './couplingCards'
import { elevation, type Elevation } from './elevation'
import { machineHeads } from './machineHeads'
import type { Figures } from './figures'
import { feetNeed, feetScene, type FeetScene } from './footCards'
import { shaftEnds } from '../mechanics/shaftEnds'
import { planView, type PlanView } from './planView'
import { withinReach } from './reach'
import { machineStandings } from './standing'
import { xScale, type XScale } from './xScale'

/** All bands of a sheet on one x scale, ready to be placed. Px throughout. */
export interface SheetScene {
  /** As wide as the page allows, or as the cards need. */
  readonly width: number
  readonly scale: XScale
  readonly slots: readonly MachineSlot[]
  readonly elevation: Elevation
  readonly rise: Chart
  readonly side: Chart
  readonly feet: FeetScene
  readonly couplings: CouplingsScene
}

/** The column of one machine: from the middle of one coupling to the middle of the next. */
export interface MachineSlot {
  readonly machine: number
  readonly left: number
  readonly width: number
  /** The machine's name, as near over its casing as its neighbours allow. */
  readonly head: { readonly left: number; readonly width: number }
  /** Where the shaft of the machine itself lies: the lighter column behind all bands. */
  readonly shaft: readonly [left: number, right: number]
}

/** The train alone on its x scale: all that can be drawn before there is a plan. */
export interface TrainScene {
  readonly width: number
  readonly scale: XScale
  readonly slots: readonly MachineSlot[]
  readonly elevation: Elevation
  readonly above: PlanView
}

export interface SheetSettings {
  /** Room on the page for the drawn part of the bands. */
  readonly room: number
  readonly chosen?: number
  /** Scales to keep while something is dragged. */
  readonly kept?: { readonly rise: Extent; readonly side: Extent }
}

const leastWidth = 660
const chartHeight = 158
/** Highest that an axis may stand above the lowest feet; a short train is drawn no larger (px). */
const tallest = 108

export function sheetScene(
  train: Train,
  answer: DrawnAnswer,
  figures: Figures,
  { room, chosen, kept }: SheetSettings,
): SheetScene {
  const drawn = trainScene(train, widthFor(train, room))
  const { scale } = drawn
  return {
    ...drawn,
    rise: chartBand(train, figures, scale, { way: 'rise', chosen, extent: kept?.rise }),
    side: chartBand(train, figures, scale, { way: 'side', chosen, extent: kept?.side }),
    feet: feetScene(train, answer, scale, drawn.above),
    couplings: couplingsScene(train, answer, figures, scale),
  }
}

/** Rise or side as a band of the sheet. */
export const chartBand = (
  train: Train,
  figures: Figures,
  scale: XScale,
  settings: Omit<ChartSettings, 'height'>,
): Chart => chart(train, figures, scale, { ...settings, height: chartHeight })

/** Draws the train over a given width (px), machines to scale. */
export function trainScene(whole: Train, width: number): TrainScene {
  const { train, heights, across } = withinReach(whole)
  const all = machineStandings(train)
  const lowest = Math.min(...all.map(({ feet }) => feet))
  const highest = Math.max(...all.map((m) => Math.max(m.left, m.right)))
  const scale = xScale(train, {
    width,
    left: plot.left + 2,
    right: plot.right,
    most: tallest / Math.max(1, highest - lowest),
  })
  return {
    width,
    scale,
    slots: slotsOf(train, scale),
    elevation: elevation(train, scale, heights),
    above: planView(train, scale, across),
  }
}

/** The page's room where everything fits into it; a page that must scroll sideways has room to spare. */
export function widthFor(train: Train, room: number): number {
  const need = (levels: 1 | 2) =>
    Math.ceil(Math.max(leastWidth, feetNeed(train, levels), couplingsNeed(train)))
  return room >= need(2) ? room : need(1)
}

function slotsOf(train: Train, scale: XScale): MachineSlot[] {
  const edges = [0, ...train.couplings.map(({ mid }) => scale.at(mid)), scale.width]
  const casings = machineStandings(train).slice(0, train.machines.length)
  const heads = machineHeads(
    casings.map(({ from, to }, m) => ({
      name: train.machines[m]?.name ?? '',
      want: (scale.at(from) + scale.at(to)) / 2,
      room: (edges[m + 1] ?? scale.width) - (edges[m] ?? 0),
    })),
    scale.width,
  )
  return train.machines.map((_, machine) => {
    const from = edges[machine] ?? 0
    const head = heads[machine] ?? { left: 0, width: 0 }
    const [a, b] = shaftEnds(train, machine)
    return {
      machine,
      left: from,
      width: (edges[machine + 1] ?? scale.width) - from,
      head,
      shaft: [scale.at(a), scale.at(b)],
    }
  })
}
