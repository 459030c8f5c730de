import type { CheckResult, CouplingResult } from '../misalignment/shares'
import { tol } from '../tolerances'
import type { Train } from '../train'
import { farthestPoint } from './farthest'
import { roomAlong, roomToward, type KeptAt, type KeptRoom, type KeptRooms } from './kept'

/**
 * What a value with its uncertainty shows of a limit: within it, beyond it, or neither (ISO 14253-1; JCGM 106:2012,
 * 8.3).
 */
export type CheckVerdict = 'in' | 'not shown' | 'out'

/** How far a value reaches with the room around it, and how far all of that room lies out at least. */
interface Reach {
  readonly most: number
  readonly least: number
}

/**
 * The largest part of its limit that a coupling uses in a state, what is kept free counted with it: the share at which
 * its checks are met with the guard.
 */
function keptShare(train: Train, result: CouplingResult, kept: KeptAt): number {
  const reaches = reachesOf(train, result, kept)
  return result.checks.reduce(
    (most, { limit }, i) => Math.max(most, (reaches[i]?.most ?? 0) / limit),
    0,
  )
}

/** The same of every result in order; none where nothing is kept: then a share is what it is. */
export const keptShares = (
  train: Train,
  results: readonly CouplingResult[],
  kept: KeptRooms | undefined,
): number[] =>
  results.map((result) => {
    const at = keptIn(train, result, kept)
    return at ? keptShare(train, result, at) : result.share
  })

/**
 * What each check of a coupling in a state shows of its full limit, in order.
 * @returns undefined where nothing is kept free
 */
export function verdictsOf(
  train: Train,
  result: CouplingResult,
  kept: KeptRooms | undefined,
): CheckVerdict[] | undefined {
  const at = keptIn(train, result, kept)
  return at && reachesOf(train, result, at).map((reach, i) => verdictOf(reach, result.checks[i]))
}

/**
 * What is kept free of the limit of each check of a coupling in a state, in its unit and in order.
 * @returns undefined where nothing is kept free
 */
export function roomsOf(
  train: Train,
  result: CouplingResult,
  kept: KeptRooms | undefined,
): ({ y: number; z: number } | { x: number })[] | undefined {
  const at = keptIn(train, result, kept)
  return (
    at &&
    result.checks.map(({ x }, i) => {
      const room = at.checks[i]
      return x !== undefined || !room ? { x: at.gap / 1000 } : roomAlong(room)
    })
  )
}

/** Parts of a tolerance between which a coupling lies with the room around each value, by its worst check. */
export interface SharesReached {
  readonly low: number
  readonly high: number
}

/** How much of its tolerance a coupling uses at least and at most, wherever within the room its values lie. */
export function reachedShares(train: Train, result: CouplingResult, at: KeptAt): SharesReached {
  const reaches = reachesOf(train, result, at)
  const round = train.couplings[result.coupling]?.tolerance.shape === 'round'
  return result.checks.reduce(
    ({ low, high }, { limit, y = 0, z = 0 }, i) => {
      const room = at.checks[i]
      const least = round && room ? clearOf({ y, z }, room) : (reaches[i]?.least ?? 0)
      return {
        low: Math.max(low, least / limit),
        high: Math.max(high, (reaches[i]?.most ?? 0) / limit),
      }
    },
    { low: 0, high: 0 },
  )
}

function verdictOf({ most, least }: Reach, check: CheckResult | undefined): CheckVerdict {
  const limit = check?.limit ?? NaN
  if (most <= limit * (1 + tol.share)) return 'in'
  return least > limit ? 'out' : 'not shown'
}

const keptIn = (
  train: Train,
  { coupling, state }: CouplingResult,
  kept: KeptRooms | undefined,
): KeptAt | undefined => kept?.[coupling]?.[train.states.findIndex(({ id }) => id === state)]

/** In the unit of each check's limit. */
function reachesOf(train: Train, { coupling, checks }: CouplingResult, kept: KeptAt): Reach[] {
  const round = train.couplings[coupling]?.tolerance.shape === 'round'
  return checks.map(({ x, y = 0, z = 0, limit }, i): Reach => {
    if (x !== undefined) return alongOne(x, kept.gap / 1000)
    const room = kept.checks[i]
    if (!room) throw new RangeError('checks and what is kept free of them are out of step')
    if (round) {
      const size = sizeOf({ y, z })
      // a value within its limit is not out, whatever is kept
      const least = size > limit ? clearOf({ y, z }, room) : size
      return { most: sizeOf(farthestPoint({ y, z }, room)), least }
    }
    const along = roomAlong(room)
    const [a, b] = [alongOne(y, along.y), alongOne(z, along.z)]
    return { most: Math.max(a.most, b.most), least: Math.max(a.least, b.least) }
  })
}

const alongOne = (value: number, room: number): Reach => ({
  most: Math.abs(value) + room,
  least: Math.abs(value) - room,
})

const sizeOf = ({ y, z }: { y: number; z: number }): number => Math.hypot(y, z)

/** Directions looked at first; the largest lies between two of them. */
const directions = 720
/** Steps of the golden section between those: down to where an angle has no digits left. */
const sections = 60
const golden = (Math.sqrt(5) - 1) / 2

/**
 * The largest of n.v - h(n) over all directions n: how far the value lies from the region that is kept free, below 0
 * within it. Where it is above 0 it has one top.
 */
function clearOf({ y, z }: { y: number; z: number }, room: KeptRoom): number {
  const at = (angle: number) => Math.cos(angle) * y + Math.sin(angle) * z - roomToward(room, angle)
  const step = (2 * Math.PI) / directions
  let best = 0
  for (let k = 1; k < directions; k++) if (at(k * step) > at(best * step)) best = k
  let [low, high] = [(best - 1) * step, (best + 1) * step]
  for (let k = 0; k < sections; k++) {
    const part = golden * (high - low)
    if (at(high - part) > at(low + part)) high -= high - low - part
    else low += high - low - part
  }
  return Math.max(at(best * step), at((low + high) / 2))
}
