import { valueOf } from './affine'
import { shareColumn, type Circle, type Cut, type Program, type Row } from './program'

/** Tangents every circle starts with: holes are mostly met sideways, tolerances from anywhere. */
const firstTangents = { hole: 4, tolerance: 8 }
/** Cuts nearer than this (rad) are the same tangent: what is left between them is rounding. */
const sameAngle = 1e-9

/** The ring of tangents that a program starts with. */
export function firstCuts(program: Program): Cut[] {
  return program.circles.flatMap((circle, c) => {
    const count = circle.meaning.fact === 'hole' ? firstTangents.hole : firstTangents.tolerance
    return Array.from({ length: count }, (_, k) => ({
      circle: c,
      angle: (2 * Math.PI * k) / count,
    }))
  })
}

/** A tangent of its circle as a row: every point of the disc fulfils it. */
export function cutRow(program: Program, cut: Cut, name: string): Row {
  const circle = program.circles[cut.circle]
  if (!circle) throw new RangeError(`no circle ${cut.circle}`)
  const [cos, sin] = unit(cut.angle)
  const terms = new Map<number, number>()
  for (const [column, coefficient] of circle.u.terms) terms.set(column, cos * coefficient)
  for (const [column, coefficient] of circle.w.terms)
    terms.set(column, (terms.get(column) ?? 0) + sin * coefficient)
  if (circle.share !== 0) terms.set(shareColumn, -circle.share)
  return {
    name,
    terms: [...terms].filter(([, coefficient]) => coefficient !== 0),
    lower: -Infinity,
    upper: circle.constant - (cos * circle.u.constant + sin * circle.w.constant),
    meaning: circle.meaning,
  }
}

/** Exact along the axes, so that the first tangents have no stray terms. */
function unit(angle: number): [number, number] {
  const clean = (value: number) => (Math.abs(value) < 1e-15 ? 0 : value)
  return [clean(Math.cos(angle)), clean(Math.sin(angle))]
}

/** How far a point lies beyond a circle (program units; negative inside). */
export function beyond(circle: Circle, columns: readonly number[]): number {
  const distance = Math.hypot(valueOf(circle.u, columns), valueOf(circle.w, columns))
  return distance - circle.constant - circle.share * (columns[shareColumn] ?? 0)
}

/** New tangents where a solution lies beyond its circles; none where a tangent already stands there. */
export function violatedCuts(
  program: Program,
  cuts: readonly Cut[],
  columns: readonly number[],
): Cut[] {
  return program.circles.flatMap((circle, c) => {
    if (beyond(circle, columns) <= circle.slack) return []
    const angle = Math.atan2(valueOf(circle.w, columns), valueOf(circle.u, columns))
    const stands = cuts.some(
      (cut) => cut.circle === c && Math.abs(Math.sin((cut.angle - angle) / 2)) < sameAngle / 2,
    )
    return stands ? [] : [{ circle: c, angle }]
  })
}
