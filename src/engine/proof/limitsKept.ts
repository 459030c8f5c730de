import type { Micrometres } from '../../mechanics/units'
import type { Body, Train } from '../../mechanics/train'
import { carried, footMove, worst, type ClaimedMotion } from './moved'

/** A limit that a plan passes, and by how much; 0 and below is kept. */
export interface Passed {
  readonly where: string
  readonly by: Micrometres
}

/** How far every limit of every body is passed, from the moved bodies themselves. */
export function limitsPassed(train: Train, motions: readonly ClaimedMotion[]): Passed[] {
  return train.bodies.flatMap((body, b) => {
    const motion = motions[b]
    if (!motion) throw new RangeError(`no motion for ${body.id}`)
    return [
      ...stillness(body, motion),
      ...body.feet.flatMap((_, f) => footLimits(train, body, motion, f)),
      ...restraints(train, motions, b),
      ...tilt(train, motions, b),
    ]
  })
}

/** What a held body, or one not free to do it, does all the same, seen at its farthest foot. */
function stillness(body: Body, motion: ClaimedMotion): Passed[] {
  const { may, held } = body
  const longest = Math.max(0, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
  const widest = Math.max(0, ...body.feet.map((foot) => Math.abs(foot.y)))
  const moves: [word: string, free: boolean, by: Micrometres][] = [
    ['axial', may.axial, Math.abs(motion.tx)],
    ['slide', may.slide, Math.abs(motion.ty)],
    ['rise', may.rise, Math.abs(motion.tz)],
    ['yaw', may.yaw, Math.abs(motion.sy) * Math.max(1, longest)],
    ['pitch', may.pitch, Math.abs(motion.sz) * Math.max(1, longest)],
    ['roll', may.roll, Math.abs(motion.roll) * Math.max(1, widest)],
  ]
  return moves.flatMap(([word, free, by]) =>
    held || !free ? [{ where: `${body.id}: ${held ? 'held' : 'not free'}, ${word}`, by }] : [],
  )
}

function footLimits(train: Train, body: Body, motion: ClaimedMotion, index: number): Passed[] {
  const foot = body.feet[index]
  if (!foot) return []
  const [dx, dy, dz] = footMove(body, motion, index)
  const out: Passed[] = []
  const add = (what: string, by: Micrometres) => {
    out.push({ where: `${body.id} foot ${foot.id}: ${what}`, by })
  }
  if (!foot.mayShim) add('cannot be shimmed', Math.abs(dz))
  if (!foot.maySlide) add('cannot slide', Math.abs(dy))
  if (foot.pack) {
    const after = foot.pack.now + dz
    add('minimum pack', Math.min(foot.pack.min, foot.pack.now) - after)
    if (foot.pack.max !== undefined)
      add('maximum pack', after - Math.max(foot.pack.max, foot.pack.now))
  }
  if (foot.lift !== undefined) add('lift', dz - (foot.lift < 0 ? 0 : foot.lift))
  if (foot.hole) {
    const distance = Math.hypot(foot.hole.x + dx, foot.hole.y + dy)
    const before = Math.hypot(foot.hole.x, foot.hole.y)
    const allowed = foot.hole.clearance / 2 - train.plan.reserve
    add('bolt in hole', distance - (before > allowed ? before : allowed))
  }
  return out
}

function restraints(train: Train, motions: readonly ClaimedMotion[], index: number): Passed[] {
  const body = train.bodies[index]
  return (body?.restraints ?? []).flatMap((restraint) => {
    const move = carried(train, motions, index, restraint)
    return (['axial', 'side', 'rise'] as const).flatMap((way, k) => {
      const range = restraint[way]
      const value = move[k] ?? NaN
      return range
        ? [
            {
              where: `${body?.id ?? ''} ${restraint.id}: ${way}`,
              by: worst(range[0] - value, value - range[1]),
            },
          ]
        : []
    })
  })
}

/** Pitch beyond the limit, as the height it makes over the body's half length. */
function tilt(train: Train, motions: readonly ClaimedMotion[], index: number): Passed[] {
  const body = train.bodies[index]
  if (body?.tilt === undefined) return []
  const at = (x: number) => carried(train, motions, index, { x, y: 0, z: 0 })[2]
  const half = Math.max(1, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
  const rise = (at(body.x0 + half) - at(body.x0 - half)) / 2
  return [{ where: `${body.id}: tilt`, by: Math.abs(rise) - body.tilt * half }]
}
