import type { Train } from '../../../mechanics/train'
import { displacementOf, motionNames } from '../../../mechanics/motion'
import { programUnit, type Program, type Row } from '../../lp/program'

export type AskedMove = 'shim' | 'slide'

/**
 * The program with one more limit, behind all others: a foot's shim change or slide, taken in the way
 * that it goes, stays at or under `most` (program units).
 */
export function withFootLimit(
  train: Train,
  program: Program,
  foot: { readonly body: number; readonly foot: number; readonly way: AskedMove },
  sign: 1 | -1,
  most: number,
): Program {
  const body = train.bodies[foot.body]
  const at = body?.feet[foot.foot]
  if (!body || !at) throw new RangeError('no such foot')
  const carried = displacementOf(body, { x: at.x, y: at.y, z: 0 })[
    foot.way === 'shim' ? 'dz' : 'dy'
  ]
  const terms = program.columns.flatMap(({ meaning }, column) => {
    if (meaning.part !== 'motion' || meaning.body !== foot.body) return []
    const name = motionNames.find((motion) => motion === meaning.motion)
    const a = name === undefined ? 0 : (carried[name] ?? 0)
    return a === 0 ? [] : [[column, (sign * a * meaning.scale) / programUnit] as const]
  })
  const row: Row = {
    name: `a step less at ${body.id} ${at.id}`,
    terms,
    lower: -Infinity,
    upper: most,
    meaning: { fact: 'shim', body: foot.body, foot: foot.foot },
  }
  return { ...program, limits: [...program.limits, row] }
}
