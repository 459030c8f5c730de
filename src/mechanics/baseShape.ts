import { leastSquares } from './leastSquares'
import type { Body } from './train'
import type { Micrometres, Milliradians } from './units'

/**
 * How the soleplates under a body lie, as they were measured against a level line: heights of their tops, any of them may be the zero.
 */
export interface BaseShape {
  /** Slopes of the plane that lies nearest to the plates: + rises to the right, + rises toward 3 o'clock. Undefined where feet leave one open. */
  readonly along?: Milliradians
  readonly across?: Milliradians
  /** A number a foot: the top of its pack, plate and pack together (um); the plates alone where no pack is entered. */
  readonly tops: readonly Micrometres[]
  /** Whether the packs are in it. */
  readonly withPacks: boolean
}

/**
 * @returns undefined where no plate was measured; the ids of the feet that lack a plate or a pack where some were
 */
export function baseShape(
  body: Body,
): BaseShape | { readonly lacks: readonly string[] } | undefined {
  const { feet } = body
  if (feet.every(({ soleplate }) => soleplate === undefined)) return undefined
  const packed = feet.some(({ pack }) => pack !== undefined)
  const lacks = feet.filter(
    ({ soleplate, pack }) => soleplate === undefined || (packed && pack === undefined),
  )
  if (lacks.length > 0) return { lacks: lacks.map(({ id }) => id) }
  const plates = feet.map(({ soleplate = 0 }) => soleplate)
  const slope = (way: 'x' | 'y') => {
    const values = feet.map((foot) => foot[way])
    return new Set(values).size > 1
  }
  // a plane through all plates, of the ways in which feet stand apart (um a mm is mrad)
  const ways = (['x', 'y'] as const).filter(slope)
  const fit =
    feet.length > ways.length
      ? leastSquares({
          values: plates,
          design: feet.map((foot) => [
            1,
            ...ways.map((way) => (way === 'x' ? foot.x - body.x0 : foot.y)),
          ]),
          covariance: plates.map((_, i) => plates.map((__, j) => (i === j ? 1 : 0))),
        }).unknowns
      : undefined
  const of = (way: 'x' | 'y') => {
    const at = ways.indexOf(way)
    return at < 0 ? undefined : fit?.[1 + at]
  }
  const [along, across] = [of('x'), of('y')]
  return {
    ...(along !== undefined && { along }),
    ...(across !== undefined && { across }),
    tops: feet.map(({ pack }, i) => (plates[i] ?? 0) + (packed ? (pack?.now ?? 0) : 0)),
    withPacks: packed,
  }
}
