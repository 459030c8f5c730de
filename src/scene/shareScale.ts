/** The one scale of tolerance used that all couplings and states of a train are drawn on. */
export interface ShareScale {
  /** The worst share that is drawn, at the right end; 1 where nothing is over its tolerance. */
  readonly worst: number
  /** Where the scale is broken, as a part of its length: what lies to the right of it is drawn smaller. */
  readonly breakAt?: number
  /** Shares that are written under it, from left to right. */
  readonly ticks: readonly number[]
}

/** A share above this is told behind a break, or it would squeeze what matters. */
const far = 1.3
/** A worst share nearer to the whole tolerance than this has no room for a number of its own. */
const near = 1.12
/** Part of the scale that the whole tolerance has where it is broken, and the room that the break takes. */
const [whole, cut] = [0.68, 0.06]

/**
 * One scale for a train, to the worst share on it, broken at the whole tolerance where that worst is far over it.
 * @param shares every share that is drawn, as a part of 1
 */
export function shareScale(shares: readonly number[]): ShareScale {
  const worst = Math.max(1, ...shares)
  return {
    worst,
    ...(worst > far && { breakAt: whole + cut / 2 }),
    ticks: worst > near ? [0, 1, worst] : [0, 1],
  }
}

/** Where a share lies on the scale: 0 its left end, 1 its right; beyond its ends the ends. */
export function sharePlace({ worst, breakAt }: ShareScale, share: number): number {
  if (breakAt === undefined) return clamp(share / worst)
  if (share <= 1) return clamp(share) * whole
  const from = whole + cut
  return from + clamp((share - 1) / (worst - 1)) * (1 - from)
}

const clamp = (part: number): number => Math.min(1, Math.max(0, part))
