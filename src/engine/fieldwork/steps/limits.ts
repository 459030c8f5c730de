import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { carriers, displaced, noMotion, type Motion, type Point } from '../../../mechanics/motion'
import { holeRadius } from '../../../mechanics/holeRadius'
import { footBands, limitSides, type FootLimit } from '../../../mechanics/footLimits'
import { footMove } from '../../plan/totals'

/** A limit that a pose on the way passes. */
export interface LimitPassed {
  readonly limit: FootLimit | 'tilt' | 'restraint' | 'shaft ends' | 'stage'
  readonly body: number
  readonly foot?: string
  readonly restraint?: string
  readonly way?: 'axial' | 'side' | 'rise'
  readonly coupling?: number
  /** How far it is passed (um; mrad for a tilt). */
  readonly by: number
}

/** A limit at its place, whether it is passed or not. */
export type LimitAt = Omit<LimitPassed, 'by'>

/** Takes one limit in one direction: how far it is passed, negative for what is left, and what of that counts as kept. */
type Note = (limit: LimitAt, by: number, room: number) => void

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
  const out: LimitPassed[] = []
  eachLimit(train, motions, bodies, (limit, by, room) => {
    if (by > room) out.push({ ...limit, by })
  })
  return out
}

/** Every limit of the bodies listed, in one order whatever the motions, each side of a band by itself. */
export function eachLimit(
  train: Train,
  motions: readonly Motion[],
  bodies: readonly number[],
  note: Note,
): void {
  for (const b of bodies) {
    const body = train.bodies[b]
    if (!body) continue
    feetOn(train, body, b, motions[b] ?? noMotion, note)
    restraintsOn(train, body, b, motions, note)
    tiltOn(body, b, motions, note)
  }
  shaftEndsOn(train, motions, bodies, note)
}

/** Shaft ends whose distance is known, and that would be pushed into each other. */
function shaftEndsOn(
  train: Train,
  motions: readonly Motion[],
  bodies: readonly number[],
  note: Note,
): void {
  train.couplings.forEach(({ axial, left, right, p, q }, coupling) => {
    if (!axial || axial.found <= 0) return
    if (!bodies.includes(left) && !bodies.includes(right)) return
    const along = (m: number, x: number, end: 'left' | 'right') => {
      const axis = train.machines[m]?.axis[end] ?? { y: 0, z: 0 }
      return pointMove(train, motions, m, { x, ...axis }).axial
    }
    const by = along(left, p, 'right') - along(right, q, 'left') - axial.found * 1000
    note({ limit: 'shaft ends', body: left, coupling }, by, tol.onTheWay)
  })
}

/**
 * Real packs of a body on three rows or more lie off its plane by up to what `flat` allows: their own
 * heights are judged where they are rounded, and the plane may differ from them by so much.
 */
function feetOn(train: Train, body: Body, b: number, motion: Motion, note: Note): void {
  const { shims, reserve } = train.plan
  const flat = shims && body.rows.length > 2 ? Math.max(tol.onTheWay, shims.flat) : tol.onTheWay
  for (const foot of body.feet) {
    const moves = footMove(body, motion, foot)
    const at = (limit: FootLimit): LimitAt => ({ limit, body: b, foot: foot.id })
    for (const { fact, move, low, high } of footBands(foot)) {
      const room = move === 'shim' ? flat : tol.onTheWay
      note(at(limitSides[fact].lower), low - moves[move], room)
      note(at(limitSides[fact].upper), moves[move] - high, room)
    }
    const { hole } = foot
    if (!hole) continue
    const off = Math.hypot(hole.x + moves.axial, hole.y + moves.side)
    note(at('hole'), off - holeRadius(hole, reserve), tol.onTheWay)
  }
}

function restraintsOn(
  train: Train,
  body: Body,
  b: number,
  motions: readonly Motion[],
  note: Note,
): void {
  for (const restraint of body.restraints) {
    const move = pointMove(train, motions, b, restraint)
    for (const way of ['axial', 'side', 'rise'] as const) {
      const range = restraint[way]
      if (!range) continue
      const at: LimitAt = { limit: 'restraint', body: b, restraint: restraint.id, way }
      note(at, range[0] - move[way], tol.onTheWay)
      note(at, move[way] - range[1], tol.onTheWay)
    }
  }
}

/** Own pitch with the skid's, passed by what makes more than that at the farthest foot. */
function tiltOn(body: Body, b: number, motions: readonly Motion[], note: Note): void {
  if (body.tilt === undefined) return
  const pitch =
    (motions[b]?.sz ?? 0) + (body.skid === undefined ? 0 : (motions[body.skid]?.sz ?? 0))
  const room = tol.onTheWay / footReach(body)
  note({ limit: 'tilt', body: b }, -pitch - body.tilt, room)
  note({ limit: 'tilt', body: b }, pitch - body.tilt, room)
}

/** From the reference of a body to its farthest foot along the train (mm), at least 1. */
export const footReach = ({ feet, x0 }: Body): number =>
  Math.max(1, ...feet.map(({ x }) => Math.abs(x - x0)))

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

/** Names a limit at its place. */
export const limitKey = ({ limit, body, foot, restraint, way, coupling }: LimitAt): string =>
  [limit, body, foot, restraint, way, coupling].join('\n')

/** What a body passes at any of some poses of it, where all others stand, the worst of each limit. */
export function passedAt(
  train: Train,
  motions: readonly Motion[],
  b: number,
  poses: readonly Motion[],
): LimitPassed[] {
  const bodies = touchedBy(train, b)
  const worst = new Map<string, LimitPassed>()
  const there = [...motions]
  for (const pose of poses) {
    there[b] = pose
    for (const passed of limitsPassed(train, there, bodies)) {
      const key = limitKey(passed)
      if (passed.by > (worst.get(key)?.by ?? 0)) worst.set(key, passed)
    }
  }
  return [...worst.values()]
}

/** The most that a limit is passed by (um; mrad for a tilt); 0 where none is. */
export const worstOf = (passed: readonly LimitPassed[]): number =>
  Math.max(0, ...passed.map(({ by }) => by))
