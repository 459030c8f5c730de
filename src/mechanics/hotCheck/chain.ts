import type { HotCheck } from '../hotCheck'
import { tol } from '../tolerances'
import type { Train } from '../train'

/** The two directions across the train. */
export type AcrossWay = 'y' | 'z'
export const across = ['y', 'z'] as const

/** Machines that what was found tells against one another: joined by couplings that were read, or one that was measured. */
export interface Chain {
  /** Indices in `machines`, from left to right. */
  readonly machines: readonly number[]
  /** What holds each direction: a machine taken to have moved as its growth says, its tilt alone, or what was measured. */
  readonly held: Readonly<Record<AcrossWay, ChainHeld>>
}

interface ChainHeld {
  readonly by: 'datum' | 'tilt' | 'measured'
  /** The machine whose movement, or whose tilt, is taken as its growth says. */
  readonly machine: number
}

/**
 * Couplings tell how machines moved against one another and nothing of how all of them moved together, which is a
 * straight line: two numbers a direction. Movement measured at two places gives both, at one place one; what is missing
 * is taken from the growth of one machine.
 * @param read indices of the couplings whose line at the stop is told
 */
export function chainsOf(train: Train, check: HotCheck, read: readonly number[]): Chain[] {
  const groups: number[][] = []
  for (const m of train.machines.keys()) {
    const joined = read.some((c) => train.couplings[c]?.right === m)
    const last = groups.at(-1)
    if (joined && last) last.push(m)
    else groups.push([m])
  }
  return groups
    .filter(
      (machines) =>
        machines.length > 1 || check.moved.some(({ machine }) => machines.includes(machine)),
    )
    .map((machines) => ({
      machines,
      held: { y: heldBy(train, check, machines, 'y'), z: heldBy(train, check, machines, 'z') },
    }))
}

function heldBy(
  train: Train,
  check: HotCheck,
  machines: readonly number[],
  way: AcrossWay,
): ChainHeld {
  const quantity = way === 'y' ? 'side' : 'rise'
  const measured = check.moved.flatMap(({ machine, points }) =>
    machines.includes(machine)
      ? points.flatMap((point) => (point[quantity] === undefined ? [] : [{ machine, x: point.at }]))
      : [],
  )
  const [first] = measured
  if (!first) return { by: 'datum', machine: datumOf(train, check, machines) }
  const places = measured.some(({ x }) => Math.abs(x - first.x) > tol.sameX)
  return { by: places ? 'measured' : 'tilt', machine: first.machine }
}

/** The one that the file names, else one that may never move, else one that is held, else the first. */
function datumOf(
  { machines: all }: Train,
  { datum }: HotCheck,
  machines: readonly number[],
): number {
  const first = (is: (m: number) => boolean) => machines.find(is)
  return (
    first((m) => m === datum) ??
    first((m) => all[m]?.anchored !== undefined) ??
    first((m) => all[m]?.held === true) ??
    machines[0] ??
    0
  )
}
