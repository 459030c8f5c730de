import type { Coupling } from '../train'
import { readingWithoutZero, type Misalignment, type SweepSet } from './equation'

/** What a value that is read gains from each part of the misalignment `[y, sy, z, sz]`: none, or mm. */
export type Gains = readonly [y: number, sy: number, z: number, sz: number]

/** A reading is linear in the misalignment: what each part of it adds at an hour. */
export function readingGains(set: SweepSet, coupling: Coupling, hour: number): Gains {
  const still = { y: 0, sy: 0, z: 0, sz: 0 }
  const at = (d: Misalignment) => readingWithoutZero(set, coupling, d, hour)
  const none = at(still)
  const part = (name: keyof Misalignment) => at({ ...still, [name]: 1 }) - none
  return [part('y'), part('sy'), part('z'), part('sz')]
}
