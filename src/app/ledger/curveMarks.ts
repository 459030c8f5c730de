import { bestShareText } from '../../language/roundedAmounts'
import { tol } from '../../mechanics/tolerances'
import type { Chart } from 'chart.js'
import type { ChanceAlong } from '../../engine/chanceAlong'
import type { Tradeoff } from '../../engine/studies/tradeoff/tradeoff'
import { inUnits } from '../../json/inUnits'
import type { DocumentUnits } from '../../mechanics/units'
import { costAt } from '../../text/marginWords'
import { shareText } from '../../language/amounts'
import { css, type Inks } from './chartInks'
import { changeOf, axisPlace, type ShareAxis } from './shareAxis'

/** What the curve is drawn from; read anew at each drawing. */
export interface Picture {
  readonly tradeoff: Tradeoff
  readonly share: number
  readonly axis: ShareAxis
  /** Chances along it, under the costs; none while they are not known. */
  readonly along: readonly ChanceAlong[]
  /** Units that its costs are told in. */
  readonly units: DocumentUnits
}

/** Width (px) that the words in the hatched zone need, along it and on end. */
const roomForWords = { along: 56, onEnd: 17 }

/** Hatched from where the first error loses the plan. */
export function drawZone({ ctx, chartArea, scales }: Chart, picture: Picture, inked: Inks): void {
  const x = scales['x']
  if (!x) return
  const left = x.getPixelForValue(axisPlace(picture.axis, picture.tradeoff.noRoom))
  const right = x.getPixelForValue(axisPlace(picture.axis, 1))
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

export function drawMarks(chart: Chart, { tradeoff, axis }: Picture, inked: Inks): void {
  const { ctx, chartArea, scales } = chart
  const x = scales['x']
  if (!x) return
  const at = (value: number) => x.getPixelForValue(axisPlace(axis, value))
  const { top, bottom, left, right } = chartArea
  ctx.save()
  drawChange(chart, axis, inked)
  // beside the costs, not over the chances under them
  const { top: high, bottom: low } = scales['y'] ?? chartArea
  noRoomWords(ctx, [at(tradeoff.noRoom), at(1)], [high, low], inked)
  ctx.font = css(600)
  /** Words beside a line across the plot, kept on it; their left and right. */
  const over = (px: number, words: string): [number, number] => {
    const half = ctx.measureText(words).width / 2
    const middle = Math.min(Math.max(px, left + half), right + 8 - half)
    return [middle - half, middle + half]
  }
  const line = (px: number, colour: string, double: boolean) => {
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
  }
  const [floorWords, foundWords] = [
    `best reachable ${bestShareText(tradeoff.floor)}`,
    `as found ${shareText(tradeoff.standing)}`,
  ]
  const [floorAt, foundAt] = [
    over(at(tradeoff.floor), floorWords),
    over(at(tradeoff.standing), foundWords),
  ]
  const hasFloor = tradeoff.floor > tol.noFloor
  line(at(tradeoff.standing), inked.ink, false)
  if (hasFloor) line(at(tradeoff.floor), inked.plum, true)
  const level = top - 8
  // two words that would run into each other stand one above the other
  const clash = hasFloor && floorAt[1] + 6 > foundAt[0]
  text(
    ctx,
    foundWords,
    (foundAt[0] + foundAt[1]) / 2,
    level - (clash ? 14 : 0),
    inked.ink,
    inked.paper,
  )
  if (hasFloor) text(ctx, floorWords, (floorAt[0] + floorAt[1]) / 2, level, inked.plum, inked.paper)
  ctx.restore()
}

/** The point of the plan, over all that stays while it is dragged. */
export function drawPoint(
  chart: Chart,
  { tradeoff, share, axis, units }: Picture,
  inked: Inks,
): void {
  const { ctx, chartArea, scales } = chart
  const x = scales['x']
  const y = scales['y']
  if (!x || !y) return
  const px = x.getPixelForValue(axisPlace(axis, share))
  const cost = costAt(tradeoff, share)
  ctx.save()
  ctx.setLineDash([])
  if (cost === undefined) cross(ctx, px, chartArea.bottom - 8, inked)
  else ring(ctx, px, y.getPixelForValue(inUnits(cost, 'fine', units)), inked)
  ctx.restore()
}

/** Where the scale of the axis changes: two slanted strokes through it, and a gap where shares are left out. */
function drawChange(
  { ctx, chartArea, scales }: Chart,
  axis: ShareAxis,
  { soft, paper }: Inks,
): void {
  const change = changeOf(axis)
  const x = scales['x']
  if (!change || !x) return
  const [a, b] = change.map((place) => x.getPixelForValue(place)) as [number, number]
  const { top, bottom } = chartArea
  if (b - a > 1) {
    ctx.fillStyle = paper
    ctx.fillRect(a, top - 1, b - a, bottom - top + 4)
  }
  ctx.strokeStyle = soft
  ctx.lineWidth = 1.2
  ctx.beginPath()
  for (const px of b - a > 1 ? [a, b] : [a - 2.5, a + 2.5]) {
    ctx.moveTo(px - 3, bottom + 6)
    ctx.lineTo(px + 3, bottom - 6)
  }
  ctx.stroke()
}

/** In the hatched zone, on end where it is narrow. */
function noRoomWords(
  ctx: CanvasRenderingContext2D,
  [left, right]: readonly [number, number],
  [top, bottom]: readonly [number, number],
  inked: Inks,
): void {
  const middle = (left + right) / 2
  if (right - left > roomForWords.along)
    words(ctx, ['no room', 'for error'], middle, bottom - 20, inked)
  else if (right - left > roomForWords.onEnd) {
    ctx.save()
    ctx.translate(middle, (top + bottom) / 2)
    ctx.rotate(-Math.PI / 2)
    words(ctx, ['no room for error'], 0, 0, inked)
    ctx.restore()
  }
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
