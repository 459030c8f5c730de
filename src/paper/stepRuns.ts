import { tol } from '../mechanics/tolerances'
import { liftsTitle } from '../engine/fieldwork/steps/poseAnswers'
import type { StepCard } from './page'
import { print } from './print'
import { columnGap, proseWidth, textWidth } from './size'
import { linesHeight, linesOf } from './textSize'

/** Small print of a step after what it is: sentences in one run, or a line each. */
export interface StepRun {
  readonly title: string
  readonly text: string
  readonly lines: readonly string[]
}

/** A stack of them under what to beware of; `width` in twelfths, or halves of them, of what the words of a step have. */
interface StepColumn {
  readonly width: number
  readonly cautions: readonly string[]
  readonly runs: readonly StepRun[]
}

/** Width of the words of a step beside its number and its boxes (mm). */
export const stepWidth = textWidth - print.signWidth - 3.2

/** What stands before the words of a caution (mm). */
export const dashWidth = 4

const inOne = (title: string, parts: readonly string[]): StepRun[] =>
  parts.length === 0 ? [] : [{ title, text: parts.join(' '), lines: [] }]

const lineEach = (title: string, lines: readonly string[]): StepRun[] =>
  lines.length === 0 ? [] : [{ title, text: '', lines }]

const smallHeight = (text: string, width: number): number =>
  linesHeight(linesOf(text, print.small, width), print.small)

/** Height of a stack with the gap under each of its parts (mm). */
function stackHeight({ cautions, runs }: StepColumn, width: number): number {
  const listed = cautions.map((text) => smallHeight(text, width - dashWidth) + 0.2)
  const run = runs.map(({ title, text, lines }) =>
    [`${title} ${text}`, ...lines].reduce((sum, line) => sum + smallHeight(line, width), 0.6),
  )
  return [...listed, ...run].reduce((sum, height) => sum + height, cautions.length > 0 ? 0.6 : 0)
}

const columnWidth = (twelfths: number): number => ((stepWidth - columnGap) * twelfths) / 12

/**
 * What is done at the left, under what to beware of, and what dials and couplings show at the right: lines short enough
 * for the eye to find the next. Of all ways to share the width the lowest, every move of the jacks on a line of its own
 * where that is no taller; what stands alone has the width of running text.
 */
export function stepColumns(
  step: Pick<StepCard, 'cautions' | 'before' | 'lifts' | 'dials' | 'expected'>,
): StepColumn[] {
  const { cautions, before, lifts, dials, expected } = step
  const first = inOne('First:', before)
  const title = `${liftsTitle}:`
  const done = [
    [...first, ...lineEach(title, lifts)],
    [...first, ...inOne(title, lifts)],
  ] as const
  const seen = [
    ...inOne('Dials, from 0:', dials),
    ...inOne('Then the couplings should show, by the model:', expected),
  ]
  if (cautions.length + done[0].length === 0 || seen.length === 0) {
    const alone = { width: 12, cautions, runs: [...done[0], ...seen] }
    return cautions.length + alone.runs.length === 0 ? [] : [alone]
  }
  const ways = done.flatMap((runs) =>
    [6, 5.5, 6.5, 5, 7, 4.5, 7.5, 4, 8].map((width): StepColumn[] => [
      { width, cautions, runs },
      { width: 12 - width, cautions: [], runs: seen },
    ]),
  )
  return ways.reduce((best, way) =>
    columnsHeight(way) < columnsHeight(best) - tol.dust ? way : best,
  )
}

/** Height of what `stepColumns` made (mm). */
export const columnsHeight = (columns: readonly StepColumn[]): number =>
  Math.max(
    0,
    ...columns.map((column) =>
      stackHeight(
        column,
        columns.length === 1 ? proseWidth(print.small) : columnWidth(column.width),
      ),
    ),
  )
