import { micrometresPer } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { meanPlaneOf } from '../../../mechanics/meanPlane'

/** What really went in under a foot and how far it really went, in the document's fine unit; + is up, toward 3 o'clock, to the right. */
export interface Actual {
  readonly body: string
  readonly foot: string
  readonly shim?: number
  readonly side?: number
  readonly axial?: number
}

/** A foot's moves (um). */
export interface FootMove {
  shim: number
  side: number
  axial: number
}

/** Sums of what was done at every foot of a body, in the order of its feet (um). */
export function footMoves(train: Train, body: Body, actuals: readonly Actual[]): FootMove[] {
  const per = micrometresPer[train.units.fine]
  return body.feet.map(({ id }) =>
    actuals
      .filter((row) => row.body === body.id && row.foot === id)
      .reduce<FootMove>(
        (sum, { shim = 0, side = 0, axial = 0 }) => ({
          shim: sum.shim + shim * per,
          side: sum.side + side * per,
          axial: sum.axial + axial * per,
        }),
        { shim: 0, side: 0, axial: 0 },
      ),
  )
}

/**
 * The motion of a body that its feet's moves come to: the least-squares plane through the shims, the
 * line through the slides of its rows, the mean move along the train (without what a turn does to it).
 * A slide counts once for a row: feet of a row where none is given follow the others.
 */
export function actualMotion(train: Train, body: Body, actuals: readonly Actual[]): Motion {
  const moves = footMoves(train, body, actuals)
  if (body.feet.length === 0) return noMotion
  const shims = body.feet.map(({ x, y }, f) => ({ x: x - body.x0, y, value: moves[f]?.shim ?? 0 }))
  const [tz = 0, sz = 0, roll = 0] = meanPlaneOf(shims)
  const rows = body.rows.map((row) => {
    const told = row.feet.filter((f) => given(body, f, actuals, 'side'))
    const some = told.length > 0 ? told : row.feet
    const value = some.reduce((sum, f) => sum + (moves[f]?.side ?? 0), 0) / some.length
    return { x: row.x - body.x0, y: 0, value }
  })
  const [ty = 0, sy = 0] = meanPlaneOf(rows)
  const along = body.feet.flatMap(({ y }, f) =>
    given(body, f, actuals, 'axial') ? [(moves[f]?.axial ?? 0) + sy * y] : [],
  )
  const tx = along.length === 0 ? 0 : along.reduce((a, b) => a + b, 0) / along.length
  return { tx, ty, tz, sy, sz, roll }
}

const given = (
  body: Body,
  foot: number,
  actuals: readonly Actual[],
  way: 'side' | 'axial',
): boolean =>
  actuals.some(
    (row) => row.body === body.id && row.foot === body.feet[foot]?.id && row[way] !== undefined,
  )
