import { farthestReach } from './cuts'
import { shareColumn, type Circle, type Program, type Row } from './program'

/** A tolerance that counts its two ways apart: a row that the share loosens. */
export const isTolerance = (row: Row): boolean => row.meaning.fact === 'tolerance'

/** Whether teeth that are to be kept off dead straight run straighter than that while nothing moves. */
const tooStraight = ({ meaning, lower }: Row): boolean => meaning.fact === 'least' && lower > 0

/** The worst share while nothing moves; without end where nothing moving is no answer, since teeth run too straight. */
export const standingOf = (program: Pick<Program, 'limits' | 'circles'>): number =>
  program.limits.some(tooStraight) ? Infinity : standingShare(program.limits, program.circles)

/** The worst share of tolerance while nothing moves, what is kept free counted; 0 where there is no tolerance. */
export function standingShare(rows: readonly Row[], circles: readonly Circle[]): number {
  let worst = 0
  for (const row of rows) {
    const perShare = row.terms.find(([column]) => column === shareColumn)?.[1]
    if (isTolerance(row) && perShare !== undefined) worst = Math.max(worst, row.upper / perShare)
  }
  for (const circle of circles) {
    const perShare = circle.radius.terms.get(shareColumn)
    if (perShare !== undefined)
      worst = Math.max(worst, farthestReach(circle, []).distance / perShare)
  }
  return worst
}
