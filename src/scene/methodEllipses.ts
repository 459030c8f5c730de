import type { MethodsCompared, Method } from '../mechanics/uncertainty/methods'

/** An ellipse in a square picture: px and degrees. */
interface Ellipse {
  readonly x: number
  readonly y: number
  readonly rx: number
  readonly ry: number
  readonly turned: number
}

/** Where two methods put the right shaft, each with the ellipse in which it lies 19 times of 20. */
export interface EllipsePair {
  readonly a: Ellipse
  readonly b: Ellipse
  /** um across the picture of an offset, mrad of a slope. */
  readonly across: number
}

/** Chi-square of two numbers that is passed once in twenty (table value). */
const onceInTwenty = 5.991
/** Part of the picture that the ellipses fill. */
const filled = 0.86

/**
 * Offsets at mid-span, or slopes where one of the methods reads no offset, seen as the clock is.
 * @param size of the picture (px); @param right 1 where 3 o'clock lies to the right, else -1
 */
export function ellipsePair({ a, b }: MethodsCompared, size: number, right: 1 | -1): EllipsePair {
  const slope = a.slopeAlone || b.slopeAlone
  const [i, j] = slope ? [1, 3] : [0, 2]
  const at = ({ line }: Method) => (slope ? [line.sy, line.sz] : [line.y, line.z])
  const axes = ({ covariance }: Method) => {
    const [yy, yz, zz] = [covariance[i]?.[i] ?? 0, covariance[i]?.[j] ?? 0, covariance[j]?.[j] ?? 0]
    const middle = (yy + zz) / 2
    const apart = Math.hypot((yy - zz) / 2, yz)
    return {
      long: Math.sqrt(onceInTwenty * (middle + apart)),
      short: Math.sqrt(onceInTwenty * Math.max(0, middle - apart)),
      turned: Math.atan2(2 * yz, yy - zz) / 2,
    }
  }
  const both = [a, b].map((method) => ({ at: at(method), ...axes(method) }))
  const edges = (k: 0 | 1) =>
    both.flatMap(({ at: p, long }) => [(p[k] ?? 0) - long, (p[k] ?? 0) + long])
  const [left, far] = [Math.min(...edges(0)), Math.max(...edges(0))]
  const [low, high] = [Math.min(...edges(1)), Math.max(...edges(1))]
  const across = Math.max(far - left, high - low) / filled
  const scale = size / across
  const [first, second] = both.map(({ at: [y = 0, z = 0], long, short, turned }): Ellipse => ({
    x: size / 2 + right * (y - (left + far) / 2) * scale,
    y: size / 2 - (z - (low + high) / 2) * scale,
    rx: long * scale,
    ry: short * scale,
    turned: (-right * turned * 180) / Math.PI,
  }))
  if (!first || !second) throw new RangeError('two methods are compared')
  return { a: first, b: second, across }
}
