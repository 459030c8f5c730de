import type { Train } from '../train'
import { carriers, displaced, type Motion, type Point } from '../motion'
import type { CouplingMotion } from './shares'

/** Displacement of a point of a machine by the motions of everything that carries it. */
export function movedBy(train: Train, motions: readonly Motion[], machine: number, point: Point) {
  const parts = carriers(train, machine, point)
  const along = (way: 'dx' | 'dy' | 'dz') =>
    parts.reduce((sum, { body, carry }) => {
      const motion = motions[body]
      return motion ? sum + displaced(carry[way], motion) : sum
    }, 0)
  return { x: along('dx'), y: along('dy'), z: along('dz') }
}

/** What motions of all bodies do to each coupling: right axis against left, and the gap. */
export function couplingMotions(train: Train, motions: readonly Motion[]): CouplingMotion[] {
  return train.couplings.map((coupling) => {
    const axis = (machine: number, side: 'left' | 'right') => {
      const point = train.machines[machine]?.axis[side]
      if (!point) throw new RangeError(`coupling ${coupling.id} joins no machines`)
      return point
    }
    const left = { machine: coupling.left, axis: axis(coupling.left, 'right') }
    const right = { machine: coupling.right, axis: axis(coupling.right, 'left') }
    const at = (end: typeof left, x: number) =>
      movedBy(train, motions, end.machine, { x, ...end.axis })
    const turn = (machine: number, way: 'sy' | 'sz') => {
      const skid = train.machines[machine]?.skid
      return (motions[machine]?.[way] ?? 0) + (skid === undefined ? 0 : (motions[skid]?.[way] ?? 0))
    }
    const [l, r] = [at(left, coupling.mid), at(right, coupling.mid)]
    return {
      misalignment: {
        y: r.y - l.y,
        z: r.z - l.z,
        sy: turn(right.machine, 'sy') - turn(left.machine, 'sy'),
        sz: turn(right.machine, 'sz') - turn(left.machine, 'sz'),
      },
      gap: at(right, coupling.q).x - at(left, coupling.p).x,
    }
  })
}
