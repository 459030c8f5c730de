import { tol } from '../../../mechanics/tolerances'
import { axialChecks } from '../../../mechanics/axial'
import { judgedStates } from '../../../mechanics/engaged'
import type { Coupling } from '../../../mechanics/train'
import { checksOf, type Check } from '../../../mechanics/misalignment/check'
import { addMisalignments, stateShift } from '../../../mechanics/misalignment/stateShift'
import type { Misalignment } from '../../../mechanics/readings/equation'
import type { KeptRooms } from '../../../mechanics/uncertainty/kept'
import { combine, constant, type Affine } from '../affine'
import type { Frame } from '../frame'
import { programUnit, shareColumn, type Circle, type Meaning, type Row } from '../program'
import { keptFree } from './keptFree'

/**
 * The tolerances of every coupling in every state: rows where y and z count apart, circles where round.
 * @param kept room kept free of them; none: to the limit itself
 */
export function tolerances(
  frame: Frame,
  kept: KeptRooms | undefined,
): { rows: Row[]; circles: Circle[] } {
  const rows: Row[] = []
  const circles: Circle[] = []
  frame.train.couplings.forEach((coupling, c) => {
    const motion = couplingMotion(frame, coupling)
    for (const { state, s } of judgedStates(frame.train, coupling)) {
      const shift = stateShift(frame.train, coupling, state.id)
      const line = frame.found[c]?.line
      if (!line) throw new RangeError(`coupling ${coupling.id} was not reduced`)
      const standing = addMisalignments(line, shift.misalignment)
      for (const check of checksOf(coupling)) {
        const limit = (check.limit * check.lever * state.factor) / programUnit
        const y = component(check, motion.y, motion.sy, standing.y, standing.sy)
        const z = component(check, motion.z, motion.sz, standing.z, standing.sz)
        const name = `${check.what} ${coupling.id} ${state.id}`
        const meaning = (way: 'y' | 'z' | 'round'): Meaning => ({
          fact: 'tolerance',
          coupling: c,
          state: s,
          what: check.what,
          way,
        })
        if (coupling.tolerance.shape === 'round')
          circles.push({
            name,
            u: y,
            w: z,
            radius: { constant: 0, terms: new Map([[shareColumn, limit]]) },
            slack: tol.roundSlack * limit,
            meaning: meaning('round'),
          })
        else
          rows.push(
            ...within(`${name} side`, y, limit, meaning('y')),
            ...within(`${name} rise`, z, limit, meaning('z')),
          )
      }
      if (coupling.axial) {
        const { found, want } = coupling.axial
        for (const { what, middle, limit } of axialChecks(coupling.axial, state.factor)) {
          const off = (found - want - middle) * 1000 + shift.gap
          const error = combine([1, constant(off / programUnit)], [1, motion.gap])
          rows.push(
            ...within(`${what} ${coupling.id} ${state.id}`, error, (limit * 1000) / programUnit, {
              fact: 'tolerance',
              coupling: c,
              state: s,
              what,
              way: 'x',
            }),
          )
        }
      }
    }
  })
  const free = keptFree(frame.train, kept)
  return { rows: rows.map(free.row), circles: circles.map(free.circle) }
}

/** A check's component in program units: what stands, and what the moves add. */
function component(
  check: Check,
  offset: Affine,
  slope: Affine,
  standing: Misalignment['y'],
  standingSlope: Misalignment['sy'],
): Affine {
  const now = check.offset * standing + check.slope * standingSlope
  return combine(
    [1, constant((now * check.lever) / programUnit)],
    [check.offset * check.lever, offset],
    [check.slope * check.lever, slope],
  )
}

/** |expression| <= share * limit, as two rows. */
function within(name: string, expression: Affine, limit: number, meaning: Meaning): Row[] {
  return ([1, -1] as const).map((sign) => {
    const part = combine([sign, expression])
    return {
      name: `${name} ${sign > 0 ? '+' : '-'}`,
      terms: [...part.terms, [shareColumn, -limit] as const],
      lower: -Infinity,
      upper: -part.constant,
      meaning,
    }
  })
}

/** How the moves change a coupling's offset at mid-span, slope and gap: right axis against left. */
export function couplingMotion(
  frame: Frame,
  coupling: Coupling,
): { y: Affine; z: Affine; sy: Affine; sz: Affine; gap: Affine } {
  const { machines } = frame.train
  const left = machines[coupling.left]?.axis.right
  const right = machines[coupling.right]?.axis.left
  if (!left || !right) throw new RangeError(`coupling ${coupling.id} joins no machines`)
  const difference = (way: 'dx' | 'dy' | 'dz', xLeft: number, xRight: number) =>
    combine(
      [1, frame.displacement(coupling.right, { x: xRight, ...right }, way, 'all')],
      [-1, frame.displacement(coupling.left, { x: xLeft, ...left }, way, 'all')],
    )
  const slope = (way: 'sy' | 'sz') =>
    combine([1, frame.slope(coupling.right, way)], [-1, frame.slope(coupling.left, way)])
  return {
    y: difference('dy', coupling.mid, coupling.mid),
    z: difference('dz', coupling.mid, coupling.mid),
    sy: slope('sy'),
    sz: slope('sz'),
    gap: difference('dx', coupling.p, coupling.q),
  }
}
