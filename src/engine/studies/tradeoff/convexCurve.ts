import { tol } from '../../../mechanics/tolerances'

/** A point of a convex, falling curve: its height and the slope of a line that lies under the whole curve. */
export interface CurvePoint {
  readonly share: number
  readonly cost: number
  readonly slope: number
  /** True where the answer leans on circles, so that the curve may bend. */
  readonly bent: boolean
}

/**
 * Finds the corners of a convex, falling curve between two of its points. The lines under its two ends
 * meet where a corner would be, if there is only one; the curve is asked there. It lies between those
 * lines and the chord, so a stretch is done when they agree. A curve of straight pieces is found
 * exactly, with two questions a corner; a bent one within `tol.bent` of its height.
 * @param ask the curve at a share; undefined where no answer could be had
 * @returns the points in order, or undefined when a question had no answer
 */
export function* convexCurve<Point extends CurvePoint>(
  from: Point,
  to: Point,
  ask: (share: number) => Point | undefined,
): Generator<void, Point[] | undefined> {
  const points = [from]
  const open: Point[] = [to]
  for (let turn = 0; turn < tol.mostCurveTurns; turn++) {
    const a = points.at(-1) ?? from
    const b = open.at(-1)
    if (!b) return points
    const corner = meeting(a, b, tol.lowest * from.cost)
    if (corner === undefined) {
      points.push(b)
      open.pop()
      continue
    }
    const between = ask(corner)
    if (!between) return undefined
    open.push(between)
    yield
  }
  return [...points, ...open.reverse()]
}

/** Where to ask next between two points; undefined where the chord is the curve. */
function meeting(a: CurvePoint, b: CurvePoint, least: number): number | undefined {
  const width = b.share - a.share
  if (width <= tol.shortest) return undefined
  const bend = b.slope - a.slope
  if (bend <= 0) return undefined
  const at = (b.cost - a.cost - b.slope * b.share + a.slope * a.share) / -bend
  const share = Math.min(b.share - width * tol.inside, Math.max(a.share + width * tol.inside, at))
  const chord = a.cost + ((b.cost - a.cost) * (share - a.share)) / width
  const under = Math.max(a.cost + a.slope * (share - a.share), b.cost + b.slope * (share - b.share))
  const part = a.bent || b.bent ? tol.bent : tol.sharp
  // judged by the lower end, so that no place between is off by more
  return chord - under <= part * Math.max(b.cost, least) + tol.noHeight ? undefined : share
}

/** Height of a polyline at a share; its ends beyond them. */
export function heightAt(points: readonly CurvePoint[], share: number): number {
  const first = points[0]
  const last = points.at(-1)
  if (!first || !last) return 0
  if (share <= first.share) return first.cost
  for (const [i, b] of points.entries()) {
    const a = points[i - 1]
    if (!a || share > b.share) continue
    const part = (share - a.share) / (b.share - a.share)
    return a.cost + part * (b.cost - a.cost)
  }
  return last.cost
}

/** The corners of a convex, falling curve without those that the last digits put above a chord. */
export function lowerHull<Point extends CurvePoint>(points: readonly Point[]): Point[] {
  const hull: Point[] = []
  for (const point of points) {
    while (hull.length > 1) {
      const [a, b] = [hull.at(-2), hull.at(-1)]
      if (!a || !b) break
      const turn =
        (b.share - a.share) * (point.cost - a.cost) - (point.share - a.share) * (b.cost - a.cost)
      if (turn > 0) break
      hull.pop()
    }
    hull.push(point)
  }
  return hull
}
