import { liftsTitle } from '../engine/fieldwork/steps/poseAnswers'
import type { StepCard } from './page'
import { print } from './print'
import { textWidth } from './size'
import { linesHeight, linesOf } from './textSize'

/** Number and signatures at the left, and the insets beside the words (mm). */
const beside = print.signWidth + 3.2

/** Height of a step's card (mm). */
export function stepHeight({
  words,
  breaks,
  before,
  cautions,
  lifts,
  dials,
  expected,
  stop,
  over,
  sign,
}: StepCard): number {
  const width = textWidth - beside
  const text = (part: string, points: number, room = width, bold = false) =>
    linesHeight(linesOf(part, points, room, bold), points)
  const list = (parts: readonly string[]) =>
    parts.length === 0
      ? 0
      : parts.reduce((sum, part) => sum + text(part, print.small, width - 4) + 0.2, 0.6)
  const run = (title: string, parts: readonly string[]) =>
    parts.length === 0 ? 0 : text(`${title} ${parts.join(' ')}`, print.small, width - 2) + 0.6
  const body =
    [words, ...breaks].reduce((sum, part) => sum + text(part, print.strong, width, true) + 0.6, 0) +
    list(cautions) +
    run('First:', before) +
    run(`${liftsTitle}:`, lifts) +
    run('Dials, from 0:', dials) +
    run('Then the couplings should show, by the model:', expected) +
    (over === undefined ? 0 : text(over, print.strong, width, true) + 0.6) +
    (stop === undefined ? 0 : text(`STOP POINT. ${stop}`, print.plain, width - 4.6) + 3.6)
  return Math.max(body + 2.4, (1 + sign.length) * print.actual) + 0.7
}
