import { growthPoint } from '../growthSchema'
import { readingSet } from '../readingSchema'
import {
  type CouplingDocument,
  type MachineDocument,
  state,
  tolerance,
  type TrainDocument,
} from '../schema'
import type { Coupling, Train } from '../../mechanics/train'
import { asFound, type AsFound } from '../../mechanics/readings/asFound'
import { readTrain } from '../readTrain'
import { withValue } from '../place'

/**
 * One coupling of a document under way, read by itself, so that its readings can be said and checked
 * while the rest of the train is not entered yet; or why they cannot be reduced.
 */
export type AloneCoupling =
  | {
      readonly ok: true
      readonly train: Train
      readonly coupling: Coupling
      readonly found: AsFound
    }
  | { readonly ok: false; readonly why: string }

/** Sets that are not whole yet are left out, but keep their place, so that the others keep their number. */
export function aloneCoupling(document: TrainDocument, index: number): AloneCoupling {
  const joint = document.couplings[index]
  const planes = [joint?.left.plane, joint?.right.plane]
  if (!joint || planes.some((plane) => !Number.isFinite(plane)))
    return { ok: false, why: 'Enter the planes of the coupling first.' }
  if (joint.found.length === 0) return { ok: false, why: 'Nothing is read yet.' }
  const mini = miniTrain(document, joint)
  const whole = readTrain(mini)
  // growth or a setting that cannot be read yet must not hide what the readings say
  const read = whole.ok
    ? whole
    : readTrain({
        ...mini,
        machines: mini.machines.map((machine) => withValue(machine, ['growth'], undefined)),
        ...(mini.states && {
          states: mini.states.map((one) => withValue(one, ['between'], undefined)),
        }),
        couplings: mini.couplings.map((coupling) => withValue(coupling, ['setting'], undefined)),
      })
  if (!read.ok) {
    const first = read.refused.find(({ at }) => at.endsWith('.found')) ?? read.refused[0]
    return { ok: false, why: first?.why ?? '' }
  }
  const [coupling] = read.train.couplings
  if (!coupling) return { ok: false, why: '' }
  return { ok: true, train: read.train, coupling, found: asFound(coupling) }
}

function miniTrain(document: TrainDocument, joint: CouplingDocument): TrainDocument {
  const end = (side: 'left' | 'right') =>
    alone(
      document.machines.find(({ id }) => id === joint[side].machine),
      joint[side].machine,
      side,
    )
  const limits = tolerance.safeParse(joint.tolerance)
  const single = joint.left.plane === joint.right.plane
  const given =
    limits.success && Object.keys(limits.data).some((key) => /^(flex|off|ang)/.test(key))
  const states = (document.states ?? []).filter((one) => state.safeParse(one).success)
  return {
    format: 'holdfast-train',
    version: 1,
    name: '',
    units: document.units,
    clock: document.clock,
    ...(document.sides?.three &&
      document.sides.nine && { sides: { three: document.sides.three, nine: document.sides.nine } }),
    machines: [end('left'), end('right')],
    couplings: [
      {
        id: 'coupling',
        ...(joint.name !== undefined && { name: joint.name }),
        left: { machine: 'left', plane: joint.left.plane },
        right: { machine: 'right', plane: joint.right.plane },
        tolerance:
          given && !(single && limits.data.flex !== undefined) ? limits.data : { angle: 1 },
        ...(joint.setting && { setting: joint.setting }),
        found: joint.found.map((set) => {
          const whole = readingSet.safeParse(set)
          if (whole.success && !(single && whole.data.kind === 'spool')) return whole.data
          return { kind: 'line' as const, at: joint.left.plane, use: false }
        }),
      },
    ],
    ...(states.length > 0 && { states }),
  }
}

/** A machine as far as a coupling needs it: its name, its feet for how far an error reaches, its growth. */
function alone(
  machine: MachineDocument | undefined,
  otherwise: string,
  id: 'left' | 'right',
): MachineDocument {
  const feet = (machine?.feet ?? [])
    .filter(({ x }) => Number.isFinite(x))
    .map(({ x }, f) => ({ id: `${f}`, x }))
  const growth = Object.entries(machine?.growth ?? {}).filter(([, points]) =>
    points.every((point) => growthPoint.safeParse(point).success),
  )
  const name = machine?.name.trim() === '' ? undefined : machine?.name
  return {
    id,
    name: name ?? otherwise,
    axis: { left: { z: 0 }, right: { z: 0 } },
    feet,
    ...(feet.length === 0 && { anchored: 'its feet are not entered yet' }),
    ...(growth.length > 0 && { growth: Object.fromEntries(growth) }),
  }
}

/** A coupling without its readings, for what does not depend on them; undefined where it cannot be read. */
export function unreadCoupling(
  document: TrainDocument,
  index: number,
): { readonly train: Train; readonly coupling: Coupling } | undefined {
  const joint = document.couplings[index]
  if (!joint) return undefined
  const straight = { y: 0, z: 0 }
  const read = readTrain(
    miniTrain(document, {
      ...joint,
      found: [{ kind: 'line', at: joint.left.plane, offset: straight, slope: straight }],
    }),
  )
  const coupling = read.ok ? read.train.couplings[0] : undefined
  return read.ok && coupling ? { train: read.train, coupling } : undefined
}
