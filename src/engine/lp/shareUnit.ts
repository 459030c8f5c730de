import { shareColumn, type Program, type Row } from './program'
import type { RoundsOptimal } from './rounds'
import type { Stage } from './stage'
import { standingShare } from './standing'

/** A worst share as found of this much and more is counted as it is. */
const usual = 2 ** -6
/** The smallest unit, of a tolerance: about the room of a comparison with a share, under which there is nothing to tell. */
const smallest = 2 ** -20

/**
 * Of what a least share is counted, in tolerances: 1, or a power of two near the share as found where that is tiny. A share
 * of hundred-thousandths would be lost among the simplex's last digits, though every move in the program is near 1.
 */
export function shareUnit({ limits, circles }: Program): number {
  const standing = standingShare(limits, circles)
  if (standing >= usual) return 1
  return Math.max(smallest, 2 ** Math.ceil(Math.log2(standing)))
}

/** The same program with its share counted in that unit; powers of two change no digit. */
export function inShareUnit(program: Program, unit: number): Program {
  const scaled = ([column, coefficient]: Row['terms'][number]) =>
    [column, column === shareColumn ? coefficient * unit : coefficient] as const
  return {
    ...program,
    columns: program.columns.map((column, c) =>
      c === shareColumn
        ? { ...column, lower: column.lower / unit, upper: column.upper / unit }
        : column,
    ),
    limits: program.limits.map((row) => ({ ...row, terms: row.terms.map(scaled) })),
    circles: program.circles.map((circle) =>
      circle.radius.terms.has(shareColumn)
        ? {
            ...circle,
            radius: { ...circle.radius, terms: new Map([...circle.radius.terms].map(scaled)) },
            slack: circle.slack * unit,
          }
        : circle,
    ),
  }
}

/** A question about a share, asked in that unit. */
export const stageInUnit = <Asked extends Stage>(stage: Asked, unit: number): Asked =>
  stage.ask === 'floor' ? stage : { ...stage, share: stage.share / unit }

interface Least {
  readonly bound: number
  readonly lowest: RoundsOptimal
  readonly point: RoundsOptimal
}

/** The answer to it, as of the program as it was. */
export function leastInUnit<Answer extends Least>(least: Answer, unit: number): Answer {
  const lowest = shareCounted(least.lowest, unit)
  const point =
    least.point === least.lowest ? lowest : { ...least.point, answer: counted(least.point, unit) }
  return { ...least, bound: least.bound * unit, lowest, point }
}

/** Of a program that asks for the share: its objective and duals are of it too. */
const shareCounted = (rounds: RoundsOptimal, unit: number): RoundsOptimal => {
  const answer = counted(rounds, unit)
  return {
    ...rounds,
    bound: rounds.bound * unit,
    answer: {
      ...answer,
      objective: answer.objective * unit,
      duals: answer.duals.map((dual) => dual * unit),
    },
  }
}

const counted = ({ answer }: RoundsOptimal, unit: number): RoundsOptimal['answer'] => ({
  ...answer,
  columns: answer.columns.map((value, c) => (c === shareColumn ? value * unit : value)),
})
