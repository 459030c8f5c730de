import { farthestPoint } from '../../../mechanics/uncertainty/farthest'
import { affineValue, type Affine } from '../../lp/affine'
import { shareColumn, type Program } from '../../lp/program'

/**
 * Pulls a point toward standing still until every hole is kept, and says what share it then uses.
 * Standing still keeps all limits that are not tolerances, so every point between keeps the rows; a
 * share that is good enough is reached by a move that was measured, not by one that was promised.
 * @returns the worst share over the rows and circles of the program, all true circles
 */
export function shareWhenPulledIn(program: Program, columns: readonly number[]): number {
  const moves = (column: number) => program.columns[column]?.meaning.part === 'motion'
  const split = ({ constant, terms }: Affine) => {
    let [still, moved] = [constant, 0]
    for (const [column, a] of terms) {
      if (column === shareColumn) continue
      const part = a * (columns[column] ?? 0)
      if (moves(column)) moved += part
      else still += part
    }
    return { still, moved }
  }
  let part = 1
  for (const { u, w, radius, slack } of program.circles) {
    if (radius.terms.has(shareColumn)) continue
    const allowed = affineValue(radius, columns) + slack / 2
    part = Math.min(part, within(split(u), split(w), allowed))
  }
  let share = 0
  const use = (value: number, limit: number) => {
    share = Math.max(share, value / limit)
  }
  for (const { terms, upper } of program.limits) {
    const limit = terms.find(([column]) => column === shareColumn)?.[1]
    if (limit === undefined) continue
    const { still, moved } = split({ constant: -upper, terms: new Map(terms) })
    use(still + part * moved, -limit)
  }
  for (const { u, w, radius, kept } of program.circles) {
    const limit = radius.terms.get(shareColumn)
    if (limit === undefined) continue
    const [a, b, r] = [split(u), split(w), split(radius)]
    const at = { y: a.still + part * a.moved, z: b.still + part * b.moved }
    const { y, z } = farthestPoint(at, kept)
    use(Math.hypot(y, z) - r.still, limit)
  }
  return share
}

interface Split {
  readonly still: number
  readonly moved: number
}

/** Largest part of a move, up to all of it, that ends within `radius`. */
function within(u: Split, w: Split, radius: number): number {
  const a = u.moved ** 2 + w.moved ** 2
  const b = u.still * u.moved + w.still * w.moved
  const c = u.still ** 2 + w.still ** 2 - radius ** 2
  if (a + 2 * b + c <= 0 || a === 0) return 1
  if (c > 0) return 0
  return Math.max(0, Math.min(1, (-b + Math.sqrt(b * b - a * c)) / a))
}
