import { chiSquareQuantile } from '../chiSquare'
import { growthOf, lineValueAt } from '../growth'
import type { HotCheck } from '../hotCheck'
import { leastSquares } from '../leastSquares'
import { grownShift } from '../misalignment/stateShift'
import { tol } from '../tolerances'
import type { Coupling, Train } from '../train'
import { foundLines } from '../uncertainty/foundLines'
import { givenGrowth } from '../uncertainty/growthPoints'
import type { Millimetres } from '../units'
import { coldErrors, type AtStop, type LineError } from './atStop'
import { across, chainsOf, type AcrossWay, type Chain } from './chain'

/** How far a machine moved beyond what its growth says, as a straight line along x. */
export interface MachineMovement {
  readonly machine: number
  readonly x: Millimetres
  /** `[y, sy, z, sz]` at x (um, mrad). */
  readonly by: readonly number[]
  readonly errors: readonly LineError[]
}

/** Movement on the run of every machine that is told of. */
export interface Movement {
  readonly chains: readonly Chain[]
  readonly machines: readonly MachineMovement[]
  /** Where couplings and measured movement tell more than is needed: whether they agree. */
  readonly test?: { readonly squares: number; readonly freedom: number; readonly limit: number }
}

/** One number that was found, less what growth says of it. */
interface Observation {
  readonly value: number
  /** What it gains from the four numbers of each machine. */
  readonly gains: ReadonlyMap<number, readonly number[]>
  readonly errors: ReadonlyMap<string, number>
}

/**
 * What each machine moved beyond its growth in the state, by generalized least squares over the chain (JCGM 102, 6):
 * of a coupling the line at the stop less line as found less growth is the movement of its right machine less that of its
 * left one; a place measured is the movement of that machine. Lines as found and at the stop that share a bracket share
 * its error.
 */
export function movementOf(train: Train, check: HotCheck, lines: readonly AtStop[]): Movement {
  const read = lines.flatMap((one) => (one.how === 'open' ? [] : [one]))
  const chains = chainsOf(
    train,
    check,
    read.map(({ coupling }) => coupling),
  )
  const unknowns = chains.flatMap((chain) => freeNumbers(chain))
  const observed = [
    ...read.flatMap((one) => ofCoupling(train, check, one)),
    ...ofPlaces(train, check),
  ]
  const keys = [...new Set(observed.flatMap(({ errors }) => [...errors.keys()]))]
  const columns = keys.map((key) => observed.map(({ errors }) => errors.get(key) ?? 0))
  const of = (machine: number, number: number) =>
    unknowns.findIndex((one) => one.machine === machine && one.number === number)
  const fit =
    unknowns.length === 0
      ? { unknowns: [], gains: [], squares: 0 }
      : leastSquares({
          values: observed.map(({ value }) => value),
          design: observed.map(({ gains }) =>
            unknowns.map(({ machine, number }) => gains.get(machine)?.[number] ?? 0),
          ),
          covariance: observed.map((_, i) =>
            observed.map((__, j) => columns.reduce((sum, e) => sum + (e[i] ?? 0) * (e[j] ?? 0), 0)),
          ),
        })
  const errors = keys.map((key, k) => ({
    key,
    by: fit.gains.map((row) =>
      row.reduce((sum, gain, i) => sum + gain * (columns[k]?.[i] ?? 0), 0),
    ),
  }))
  const freedom = observed.length - unknowns.length
  return {
    chains,
    machines: chains.flatMap(({ machines }) =>
      machines.map((machine) => {
        const at = four.map((number) => of(machine, number))
        const pick = (list: readonly number[]) => at.map((i) => list[i] ?? 0)
        return {
          machine,
          x: middleOf(train, machine),
          by: pick(fit.unknowns),
          errors: errors.map(({ key, by }) => ({ key, by: pick(by) })),
        }
      }),
    ),
    ...(freedom > 0 && {
      test: { squares: fit.squares, freedom, limit: chiSquareQuantile(0.05, freedom) },
    }),
  }
}

/** Which of the four numbers of each machine of a chain are looked for. */
const freeNumbers = ({ machines, held }: Chain) =>
  machines.flatMap((machine) =>
    across.flatMap((way, w) => {
      const { by, machine: fixed } = held[way]
      const [value, tilt] = [2 * w, 2 * w + 1]
      const numbers =
        machine !== fixed || by === 'measured' ? [value, tilt] : by === 'tilt' ? [value] : []
      return numbers.map((number) => ({ machine, number }))
    }),
  )

/** Middle of a machine's feet, or of its planes where it has none: where its movement is told. */
function middleOf(train: Train, machine: number): Millimetres {
  const body = train.machines[machine]
  if (body && body.feet.length > 0) return body.x0
  const planes = train.couplings.flatMap(({ left, right, p, q }) => [
    ...(right === machine ? [q] : []),
    ...(left === machine ? [p] : []),
  ])
  return planes.reduce((sum, x) => sum + x, 0) / planes.length
}

function ofCoupling(
  train: Train,
  check: HotCheck,
  one: Exclude<AtStop, { how: 'open' }>,
): Observation[] {
  const coupling = train.couplings[one.coupling]
  if (!coupling) throw new RangeError(`no coupling ${one.coupling}`)
  const cold = expectedRunning(train, coupling, one.coupling, check.state)
  const hot = [one.line.y, one.line.sy, one.line.z, one.line.sz]
  const errors = four.map((i) => {
    const all = new Map<string, number>()
    const add = (list: readonly LineError[], sign: 1 | -1) => {
      for (const { key, by } of list) all.set(key, (all.get(key) ?? 0) + sign * (by[i] ?? 0))
    }
    add(one.errors, 1)
    add(coldErrors(train, one.coupling), -1)
    return all
  })
  const gains = four.map((i) => gainsAt(train, coupling, i))
  return four.map((i) => ({
    value: (hot[i] ?? 0) - (cold[i] ?? 0),
    gains: gains[i] ?? new Map<number, readonly number[]>(),
    errors: errors[i] ?? new Map<string, number>(),
  }))
}

/** What a number of a coupling's line gains from the movement of both machines: right less left, at mid-span. */
export function gainsAt(
  train: Train,
  coupling: Coupling,
  number: number,
): ReadonlyMap<number, readonly number[]> {
  const of = (machine: number, sign: 1 | -1): [number, readonly number[]] => [
    machine,
    rowAt(number, coupling.mid - middleOf(train, machine)).map((gain) => sign * gain),
  ]
  return new Map([of(coupling.left, -1), of(coupling.right, 1)])
}

/** A value (even) or a slope (odd) at a distance, by `[y, sy, z, sz]`. */
const rowAt = (number: number, arm: Millimetres): number[] =>
  four.map((k) => (k === number ? 1 : number % 2 === 0 && k === number + 1 ? arm : 0))

/** The line that a coupling has in the state by its readings as found and the growth in use, without any aim. */
export function expectedRunning(
  train: Train,
  coupling: Coupling,
  index: number,
  state: number,
): readonly number[] {
  const id = train.states[state]?.id ?? ''
  const line = foundLines(train)[index]?.line
  if (!line) throw new RangeError(`coupling ${coupling.id} was not reduced`)
  const { misalignment: grown } = grownShift(train, coupling, id)
  const { y = 0, sy = 0, z = 0, sz = 0 } = coupling.aim.get(id) ?? {}
  return [
    line.y + grown.y + y,
    line.sy + grown.sy + sy,
    line.z + grown.z + z,
    line.sz + grown.sz + sz,
  ]
}

/** Places that were measured, less the growth of their axis there. */
const ofPlaces = (train: Train, { moved, state, place }: HotCheck): Observation[] =>
  moved.flatMap(({ machine, points }) =>
    across.flatMap((way) =>
      givenGrowth(points, grownAcross[way], place).map(
        ({ key, x, value, u, axes }): Observation => {
          const body = train.machines[machine]
          if (!body) throw new RangeError(`no machine ${machine}`)
          const grown = growthOf(body, train.states[state]?.id ?? '', axes[0] ?? 'left')
          return {
            value: value - lineValueAt(grown[grownAcross[way]], x),
            gains: new Map([[machine, rowAt(way === 'y' ? 0 : 2, x - middleOf(train, machine))]]),
            errors: new Map([[`${way} of ${body.id}, ${key}`, Math.max(u, tol.exactPlace)]]),
          }
        },
      ),
    ),
  )

export const grownAcross: Readonly<Record<AcrossWay, 'side' | 'rise'>> = { y: 'side', z: 'rise' }

const four = [0, 1, 2, 3] as const
