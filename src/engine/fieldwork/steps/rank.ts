import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { largestMove } from './moves'

/** Numbers compared one after the other; the smaller goes first. */
export type Rank = readonly number[]

/**
 * Place of every body in the order outward from what stays: by the number of couplings between it
 * and the nearest machine that stays, then a gear before what drives it, then the larger move, then
 * train order. Where everything moves, the machine that moves least is started from. Common
 * practice, no source.
 * @returns one number a body, in the order of `train.bodies`
 */
export function workRank(train: Train, motions: readonly Motion[]): number[] {
  const moves = train.bodies.map((body, b) => largestMove(body, motions[b] ?? noMotion))
  const sizes = train.machines.map(({ skid }, m) =>
    Math.max(moves[m] ?? 0, skid === undefined ? 0 : (moves[skid] ?? 0)),
  )
  const least = Math.min(...sizes)
  const stays = sizes.map((size) => size === least)
  const distances = distancesTo(stays)
  const distanceOf = (b: number): number => {
    const carried = train.machines.flatMap(({ skid }, m) => (skid === b ? [distances[m] ?? 0] : []))
    return train.bodies[b]?.kind === 'skid' ? Math.min(...carried, Infinity) : (distances[b] ?? 0)
  }
  const order = train.bodies
    .map((body, b) => ({
      b,
      keys: [distanceOf(b), body.role === 'gearbox' ? 0 : 1, -(moves[b] ?? 0), b],
    }))
    .sort((x, y) => firstApart(x.keys, y.keys))
  const places: number[] = []
  order.forEach(({ b }, place) => {
    places[b] = place
  })
  return places
}

/** Couplings from each machine to the nearest one that stays. */
function distancesTo(stays: readonly boolean[]): number[] {
  const distances = stays.map((stay) => (stay ? 0 : Infinity))
  for (let m = 1; m < distances.length; m++)
    distances[m] = Math.min(distances[m] ?? 0, (distances[m - 1] ?? 0) + 1)
  for (let m = distances.length - 2; m >= 0; m--)
    distances[m] = Math.min(distances[m] ?? 0, (distances[m + 1] ?? 0) + 1)
  return distances
}

const firstApart = (a: readonly number[], b: readonly number[]): number =>
  a.map((value, i) => value - (b[i] ?? 0)).find((apart) => apart !== 0) ?? 0
