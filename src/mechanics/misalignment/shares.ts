import type { Micrometres, Millimetres } from '../units'
import type { Coupling, State, Train } from '../train'
import { axialChecks, type AxialWhat } from '../axial'
import type { AsFound } from '../readings/asFound'
import type { Misalignment } from '../readings/equation'
import { judgedStates } from '../engaged'
import { checksOf, checkValue, shareOf } from './check'
import { addMisalignments, stateShift } from './stateShift'

/** One limit of one coupling in one state, with where the coupling stands. Values in engine units. */
export interface CheckResult {
  readonly what: 'left plane' | 'right plane' | 'offset' | 'angle' | AxialWhat
  readonly y?: number
  readonly z?: number
  /** Of an axial check: how far it is from the middle of what is allowed (mm); + is too wide. */
  readonly x?: Millimetres
  readonly limit: number
  readonly share: number
}

export interface CouplingResult {
  readonly coupling: number
  readonly state: string
  /** Largest share over the checks. */
  readonly share: number
  readonly checks: readonly CheckResult[]
}

/** Motion of one coupling: change of its misalignment (um, mrad) and of its gap by the moves. */
export interface CouplingMotion {
  readonly misalignment: Misalignment
  readonly gap: Micrometres
}

const still: CouplingMotion = { misalignment: { y: 0, z: 0, sy: 0, sz: 0 }, gap: 0 }

/**
 * Every coupling in every state in which it is engaged, as found and moved by `motions` (one a coupling; none: as found).
 * @returns shares of tolerance, 1 for all of it
 */
export function sharesOf(
  train: Train,
  found: readonly AsFound[],
  motions?: readonly CouplingMotion[],
): CouplingResult[] {
  return train.couplings.flatMap((coupling, i) => {
    const line = found[i]?.line
    if (line === undefined) throw new RangeError(`coupling ${coupling.id} was not reduced`)
    return judgedStates(train, coupling).map(({ state }) =>
      couplingResult(train, coupling, i, state, line, motions?.[i] ?? still),
    )
  })
}

function couplingResult(
  train: Train,
  coupling: Coupling,
  index: number,
  state: State,
  line: Misalignment,
  motion: CouplingMotion,
): CouplingResult {
  const shift = stateShift(train, coupling, state.id)
  const d = addMisalignments(addMisalignments(line, shift.misalignment), motion.misalignment)
  const checks: CheckResult[] = checksOf(coupling).map((check) => {
    const value = checkValue(check, d)
    const limit = check.limit * state.factor
    return {
      what: check.what,
      ...value,
      limit,
      share: shareOf(value, limit, coupling.tolerance.shape),
    }
  })
  if (coupling.axial) {
    const { found, want } = coupling.axial
    const off = found - want + (shift.gap + motion.gap) / 1000
    for (const { what, middle, limit } of axialChecks(coupling.axial, state.factor)) {
      const x = off - middle
      checks.push({ what, x, limit, share: Math.abs(x) / limit })
    }
  }
  return {
    coupling: index,
    state: state.id,
    share: Math.max(...checks.map(({ share }) => share)),
    checks,
  }
}

/** The largest share over all couplings and states. */
export const worstShare = (results: readonly CouplingResult[]): number =>
  Math.max(...results.map(({ share }) => share))
