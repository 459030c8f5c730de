import type { Train } from '../../../mechanics/train'

/** Where somebody stands, facing the train: on one of its sides, or at one of its ends. */
export const stands = ['three', 'nine', 'left', 'right'] as const
export type Stand = (typeof stands)[number]

export type Turned = 'away from you' | 'toward you' | 'to your left' | 'to your right'

/** Which way somebody looks: along the train (x) or across it (y, toward 3 o'clock). */
const looks: Record<Stand, { readonly x: number; readonly y: number }> = {
  three: { x: 0, y: -1 },
  nine: { x: 0, y: 1 },
  left: { x: 1, y: 0 },
  right: { x: -1, y: 0 },
}

/**
 * A direction of the train as somebody sees it who stands there.
 * @param way 'side': + toward 3 o'clock; 'axial': + to the right end of the train
 */
export function turned(train: Train, stand: Stand, way: 'side' | 'axial', sign: number): Turned {
  const facing = looks[stand]
  const move = { x: way === 'axial' ? Math.sign(sign) : 0, y: way === 'side' ? Math.sign(sign) : 0 }
  const along = move.x * facing.x + move.y * facing.y
  if (along !== 0) return along > 0 ? 'away from you' : 'toward you'
  // who looks along the train from the end that the clock is seen from has 3 o'clock at the right hand
  const hand = train.seenFrom === 'left' ? 1 : -1
  const right = hand * (facing.x * move.y - facing.y * move.x)
  return right > 0 ? 'to your right' : 'to your left'
}
