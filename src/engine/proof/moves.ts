import type { Train } from '../../mechanics/train'
import { Exact } from './exact'
import { ownMove, type ExactSide } from './exactRows'

/** A move that is paid for: the shim of a foot, the slide of a row of feet, the axial move of a body; index of foot or row. */
export interface Move {
  readonly is: 'shim' | 'slide' | 'axial'
  readonly body: number
  readonly index: number
}

/** The move over the motions (um), and what it costs (um per um). */
export function moveRow(
  train: Train,
  { is, body: b, index }: Move,
): { readonly side: ExactSide; readonly cost: Exact } | undefined {
  const body = train.bodies[b]
  if (!body) return undefined
  const { weights } = train.plan
  const cost = (weight: number) => Exact.of(weight).times(Exact.of(body.weight))
  switch (is) {
    case 'shim': {
      const foot = body.feet[index]
      if (!foot) return undefined
      const { z } = ownMove(train, b, { x: foot.x, y: foot.y, z: 0 })
      return { side: z, cost: cost(weights.shim) }
    }
    case 'slide': {
      const row = body.rows[index]
      if (!row) return undefined
      return { side: ownMove(train, b, { x: row.x, y: 0, z: 0 }).y, cost: cost(weights.side) }
    }
    case 'axial':
      if (index !== 0) return undefined
      return {
        side: ownMove(train, b, { x: body.x0, y: 0, z: 0 }).x,
        cost: cost(weights.axial),
      }
  }
}
