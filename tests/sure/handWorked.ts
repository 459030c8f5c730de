import { expect } from 'vitest'
import { given } from '../second/pairs'
import type { Motion } from '../second/sure/bodies'
import { sampled, type Sampled } from '../second/sure/sampled'
import type { Foot, Line, Train } from '../second/train'

const draws = 200_000
/** Four standard deviations of a fraction of so many draws, at most. */
const close = 2 / Math.sqrt(draws)
/** A tolerance that nothing passes. */
export const wide = 1e6
/** An uncertainty that does not count. */
export const exact = 1e-6

export const run = (train: Train, motions: Record<string, Motion> = {}): Sampled =>
  sampled(train, motions, { draws, seed: 7 })

/** The spread of one check of the first coupling in its first state. */
export function spread(answer: Sampled, what: string) {
  const u = answer.couplings[0]?.u.find((check) => check.what === what)
  return { y: u?.y ?? NaN, z: u?.z ?? NaN, x: u?.x ?? NaN }
}

/** Within four standard deviations of a sampled standard deviation. */
export function sameSpread(found: number, expected: number): void {
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThan(
    4 / Math.sqrt(2 * draws),
  )
}

export function sameChance(found: number | undefined, expected: number): void {
  expect(
    Math.abs((found ?? NaN) - expected),
    `${found ?? 'none'} against ${expected}`,
  ).toBeLessThan(close)
}

/** A line given to so many um at mid-span; its slope is exact. */
export const known = (y: number, z: number, u: number): Line => ({
  ...given(y, z),
  u,
  uSlope: exact,
})

/** Feet of which the first has more to it. */
export const firstOf = ([first, ...others]: Foot[], more: Partial<Foot>): Foot[] =>
  first ? [{ ...first, ...more }, ...others] : []
