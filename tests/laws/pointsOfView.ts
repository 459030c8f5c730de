import type { Coupling, Machine, Train } from '../second/train'
import type { Move } from './bench'
import { rewritten, type Rewriting } from './rewritten'

const same: Rewriting = {
  x: (v) => v,
  y: (v) => v,
  axial: 1,
  side: 1,
  offset: { y: 1, z: 1 },
  slope: { y: 1, z: 1 },
  hour: (h) => h,
}

/** The train with its origin of x elsewhere (document lengths). */
export const shifted = (train: Train, by: number): Train =>
  rewritten(train, { ...same, x: (v) => v + by })

/** The train as a mirror along its axis shows it: 3 and 9 o'clock change places. */
export function mirrored(train: Train): Train & { sides?: { three: string; nine: string } } {
  const sides = (train as { sides?: { three: string; nine: string } }).sides
  return {
    ...rewritten(train, {
      ...same,
      y: (v) => 0 - v,
      side: -1,
      offset: { y: -1, z: 1 },
      slope: { y: -1, z: 1 },
      hour: (h) => (h === 12 ? 12 : 12 - h),
    }),
    ...(sides && { sides: { three: sides.nine, nine: sides.three } }),
  }
}

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
    ...turned,
    clock: { seenFrom: other(train.clock.seenFrom) },
    machines: turned.machines.map(reversedMachine).reverse(),
    couplings: turned.couplings.map(reversedCoupling).reverse(),
  }
}

/** Moves of the reversed train: along x the other way, and so are slopes over x. */
export const reversedMove = (move: Move): Move => ({
  ...move,
  tx: -move.tx,
  sy: -move.sy,
  sz: -move.sz,
})

const other = (end: 'left' | 'right'): 'left' | 'right' => (end === 'left' ? 'right' : 'left')

function reversedMachine(machine: Machine): Machine {
  const { axis, growth } = machine
  return {
    ...machine,
    axis: 'left' in axis ? { left: axis.right, right: axis.left } : axis,
    growth:
      growth &&
      Object.fromEntries(
        Object.entries(growth).map(([state, points]) => [
          state,
          points.map((p) => (p.axis ? { ...p, axis: other(p.axis) } : p)),
        ]),
      ),
  }
}

function reversedCoupling(coupling: Coupling): Coupling {
  return {
    ...coupling,
    left: coupling.right,
    right: coupling.left,
    found: coupling.found.map((set) => {
      if (set.kind === 'rim' || set.kind === 'face') return { ...set, rides: other(set.rides) }
      return set.kind === 'spool' ? { ...set, end: other(set.end) } : set
    }),
  }
}
