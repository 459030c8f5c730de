import type { CouplingDocument, MachineDocument, ReadingSetDocument } from './schema'
import type { AxialGap, EndwiseRotor } from '../mechanics/axial'
import type { GearCoupling } from '../mechanics/gearCoupling'
import type { ColdSetting, Coupling, ReadingSet, RunOut } from '../mechanics/train'

/** Standard uncertainty of a reading or an offset where the file gives none (um). */
const usualReadingU = 10
/** Standard uncertainty of a slope where the file gives none (mrad). */
const usualSlopeU = 0.05

/** A coupling as the engine has it, from a document in engine units; machines are found by id. */
export function convertCoupling(
  coupling: CouplingDocument,
  place: string,
  machines: readonly MachineDocument[],
): Coupling {
  const { tolerance, axial } = coupling
  const [p, q] = [coupling.left.plane, coupling.right.plane]
  const left = machines.findIndex(({ id }) => id === coupling.left.machine)
  const nameOf = (id: string) => machines.find((machine) => machine.id === id)?.name ?? id
  return {
    id: coupling.id,
    name: coupling.name ?? `${nameOf(coupling.left.machine)} to ${nameOf(coupling.right.machine)}`,
    place,
    left,
    right: left + 1,
    p,
    q,
    mid: (p + q) / 2,
    tolerance: {
      ...(tolerance.flex !== undefined && { flex: tolerance.flex }),
      ...(tolerance.offset !== undefined && {
        offset: tolerance.offset,
      }),
      ...(tolerance.angle !== undefined && { angle: tolerance.angle }),
      shape: tolerance.shape ?? 'box',
      ...(tolerance.basis !== undefined && { basis: tolerance.basis }),
    },
    aim: new Map(
      Object.entries(coupling.aim ?? {}).map(([state, aim]) => [
        state,
        {
          y: aim.offset?.y ?? 0,
          z: aim.offset?.z ?? 0,
          sy: aim.slope?.y ?? 0,
          sz: aim.slope?.z ?? 0,
          ...(aim.why !== undefined && { why: aim.why }),
        },
      ]),
    ),
    ...(coupling.setting && {
      setting: convertSetting(coupling.setting),
    }),
    ...(axial && { axial: convertAxial(axial) }),
    ...(coupling.disengaged && { disengaged: coupling.disengaged }),
    ...(coupling.runOut && { runOut: convertRunOut(coupling.runOut) }),
    ...(coupling.gear && { gear: convertGear(coupling.gear, coupling.speed) }),
    found: coupling.found.map((set, i) => convertSet(set, `${place}.found[${i}]`)),
  }
}

/** Of a document in any units: all of it is lengths. */
export function convertAxial({
  found,
  want,
  tolerance,
  u,
  stretch,
  rotors,
}: NonNullable<CouplingDocument['axial']>): AxialGap {
  const rotor = ({
    centre,
    float,
  }: NonNullable<NonNullable<typeof rotors>['left']>): EndwiseRotor => ({
    ...(centre !== undefined && { centre }),
    ...(float && { float }),
  })
  return {
    ...{ found, want, tolerance },
    ...(u !== undefined && { u }),
    ...(stretch && { stretch }),
    rotors: {
      ...(rotors?.left && { left: rotor(rotors.left) }),
      ...(rotors?.right && { right: rotor(rotors.right) }),
    },
  }
}

function convertRunOut({
  left,
  right,
  limit,
  basis,
}: NonNullable<CouplingDocument['runOut']>): RunOut {
  const half = ({ rim, face }: NonNullable<typeof left> = {}) => ({
    ...(rim !== undefined && { rim }),
    ...(face !== undefined && { face }),
  })
  return {
    left: half(left),
    right: half(right),
    ...(limit !== undefined && { limit }),
    ...(basis !== undefined && { basis }),
  }
}

function convertGear(
  { pitch, least, sliding, states, basis }: NonNullable<CouplingDocument['gear']>,
  speed: number | undefined,
): GearCoupling {
  return {
    ...(pitch !== undefined && { pitch }),
    ...(least !== undefined && { least }),
    ...(sliding !== undefined && { sliding }),
    ...(states !== undefined && { states }),
    ...(basis !== undefined && { basis }),
    ...(speed !== undefined && { speed }),
    sides: [],
  }
}

function convertSetting(setting: NonNullable<CouplingDocument['setting']>): ColdSetting {
  const { offset, slope, from, why } = setting
  const parts = [
    ['offset sideways', offset?.y],
    ['offset up and down', offset?.z],
    ['slope sideways', slope?.y],
    ['slope up and down', slope?.z],
  ] as const
  return {
    y: offset?.y ?? 0,
    z: offset?.z ?? 0,
    sy: slope?.y ?? 0,
    sz: slope?.z ?? 0,
    used: setting.use ?? false,
    ...(from !== undefined && { from }),
    ...(why !== undefined && { why }),
    lacks: parts.flatMap(([what, value]) => (value === undefined ? [what] : [])),
  }
}

/** A reading set as the engine has it, from one in engine units. */
export function convertSet(set: ReadingSetDocument, place: string): ReadingSet {
  const used = set.use ?? true
  const u = set.u ?? usualReadingU
  if (set.kind === 'line') {
    const given = (pair: { y?: number | undefined; z?: number | undefined } = {}) => ({
      ...(pair.y !== undefined && { y: pair.y }),
      ...(pair.z !== undefined && { z: pair.z }),
    })
    return {
      kind: 'line',
      place,
      used,
      at: set.at,
      offset: given(set.offset),
      slope: given(set.slope),
      u,
      uGiven: set.u !== undefined,
      uSlope: set.uSlope ?? usualSlopeU,
      uSlopeGiven: set.uSlope !== undefined,
    }
  }
  const sweep = {
    place,
    used,
    u,
    uGiven: set.u !== undefined,
    readings: set.readings.map(([hour, value]) => ({ hour, value })),
  }
  if (set.kind === 'gap') return { ...sweep, ...acrossOf(set), kind: 'gap' }
  const sag = {
    sag: set.sag ?? 0,
    sagGiven: set.sag !== undefined,
    ...(set.uSag !== undefined && { uSag: set.uSag }),
    ...(set.bracket !== undefined && { bracket: set.bracket }),
  }
  switch (set.kind) {
    case 'rim':
      return {
        ...sweep,
        ...sag,
        kind: 'rim',
        rides: set.rides,
        at: set.at,
        ...(set.uAt !== undefined && { uAt: set.uAt }),
      }
    case 'face':
      return {
        ...sweep,
        ...sag,
        ...acrossOf(set),
        kind: 'face',
        rides: set.rides,
        face: set.face ?? 'front',
      }
    case 'spool':
      return {
        ...sweep,
        ...sag,
        ...acrossOf(set),
        kind: 'spool',
        end: set.end,
      }
  }
}

/** The circle on which a dial or a gauge reads a face. */
const acrossOf = ({
  diameter,
  uDiameter,
}: {
  readonly diameter: number
  readonly uDiameter?: number | undefined
}) => ({ diameter, ...(uDiameter !== undefined && { uDiameter }) })
