import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { solveSymmetric } from '../../../mechanics/symmetric'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import type { Misalignment } from '../../../mechanics/readings/equation'
import type { FootShim } from './softFoot'

/** What soft-foot shims do to the shafts. */
export interface Settled {
  readonly motion: Motion
  /** Changes of the couplings that feel it: right axis against left, at mid-span. */
  readonly couplings: readonly { readonly coupling: string; readonly by: Misalignment }[]
}

/** Changes under this show in no reading (um; slopes by what they do at a metre). */
const felt: Micrometres = 0.1

/**
 * A frame bolted tight lies on the mean plane of what is under its feet; adding shims moves that plane
 * by the least-squares plane of the shims, and the shaft with it.
 * @param index of the body
 */
export function settledBy(train: Train, index: number, shims: readonly FootShim[]): Settled {
  const body = train.bodies[index]
  if (!body) throw new RangeError(`no body ${index}`)
  const motion = meanPlane(body, (foot) => shims.find((shim) => shim.foot === foot)?.shim ?? 0)
  const motions = train.bodies.map((_, b) => (b === index ? motion : noMotion))
  return {
    motion,
    couplings: couplingMotions(train, motions).flatMap(({ misalignment: by }, c) => {
      const id = train.couplings[c]?.id ?? ''
      const most = Math.max(
        ...[by.y, by.z].map(Math.abs),
        ...[by.sy, by.sz].map((turn) => Math.abs(turn) * 1000),
      )
      return most > felt ? [{ coupling: id, by }] : []
    }),
  }
}

function meanPlane(body: Body, under: (foot: string) => Micrometres): Motion {
  const rows = body.feet.map(({ x, y }) => [1, x - body.x0, y])
  const values = body.feet.map(({ id }) => under(id))
  const matrix = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => rows.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0)),
  )
  const right = [0, 1, 2].map((i) =>
    rows.reduce((sum, row, k) => sum + (row[i] ?? 0) * (values[k] ?? 0), 0),
  )
  const [tz = 0, sz = 0, roll = 0] = solveSymmetric(matrix, right)
  return { ...noMotion, tz, sz, roll }
}
