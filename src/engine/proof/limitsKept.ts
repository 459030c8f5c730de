import type { Micrometres } from '../../mechanics/units'
import type { FootLimit } from '../../mechanics/footLimits'
import type { Body, Hole, Train } from '../../mechanics/train'
import { carried, claimedFootMove, worst, type ClaimedMotion } from './moved'

/** A limit of a train; indices are those of the train. */
export type Place =
  | {
      readonly is: 'still'
      readonly body: number
      readonly motion: 'axial' | 'slide' | 'rise' | 'yaw' | 'pitch' | 'roll'
    }
  | {
      readonly is: 'foot'
      readonly body: number
      readonly foot: number
      readonly limit: FootLimit
    }
  | {
      readonly is: 'restraint'
      readonly body: number
      readonly restraint: number
      readonly way: 'axial' | 'side' | 'rise'
    }
  | { readonly is: 'tilt'; readonly body: number }

/** A limit that a plan passes, and by how much (um); 0 and below is kept. */
export type LimitExcess = Place & { readonly by: Micrometres }

/**
 * How far every limit of every body is passed, from the moved bodies themselves.
 * @param motions um, mrad
 */
export function limitExcesses(train: Train, motions: readonly ClaimedMotion[]): LimitExcess[] {
  return train.bodies.flatMap((body, b) => {
    const motion = motions[b]
    if (!motion) throw new RangeError(`no motion for ${body.id}`)
    return [
      ...stillness(body, b, motion),
      ...body.feet.flatMap((_, f) => footLimits(train, body, { b, f }, motion)),
      ...restraints(train, motions, b),
      ...tilt(train, motions, b),
    ]
  })
}

/** What a held body, or one not free to do it, does all the same, seen at its farthest foot. */
function stillness(body: Body, b: number, motion: ClaimedMotion): LimitExcess[] {
  const { may, held } = body
  const longest = Math.max(0, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
  const widest = Math.max(0, ...body.feet.map((foot) => Math.abs(foot.y)))
  const moves = [
    ['axial', may.axial, Math.abs(motion.tx)],
    ['slide', may.slide, Math.abs(motion.ty)],
    ['rise', may.rise, Math.abs(motion.tz)],
    ['yaw', may.yaw, Math.abs(motion.sy) * Math.max(1, longest)],
    ['pitch', may.pitch, Math.abs(motion.sz) * Math.max(1, longest)],
    ['roll', may.roll, Math.abs(motion.roll) * Math.max(1, widest)],
  ] as const
  return moves.flatMap(([word, free, by]) =>
    held || !free ? [{ is: 'still', body: b, motion: word, by } as const] : [],
  )
}

function footLimits(
  train: Train,
  body: Body,
  { b, f }: { readonly b: number; readonly f: number },
  motion: ClaimedMotion,
): LimitExcess[] {
  const foot = body.feet[f]
  if (!foot) return []
  const [dx, dy, dz] = claimedFootMove(body, motion, f)
  const { pack, lift, hole } = foot
  /** How far each limit is passed; undefined where the foot has none. */
  const passed: Record<FootLimit, Micrometres | undefined> = {
    'shim key': foot.mayShim ? undefined : Math.abs(dz),
    'side key': foot.maySlide ? undefined : Math.abs(dy),
    'minimum pack': pack && Math.min(pack.min, pack.now) - (pack.now + dz),
    'maximum pack':
      pack?.max === undefined ? undefined : pack.now + dz - Math.max(pack.max, pack.now),
    lift: lift === undefined ? undefined : dz - (lift < 0 ? 0 : lift),
    hole: hole && beyondHole(hole, train.plan.reserve, dx, dy),
  }
  return (Object.keys(passed) as FootLimit[]).flatMap((limit): LimitExcess[] => {
    const by = passed[limit]
    return by === undefined ? [] : [{ is: 'foot', body: b, foot: f, limit, by }]
  })
}

/** How far the hole's centre leaves the circle around the bolt, or the one it stands on if that is wider (um). */
function beyondHole(hole: Hole, reserve: Micrometres, dx: number, dy: number): Micrometres {
  const before = Math.hypot(hole.x, hole.y)
  const allowed = hole.clearance / 2 - reserve
  return Math.hypot(hole.x + dx, hole.y + dy) - (before > allowed ? before : allowed)
}

function restraints(train: Train, motions: readonly ClaimedMotion[], index: number): LimitExcess[] {
  const body = train.bodies[index]
  return (body?.restraints ?? []).flatMap((restraint, r) => {
    const move = carried(train, motions, index, restraint)
    return (['axial', 'side', 'rise'] as const).flatMap((way, k): LimitExcess[] => {
      const range = restraint[way]
      const value = move[k] ?? NaN
      return range
        ? [
            {
              is: 'restraint',
              body: index,
              restraint: r,
              way,
              by: worst(range[0] - value, value - range[1]),
            },
          ]
        : []
    })
  })
}

/** Pitch beyond the limit, as the height it makes over the body's half length. */
function tilt(train: Train, motions: readonly ClaimedMotion[], index: number): LimitExcess[] {
  const body = train.bodies[index]
  if (body?.tilt === undefined) return []
  const at = (x: number) => carried(train, motions, index, { x, y: 0, z: 0 })[2]
  const half = Math.max(1, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
  const rise = (at(body.x0 + half) - at(body.x0 - half)) / 2
  return [{ is: 'tilt', body: index, by: Math.abs(rise) - body.tilt * half }]
}

/** The limits of a foot, as they are said where one is passed. */
const footWords: Record<FootLimit, string> = {
  'shim key': 'cannot be shimmed',
  'side key': 'cannot slide',
  'minimum pack': 'minimum pack',
  'maximum pack': 'maximum pack',
  lift: 'lift',
  hole: 'bolt in hole',
}

/** "gear foot 2: bolt in hole"; bodies by their ids, or as `called` says. */
export function placeSaid(
  train: Train,
  place: Place,
  called: (body: Body) => string = ({ id }) => id,
): string {
  const body = train.bodies[place.body]
  const name = body ? called(body) : ''
  switch (place.is) {
    case 'still':
      return `${name}: ${body?.held ? 'held' : 'not free'}, ${place.motion}`
    case 'foot':
      return `${name} foot ${body?.feet[place.foot]?.id ?? ''}: ${footWords[place.limit]}`
    case 'restraint':
      return `${name} ${body?.restraints[place.restraint]?.id ?? ''}: ${place.way}`
    case 'tilt':
      return `${name}: tilt`
  }
}
