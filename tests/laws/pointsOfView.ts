import { fromOtherEnd, mirroredHour, rewritten, same } from '../second/pointsOfView'
import type { Train } from '../second/train'
import type { Move } from './bench'

/** The train with its origin of x elsewhere (document lengths). */
export const shifted = (train: Train, by: number): Train =>
  rewritten(train, { ...same, x: (v) => v + by })

/** The train as a mirror along its axis shows it: 3 and 9 o'clock change places, and so do their names. */
export const mirrored = (train: Train): Train & { sides?: { three: string; nine: string } } =>
  rewritten(train, {
    ...same,
    y: (v) => 0 - v,
    side: -1,
    offset: { y: -1, z: 1 },
    slope: { y: -1, z: 1 },
    hour: mirroredHour,
  })

/** Moves in the mirror: what went toward 3 goes toward 9, and yaw and roll turn the other way. */
export const mirroredMove = (move: Move): Move => ({
  ...move,
  ty: -move.ty,
  sy: -move.sy,
  roll: -move.roll,
})

/**
 * The same train with its other end called left. Whoever reads the dials stays where he is, so hours
 * and sides stay and `seenFrom` changes its word. d(x) is now the old left axis against the old right
 * one, so offsets turn over; slopes turn over twice, by d and by x, and stay.
 */
export function reversed(train: Train): Train {
  const turned = rewritten(train, {
    ...same,
    x: (v) => 0 - v,
    axial: -1,
    offset: { y: -1, z: -1 },
  })
  return {
    ...fromOtherEnd(turned),
    clock: { seenFrom: train.clock.seenFrom === 'left' ? 'right' : 'left' },
  }
}

/** Moves of the reversed train: along x the other way, and so are slopes over x. */
export const reversedMove = (move: Move): Move => ({
  ...move,
  tx: -move.tx,
  sy: -move.sy,
  sz: -move.sz,
})
