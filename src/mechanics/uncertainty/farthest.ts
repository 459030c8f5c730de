import type { KeptRoom } from './kept'
import type { CheckCovariance } from './judged'

interface Sides {
  readonly y: number
  readonly z: number
}

/**
 * Where a value with the room around it reaches farthest from nothing. A value keeps n.v + h(n) <= r in every direction
 * n exactly when v and the whole region with the support function h lie in the disc of r, so the direction that is
 * passed most is that of the region's farthest point; no search over directions is needed.
 * @returns a point in the unit of the value
 */
export const farthestPoint = (value: Sides, kept: KeptRoom | undefined): Sides =>
  farPoints(value, kept).reduce((a, b) => (sizeOf(b) > sizeOf(a) ? b : a))

/** The farthest points of the ellipse at each corner that the segments span: the farthest of all is among them. */
export function farPoints(value: Sides, kept: KeptRoom | undefined): Sides[] {
  if (!kept) return [value]
  const ends = (half: number) => (half === 0 ? [0] : [half, -half])
  const axes = axesOf(kept.ellipse)
  return ends(kept.y).flatMap((y) =>
    ends(kept.z).map((z) => farOnEllipse({ y: value.y + y, z: value.z + z }, axes)),
  )
}

const sizeOf = ({ y, z }: Sides): number => Math.hypot(y, z)

/** Half axes of the ellipse with the support function sqrt(n' S n), and the direction of the first. */
interface Axes {
  readonly a: number
  readonly b: number
  readonly cos: number
  readonly sin: number
}

/** From the two eigenvalues of S (textbook). */
function axesOf({ yy, yz, zz }: CheckCovariance): Axes {
  const angle = Math.atan2(2 * yz, yy - zz) / 2
  const middle = (yy + zz) / 2
  const half = Math.hypot((yy - zz) / 2, yz)
  return {
    a: Math.sqrt(middle + half),
    b: Math.sqrt(Math.max(0, middle - half)),
    cos: Math.cos(angle),
    sin: Math.sin(angle),
  }
}

/** Halvings of a right angle: down to where an angle has no digits left. */
const halvings = 56

/**
 * The point of an ellipse around `centre` that lies farthest from nothing. Along its axes, with (p, q) the centre made
 * positive, it is (p + a cos t, q + b sin t) with t in the first quadrant, where its distance rises and then falls: its
 * derivative by t, over sin t cos t, is -a p / cos t + b q / sin t + b^2 - a^2, which only falls.
 */
function farOnEllipse(centre: Sides, { a, b, cos, sin }: Axes): Sides {
  if (a === 0) return centre
  const along = cos * centre.y + sin * centre.z
  const across = -sin * centre.y + cos * centre.z
  const [p, q] = [Math.abs(along), Math.abs(across)]
  let [low, high] = [0, Math.PI / 2]
  for (let k = 0; k < halvings; k++) {
    const t = (low + high) / 2
    const [c, s] = [Math.cos(t), Math.sin(t)]
    if (b * q * c - a * p * s + (b * b - a * a) * s * c > 0) low = t
    else high = t
  }
  const t = (low + high) / 2
  const u = (along < 0 ? -1 : 1) * (p + a * Math.cos(t))
  const w = (across < 0 ? -1 : 1) * (q + b * Math.sin(t))
  return { y: cos * u - sin * w, z: sin * u + cos * w }
}
