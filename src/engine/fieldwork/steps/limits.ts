import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { carriers, displaced, noMotion, type Motion, type Point } from '../../../mechanics/motion'
import { holeRadius } from '../../../mechanics/holeRadius'
import { footBands, limitSides, type FootLimit } from '../../../mechanics/footLimits'
import { footMove } from '../../plan/totals'

/** A limit that a pose on the way passes. */
export interface LimitPassed {
  readonly limit: FootLimit | 'tilt' | 'restraint' | 'shaft ends'
  readonly body: number
  readonly foot?: string
  readonly restraint?: string
  readonly way?: 'axial' | 'side' | 'rise'
  readonly coupling?: number
  /** How far it is passed (um; mrad for a tilt). */
  readonly by: number
}

/**
 * Limits that the bodies listed pass where they stand now. Every limit is convex in the motions
 * (bands and circles) and a standing that passes one as found widens it to itself, so a straight
 * move between two poses that keep all limits keeps them on the way too.
 * @param motions own motion of every body from where it was found
 */
export function limitsPassed(
  train: Train,
  motions: readonly Motion[],
  bodies: readonly number[],
): LimitPassed[] {
  return [
    ...bodies.flatMap((b) => {
      const body = train.bodies[b]
      if (!body) return []
      return [
        ...feetPassed(train, body, b, motions[b] ?? noMotion),
        ...restraintsPassed(train, body, b, motions),
        ...tiltPassed(body, b, motions),
      ]
    }),
    ...shaftEndsMet(train, motions, bodies),
  ]
}

/** Shaft ends whose distance is known, and that would be pushed into each other. */
function shaftEndsMet(
  train: Train,
  motions: readonly Motion[],
  bodies: readonly number[],
): LimitPassed[] {
  return train.couplings.flatMap(({ axial, left, right, p, q }, coupling): LimitPassed[] => {
    if (!axial || axial.found <= 0) return []
    if (!bodies.includes(left) && !bodies.includes(right)) return []
    const along = (m: number, x: number, end: 'left' | 'right') => {
      const axis = train.machines[m]?.axis[end] ?? { y: 0, z: 0 }
      return pointMove(train, motions, m, { x, ...axis }).axial
    }
    const by = along(left, p, 'right') - along(right, q, 'left') - axial.found * 1000
    return by > tol.onTheWay ? [{ limit: 'shaft ends', body: left, coupling, by }] : []
  })
}

/**
 * Real packs of a body on three rows or more lie off its plane by up to what `flat` allows: their own
 * heights are judged where they are rounded, and the plane may differ from them by so much.
 */
function feetPassed(train: Train, body: Body, b: number, motion: Motion): LimitPassed[] {
  const { shims, reserve } = train.plan
  const flat = shims && body.rows.length > 2 ? Math.max(tol.onTheWay, shims.flat) : tol.onTheWay
  const out: LimitPassed[] = []
  for (const foot of body.feet) {
    const moves = footMove(body, motion, foot)
    const note = (limit: FootLimit, by: number, room = tol.onTheWay): void => {
      if (by > room) out.push({ limit, body: b, foot: foot.id, by })
    }
    for (const { fact, move, low, high } of footBands(foot)) {
      const room = move === 'shim' ? flat : tol.onTheWay
      note(limitSides[fact].lower, low - moves[move], room)
      note(limitSides[fact].upper, moves[move] - high, room)
    }
    const { hole } = foot
    if (hole)
      note(
        'hole',
        Math.hypot(hole.x + moves.axial, hole.y + moves.side) - holeRadius(hole, reserve),
      )
  }
  return out
}

function restraintsPassed(
  train: Train,
  body: Body,
  b: number,
  motions: readonly Motion[],
): LimitPassed[] {
  return body.restraints.flatMap((restraint) => {
    const move = pointMove(train, motions, b, restraint)
    return (['axial', 'side', 'rise'] as const).flatMap((way): LimitPassed[] => {
      const range = restraint[way]
      if (!range) return []
      const by = Math.max(range[0] - move[way], move[way] - range[1])
      return by > tol.onTheWay
        ? [{ limit: 'restraint', body: b, restraint: restraint.id, way, by }]
        : []
    })
  })
}

/** Own pitch with the skid's, passed by what makes more than that at the farthest foot. */
function tiltPassed(body: Body, b: number, motions: readonly Motion[]): LimitPassed[] {
  if (body.tilt === undefined) return []
  const pitch =
    (motions[b]?.sz ?? 0) + (body.skid === undefined ? 0 : (motions[body.skid]?.sz ?? 0))
  const reach = Math.max(1, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
  const by = Math.abs(pitch) - body.tilt
  return by * reach > tol.onTheWay ? [{ limit: 'tilt', body: b, by }] : []
}

/** Displacement of a point of a body by its own motion and its skid's (um). */
export function pointMove(
  train: Train,
  motions: readonly Motion[],
  b: number,
  point: Point,
): { axial: Micrometres; side: Micrometres; rise: Micrometres } {
  const parts = carriers(train, b, point)
  const along = (way: 'dx' | 'dy' | 'dz') =>
    parts.reduce(
      (sum, { body, carry }) => sum + displaced(carry[way], motions[body] ?? noMotion),
      0,
    )
  return { axial: along('dx'), side: along('dy'), rise: along('dz') }
}

/** A body with whatever it carries: whose limits a move of it can pass. */
export const touchedBy = (train: Train, b: number): number[] =>
  train.bodies[b]?.kind === 'skid'
    ? [b, ...train.machines.flatMap(({ skid }, m) => (skid === b ? [m] : []))]
    : [b]

/** The most that a limit is passed by (um; mrad for a tilt); 0 where none is. */
export const worstOf = (passed: readonly LimitPassed[]): number =>
  Math.max(0, ...passed.map(({ by }) => by))
