import type { StepCard } from './page'
import { print } from './print'
import { proseWidth } from './size'
import { columnsHeight, stepColumns, stepWidth } from './stepRuns'
import { linesHeight, linesOf } from './textSize'

/** Height of a step's card (mm). */
export function stepHeight(step: StepCard): number {
  const { words, breaks, stop, over, sign } = step
  const text = (part: string, points: number, room = stepWidth, bold = false) =>
    linesHeight(linesOf(part, points, room, bold), points)
  const body =
    [words, ...breaks].reduce(
      (sum, part) => sum + text(part, print.strong, stepWidth, true) + 0.6,
      0,
    ) +
    columnsHeight(stepColumns(step)) +
    (over === undefined ? 0 : text(over, print.strong, stepWidth, true) + 0.6) +
    (stop === undefined
      ? 0
      : text(`STOP POINT. ${stop}`, print.plain, proseWidth(print.plain)) + 3.6)
  return Math.max(body + 2.4, (1 + sign.length) * print.actual) + 0.7
}
