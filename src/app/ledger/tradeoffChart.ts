import {
  Chart,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  type ChartConfiguration,
  type Plugin,
} from 'chart.js'
import type { Tradeoff } from '../../engine/tradeoff/tradeoff'
import { costAt } from '../../engine/sheet/marginWords'
import { shareText } from '../../engine/units/format'

Chart.register(LineController, LineElement, PointElement, LinearScale)

/** What the curve is drawn from; read anew at each drawing. */
export interface Picture {
  readonly tradeoff: Tradeoff
  readonly share: number
  /** Axis of shares. */
  readonly from: number
  readonly to: number
}

/** Where the plot lies on the canvas (px). */
export interface Plot {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

interface Inks {
  ink: string
  soft: string
  hair: string
  plum: string
  paper: string
}

/** Width (px) that the words in the hatched zone need. */
const roomForWords = 56

const font = { family: "'Source Sans 3 Variable', 'Segoe UI', sans-serif", size: 12 }
const css = (weight: number) => `${weight} ${font.size}px ${font.family}`

function inks(): Inks {
  const style = getComputedStyle(document.documentElement)
  const of = (name: string) => style.getPropertyValue(name).trim()
  return {
    ink: of('--ink'),
    soft: of('--soft'),
    hair: of('--hair'),
    plum: of('--plum'),
    paper: of('--paper'),
  }
}

/** Draws the curve; the point of the plan and all words are drawn over it. */
export function tradeoffChart(
  canvas: HTMLCanvasElement,
  picture: () => Picture,
  placed: (plot: Plot) => void,
): { redraw: () => void; recolour: () => void; destroy: () => void } {
  let colours = inks()
  const marks: Plugin<'line'> = {
    id: 'marks',
    afterLayout: ({ chartArea, scales }) => {
      const { from, to } = picture()
      const x = scales['x']
      if (!x) return
      placed({
        left: x.getPixelForValue(from),
        right: x.getPixelForValue(to),
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
  }
  const chart = new Chart(canvas, { ...configuration(picture(), colours), plugins: [marks] })
  return {
    redraw: () => {
      chart.draw()
    },
    recolour: () => {
      colours = inks()
      chart.options = configuration(picture(), colours).options ?? {}
      const { data } = configuration(picture(), colours)
      chart.data = data
      chart.update('none')
    },
    destroy: () => {
      chart.destroy()
    },
  }
}

function configuration(
  { tradeoff, from, to }: Picture,
  { ink, soft, hair }: Inks,
): ChartConfiguration<'line', { x: number; y: number }[]> {
  const points = tradeoff.points.map(({ share, cost }) => ({ x: share, y: cost }))
  const most = Math.max(...points.map(({ y }) => y), 1e-9)
  if (tradeoff.standing < to) points.push({ x: to, y: 0 })
  const ticks = { color: soft, font }
  return {
    type: 'line',
    data: {
      datasets: [{ data: points, borderColor: ink, borderWidth: 2.4, pointRadius: 0, tension: 0 }],
    },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      parsing: false,
      events: [],
      layout: { padding: { right: 12, top: 18 } },
      scales: {
        x: {
          type: 'linear',
          min: from,
          max: to,
          grid: { display: false },
          border: { color: soft },
          ticks: {
            ...ticks,
            maxTicksLimit: 6,
            ...(to - from < 0.9 && { stepSize: 0.1 }),
            maxRotation: 0,
            callback: (value) => shareText(Number(value)),
          },
        },
        y: {
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
      },
    },
  }
}

/** Hatched from where the first error loses the plan. */
function drawZone({ ctx, chartArea, scales }: Chart, picture: Picture, inked: Inks): void {
  const x = scales['x']
  if (!x) return
  const left = x.getPixelForValue(picture.tradeoff.noRoom)
  const right = x.getPixelForValue(Math.min(1, picture.to))
  const { top, bottom } = chartArea
  ctx.save()
  ctx.beginPath()
  ctx.rect(left, top, right - left, bottom - top)
  ctx.clip()
  ctx.strokeStyle = inked.soft
  ctx.globalAlpha = 0.5
  ctx.lineWidth = 1
  ctx.beginPath()
  for (let x = left - (bottom - top); x < right; x += 7) {
    ctx.moveTo(x, bottom)
    ctx.lineTo(x + (bottom - top), top)
  }
  ctx.stroke()
  ctx.restore()
}

function drawMarks(chart: Chart, { tradeoff, share, from, to }: Picture, inked: Inks): void {
  const { ctx, chartArea, scales } = chart
  const x = scales['x']
  const y = scales['y']
  if (!x || !y) return
  const { top, bottom, right } = chartArea
  ctx.save()
  const whole = x.getPixelForValue(Math.min(1, to))
  const zone = whole - x.getPixelForValue(tradeoff.noRoom)
  if (zone > roomForWords)
    words(ctx, ['no room', 'for error'], whole - zone / 2, bottom - 20, inked)
  const stroke = (at: number, label: string, colour: string, double: boolean) => {
    const px = x.getPixelForValue(at)
    ctx.strokeStyle = colour
    ctx.lineWidth = 1.6
    ctx.setLineDash(double ? [] : [4, 3])
    ctx.beginPath()
    for (const shift of double ? [-4, 0] : [0]) {
      ctx.moveTo(px + shift, top - 2)
      ctx.lineTo(px + shift, bottom)
    }
    ctx.stroke()
    ctx.setLineDash([])
    ctx.font = css(600)
    const half = ctx.measureText(label).width / 2
    const middle = Math.min(Math.max(px, chartArea.left + half), right - half)
    text(ctx, label, middle, top - 8, colour, inked.paper)
  }
  if (tradeoff.floor > 1e-6 && tradeoff.floor >= from && tradeoff.floor <= to)
    stroke(tradeoff.floor, `floor ${shareText(tradeoff.floor)}`, inked.plum, true)
  if (tradeoff.standing >= from && tradeoff.standing <= to)
    stroke(tradeoff.standing, `as found ${shareText(tradeoff.standing)}`, inked.ink, false)
  const cost = costAt(tradeoff, share)
  const px = x.getPixelForValue(share)
  if (cost === undefined) cross(ctx, px, bottom - 8, inked)
  else ring(ctx, px, y.getPixelForValue(cost), inked)
  ctx.restore()
}

/** The plan: a ring with a dot, on a line down to its share. */
function ring(ctx: CanvasRenderingContext2D, x: number, y: number, { ink, paper }: Inks): void {
  ctx.beginPath()
  ctx.arc(x, y, 7.5, 0, 2 * Math.PI)
  ctx.fillStyle = paper
  ctx.fill()
  ctx.strokeStyle = ink
  ctx.lineWidth = 2.6
  ctx.stroke()
  ctx.beginPath()
  ctx.arc(x, y, 2, 0, 2 * Math.PI)
  ctx.fillStyle = ink
  ctx.fill()
}

/** A share that no plan reaches: crossed out, in words. */
function cross(ctx: CanvasRenderingContext2D, x: number, y: number, inked: Inks): void {
  ctx.strokeStyle = inked.plum
  ctx.lineWidth = 2.6
  ctx.beginPath()
  for (const way of [1, -1]) {
    ctx.moveTo(x - 6, y - 6 * way)
    ctx.lineTo(x + 6, y + 6 * way)
  }
  ctx.stroke()
  ctx.font = css(600)
  const half = ctx.measureText('no plan').width / 2
  text(ctx, 'no plan', Math.max(x, half + 40), y - 16, inked.plum, inked.paper)
}

function words(
  ctx: CanvasRenderingContext2D,
  lines: readonly string[],
  x: number,
  y: number,
  { ink, paper }: Inks,
): void {
  ctx.font = css(600)
  lines.forEach((line, i) => {
    text(ctx, line, x, y + 14 * i, ink, paper)
  })
}

/** Words over line work stand on a rim of paper. */
function text(
  ctx: CanvasRenderingContext2D,
  line: string,
  x: number,
  y: number,
  ink: string,
  paper: string,
): void {
  ctx.textAlign = 'center'
  ctx.textBaseline = 'middle'
  ctx.lineJoin = 'round'
  ctx.strokeStyle = paper
  ctx.lineWidth = 5
  ctx.strokeText(line, x, y)
  ctx.fillStyle = ink
  ctx.fillText(line, x, y)
}
