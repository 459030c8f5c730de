import type { CouplingDocument, MachineDocument, ReadingSetDocument } from './schema'
import type { Door } from './unitConverter'
import type { ColdSetting, Coupling, ReadingSet } from '../mechanics/train'

/** Standard uncertainty of a reading or an offset where the file gives none (um). */
export const usualReadingU = 10
/** Standard uncertainty of a slope where the file gives none (mrad). */
export const usualSlopeU = 0.05

/** A coupling in engine units; machines are found by id. */
export function convertCoupling(
  coupling: CouplingDocument,
  place: string,
  machines: readonly MachineDocument[],
  door: Door,
): Coupling {
  const { tolerance, axial } = coupling
  const p = door.length(coupling.left.plane, `${place}.left.plane`)
  const q = door.length(coupling.right.plane, `${place}.right.plane`)
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
        offset: door.fine(tolerance.offset, `${place}.tolerance.offset`),
      }),
      ...(tolerance.angle !== undefined && { angle: tolerance.angle }),
      shape: tolerance.shape ?? 'box',
      ...(tolerance.basis !== undefined && { basis: tolerance.basis }),
    },
    aim: new Map(
      Object.entries(coupling.aim ?? {}).map(([state, aim]) => [
        state,
        {
          y: door.fine(aim.offset?.y ?? 0, `${place}.aim.${state}.offset.y`),
          z: door.fine(aim.offset?.z ?? 0, `${place}.aim.${state}.offset.z`),
          sy: aim.slope?.y ?? 0,
          sz: aim.slope?.z ?? 0,
        },
      ]),
    ),
    ...(coupling.setting && {
      setting: convertSetting(coupling.setting, `${place}.setting`, door),
    }),
    ...(axial && {
      axial: {
        found: door.length(axial.found, `${place}.axial.found`),
        want: door.length(axial.want, `${place}.axial.want`),
        tolerance: door.length(axial.tolerance, `${place}.axial.tolerance`),
      },
    }),
    found: coupling.found.map((set, i) => convertSet(set, `${place}.found[${i}]`, door)),
  }
}

function convertSetting(
  setting: NonNullable<CouplingDocument['setting']>,
  place: string,
  door: Door,
): ColdSetting {
  const { offset, slope, from, why } = setting
  const parts = [
    ['offset sideways', offset?.y],
    ['offset up and down', offset?.z],
    ['slope sideways', slope?.y],
    ['slope up and down', slope?.z],
  ] as const
  return {
    y: door.fine(offset?.y ?? 0, `${place}.offset.y`),
    z: door.fine(offset?.z ?? 0, `${place}.offset.z`),
    sy: slope?.y ?? 0,
    sz: slope?.z ?? 0,
    used: setting.use ?? false,
    ...(from !== undefined && { from }),
    ...(why !== undefined && { why }),
    lacks: parts.flatMap(([what, value]) => (value === undefined ? [what] : [])),
  }
}

function convertSet(set: ReadingSetDocument, place: string, door: Door): ReadingSet {
  const used = set.use ?? true
  const u = set.u === undefined ? usualReadingU : door.fine(set.u, `${place}.u`)
  if (set.kind === 'line') {
    const offset = (way: 'y' | 'z') => {
      const given = set.offset?.[way]
      return given === undefined ? {} : { [way]: door.fine(given, `${place}.offset.${way}`) }
    }
    const slope = (way: 'y' | 'z') => {
      const given = set.slope?.[way]
      return given === undefined ? {} : { [way]: given }
    }
    return {
      kind: 'line',
      place,
      used,
      at: door.length(set.at, `${place}.at`),
      offset: { ...offset('y'), ...offset('z') },
      slope: { ...slope('y'), ...slope('z') },
      u,
      uSlope: set.uSlope ?? usualSlopeU,
    }
  }
  const sweep = {
    place,
    used,
    u,
    readings: set.readings.map(([hour, value], i) => ({
      hour,
      value: door.fine(value, `${place}.readings[${i}][1]`),
    })),
  }
  if (set.kind === 'gap')
    return { ...sweep, kind: 'gap', diameter: door.length(set.diameter, `${place}.diameter`) }
  const sag = { sag: door.fine(set.sag ?? 0, `${place}.sag`), sagGiven: set.sag !== undefined }
  switch (set.kind) {
    case 'rim':
      return {
        ...sweep,
        ...sag,
        kind: 'rim',
        rides: set.rides,
        at: door.length(set.at, `${place}.at`),
      }
    case 'face':
      return {
        ...sweep,
        ...sag,
        kind: 'face',
        rides: set.rides,
        face: set.face ?? 'front',
        diameter: door.length(set.diameter, `${place}.diameter`),
      }
    case 'spool':
      return {
        ...sweep,
        ...sag,
        kind: 'spool',
        end: set.end,
        diameter: door.length(set.diameter, `${place}.diameter`),
      }
  }
}
