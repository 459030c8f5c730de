import { tol } from '../../mechanics/tolerances'
import {
  Chart,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  type ChartConfiguration,
  type Plugin,
} from 'chart.js'
import type { ChanceAlong } from '../../engine/chanceAlong'
import { costAt } from '../../text/marginWords'
import { shareText } from '../../language/amounts'
import { inUnits } from '../../json/inUnits'
import { font, inks, type Inks } from './chartInks'
import { drawMarks, drawPoint, drawZone, type Picture } from './curveMarks'
import { axisEnds, axisPlace, type ShareAxis } from './shareAxis'

Chart.register(LineController, LineElement, PointElement, LinearScale)

/** Where the plot lies on the canvas (px). */
export interface Plot {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Draws the curve; the point of the plan and all words are drawn over it. */
export function tradeoffChart(
  canvas: HTMLCanvasElement,
  picture: () => Picture,
  placed: (plot: Plot) => void,
): {
  /** Draws the point anew. */
  redraw: () => void
  /** Draws all of it anew. */
  anew: () => void
  /** The same in the colours that the page has now. */
  recolour: () => void
  destroy: () => void
} {
  let colours = inks()
  const under = stillCanvas()
  const marks: Plugin<'line'> = {
    id: 'marks',
    afterLayout: ({ chartArea, scales }) => {
      const x = scales['x']
      if (!x) return
      placed({
        left: x.getPixelForValue(0),
        right: x.getPixelForValue(1),
        top: chartArea.top,
        bottom: chartArea.bottom,
      })
    },
    beforeDatasetsDraw: (chart) => {
      drawZone(chart, picture(), colours)
    },
    afterDatasetsDraw: (chart) => {
      drawMarks(chart, picture(), colours)
    },
    afterDraw: (chart) => {
      under.take(canvas)
      drawPoint(chart, picture(), colours)
    },
  }
  const chart = new Chart(canvas, { ...configuration(picture(), colours), plugins: [marks] })
  const anew = (): void => {
    const { options, data } = configuration(picture(), colours)
    chart.options = options ?? {}
    chart.data = data
    chart.update('none')
  }
  return {
    redraw: () => {
      under.put(canvas)
      drawPoint(chart, picture(), colours)
    },
    recolour: () => {
      colours = inks()
      anew()
    },
    anew,
    destroy: () => {
      chart.destroy()
    },
  }
}

/** A copy of all that stays while the point is dragged. */
function stillCanvas() {
  const copy = document.createElement('canvas')
  return {
    take: (canvas: HTMLCanvasElement): void => {
      copy.width = canvas.width
      copy.height = canvas.height
      if (canvas.width > 0 && canvas.height > 0) copy.getContext('2d')?.drawImage(canvas, 0, 0)
    },
    put: (canvas: HTMLCanvasElement): void => {
      const pen = canvas.getContext('2d')
      if (!pen || copy.width === 0 || copy.height === 0) return
      pen.save()
      pen.resetTransform()
      pen.clearRect(0, 0, canvas.width, canvas.height)
      pen.drawImage(copy, 0, 0)
      pen.restore()
    },
  }
}

function configuration(
  picture: Picture,
  { ink, soft, hair }: Inks,
): ChartConfiguration<'line', { x: number; y: number }[]> {
  const { axis, along } = picture
  const points = curveOn(picture)
  const most = Math.max(...points.map(({ y }) => y), tol.dust)
  const ticks = { color: soft, font }
  return {
    type: 'line',
    data: {
      datasets: [
        { data: points, borderColor: ink, borderWidth: 2.4, pointRadius: 0, tension: 0 },
        ...(along.length > 0 ? chanceLines(picture, soft) : []),
      ],
    },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      events: [],
      layout: { padding: { right: 14, top: 30 } },
      scales: {
        x: {
          type: 'linear',
          min: 0,
          max: 1,
          grid: { display: false },
          border: { color: soft },
          afterBuildTicks: (scale) => {
            scale.ticks = axis.ticks.map((share) => ({
              value: axisPlace(axis, share),
              label: shareText(share),
            }))
          },
          ticks: { ...ticks, autoSkip: false, maxRotation: 0, callback: (_, i) => label(axis, i) },
        },
        y: {
          stack: 'shares',
          stackWeight: 5,
          // over the chances: what weighs more is laid first, from the top
          weight: 1,
          min: 0,
          max: most * 1.12,
          grid: { color: hair },
          border: { color: soft },
          ticks: {
            ...ticks,
            maxTicksLimit: 5,
            includeBounds: false,
            callback: (value) => String(Number(Number(value).toPrecision(6))),
          },
        },
        ...(along.length > 0 && { chance: chanceScale(ticks, hair, soft) }),
      },
    },
  }
}

/** Chances under the costs: done blind a line, read again and trimmed a dotted one. */
function chanceLines({ along, axis }: Picture, soft: string) {
  const line = (of: (one: ChanceAlong) => number, dash: number[]) => ({
    data: along.map((one) => ({ x: axisPlace(axis, one.share), y: of(one) })),
    yAxisID: 'chance',
    borderColor: soft,
    borderDash: dash,
    borderWidth: 1.8,
    pointRadius: 0,
    tension: 0,
  })
  return [line(({ all }) => all, []), line(({ reread }) => reread, [2, 3])]
}

/** From none to all draws, in a strip of its own. */
const chanceScale = (ticks: { color: string; font: typeof font }, grid: string, edge: string) => ({
  stack: 'shares',
  stackWeight: 2.4,
  min: 0,
  // room between its highest tick and the lowest of the costs
  max: 1.35,
  grid: { color: grid },
  border: { color: edge },
  afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
    scale.ticks = [0, 0.5, 1].map((value) => ({ value }))
  },
  ticks: { ...ticks, callback: (value: string | number) => shareText(Number(value)) },
})

const label = ({ ticks }: ShareAxis, i: number): string => shareText(ticks[i] ?? 0)

/** Corners on the axis, with one more where its scale changes. */
function curveOn({ tradeoff, axis, units }: Picture): { x: number; y: number }[] {
  const { points, standing } = tradeoff
  const [, end] = axisEnds(axis)
  const change = axis.stretches[0]?.shares[1] ?? end
  const shares = [...points.map(({ share }) => share), change, ...(standing < end ? [end] : [])]
  return shares
    .filter((share) => share >= tradeoff.floor)
    .sort((a, b) => a - b)
    .map((share) => ({
      x: axisPlace(axis, share),
      y: inUnits(costAt(tradeoff, share) ?? 0, 'fine', units),
    }))
}
