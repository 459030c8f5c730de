import { axialChecks, carriedRotor, type AxialGap, type AxialRange } from '../../../mechanics/axial'
import type { Body, Coupling, Foot, Range, Restraint, Train } from '../../../mechanics/train'
import type { ElasticLimit, RoomLimit } from '../elastic/limit'
import type { More } from './more'

/**
 * The same train with one limit larger, as somebody would enter it: what is said to be enough is
 * solved again on this one.
 */
export function loosened(
  train: Train,
  member: Exclude<ElasticLimit, { kind: 'held' }>,
  { amount, checks = [] }: More,
): Train {
  if (member.kind === 'coupling') {
    const couplings = train.couplings.map((coupling, c) =>
      c === member.coupling ? wider(coupling, 1 + amount, checks) : coupling,
    )
    return { ...train, couplings }
  }
  const bodies = train.bodies.map((body, b) =>
    b === member.body ? roomier(body, member, amount) : body,
  )
  return { ...train, bodies, machines: bodies.slice(0, train.machines.length) }
}

function wider(coupling: Coupling, times: number, checks: NonNullable<More['checks']>): Coupling {
  const { tolerance, axial } = coupling
  const { flex, offset, angle } = tolerance
  return {
    ...coupling,
    tolerance: {
      ...tolerance,
      ...(flex !== undefined && checks.includes('planes') && { flex: flex * times }),
      ...(offset !== undefined && checks.includes('offset') && { offset: offset * times }),
      ...(angle !== undefined && checks.includes('angle') && { angle: angle * times }),
    },
    ...(axial && { axial: widerAxial(axial, times, checks) }),
  }
}

/** Ranges give at both ends, by the part of half their width as it is judged. */
function widerAxial(axial: AxialGap, times: number, checks: NonNullable<More['checks']>): AxialGap {
  const byHalf = ([low, high]: AxialRange, what: 'stretch' | 'float'): AxialRange => {
    const half = axialChecks(axial, 1).find((check) => check.what === what)?.limit ?? 0
    return [low - half * (times - 1), high + half * (times - 1)]
  }
  const carried = carriedRotor(axial) ?? 'left'
  const rotor = axial.rotors[carried]
  return {
    ...axial,
    ...(checks.includes('gap') && { tolerance: axial.tolerance * times }),
    ...(axial.stretch &&
      checks.includes('stretch') && { stretch: byHalf(axial.stretch, 'stretch') }),
    ...(rotor?.float &&
      checks.includes('float') && {
        rotors: {
          ...axial.rotors,
          [carried]: { ...rotor, float: byHalf(rotor.float, 'float') },
        },
      }),
  }
}

function roomier(body: Body, member: RoomLimit, amount: number): Body {
  switch (member.kind) {
    case 'tilt':
      return { ...body, ...(body.tilt !== undefined && { tilt: body.tilt + amount }) }
    case 'restraint':
      return {
        ...body,
        restraints: body.restraints.map((restraint, r) =>
          r === member.restraint ? farther(restraint, member.way, amount) : restraint,
        ),
      }
    case 'foot':
      return {
        ...body,
        feet: body.feet.map((foot, f) =>
          f === member.foot ? freer(foot, member.limit, amount) : foot,
        ),
      }
  }
}

function farther(restraint: Restraint, way: 'axial' | 'side' | 'rise', amount: number): Restraint {
  const range = restraint[way]
  if (!range) return restraint
  const both: Range = [range[0] - amount, range[1] + amount]
  return { ...restraint, [way]: both }
}

function freer(
  foot: Foot,
  limit: Extract<RoomLimit, { kind: 'foot' }>['limit'],
  amount: number,
): Foot {
  const { pack, lift, hole } = foot
  switch (limit) {
    case 'minimum pack':
      return pack ? { ...foot, pack: { ...pack, min: pack.min - amount } } : foot
    case 'maximum pack':
      return pack?.max === undefined ? foot : { ...foot, pack: { ...pack, max: pack.max + amount } }
    case 'lift':
      return lift === undefined ? foot : { ...foot, lift: lift + amount }
    case 'hole':
      return hole ? { ...foot, hole: { ...hole, clearance: hole.clearance + 2 * amount } } : foot
    case 'shim key':
      return { ...foot, mayShim: true }
    case 'side key':
      return { ...foot, maySlide: true }
  }
}
