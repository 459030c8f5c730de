import type { Misalignment } from '../readings/equation'
import type { ToothPlace } from '../gearCoupling'
import { isEngaged } from '../engaged'
import type { Coupling, Train } from '../train'
import type { Millimetres, MillimetresPerSecond, Milliradians } from '../units'
import { addMisalignments, stateShift } from './stateShift'

/** The angle at one mesh of teeth as a functional of a misalignment, as of a check of tolerance. */
export interface ToothMesh {
  readonly place: ToothPlace
  readonly offset: number
  readonly slope: number
  /** Multiplies the angle (mrad) so that it is a displacement (um) of a like size. */
  readonly lever: Millimetres
}

/** The meshes of a coupling: with planes p < q the angles are d(q)/(q-p) and -d(p)/(q-p), else the slope. */
export function toothMeshes({ p, q }: Pick<Coupling, 'p' | 'q'>): ToothMesh[] {
  const span = q - p
  if (span === 0) return [{ place: 'angle', offset: 0, slope: 1, lever: 1000 }]
  return [
    { place: 'left plane', offset: 1 / span, slope: 0.5, lever: span },
    { place: 'right plane', offset: -1 / span, slope: 0.5, lever: span },
  ]
}

/** The coupling as its teeth know it: they run on the angle there is, whatever was aimed at. */
const withoutAim = (coupling: Coupling): Coupling => ({ ...coupling, aim: new Map() })

/** How the shafts of a coupling lie in a state as it runs (um, mrad): the line, growth and moves; no aim is taken off. */
export const runningLine = (
  train: Train,
  coupling: Coupling,
  state: string,
  line: Misalignment,
): Misalignment =>
  addMisalignments(line, stateShift(train, withoutAim(coupling), state).misalignment)

/** The angle at a mesh (mrad), sideways and up. */
export const toothAngle = (
  { offset, slope }: ToothMesh,
  d: Misalignment,
): { y: Milliradians; z: Milliradians } => ({
  y: offset * d.y + slope * d.sy,
  z: offset * d.z + slope * d.sz,
})

/**
 * How fast a tooth slides along its space at most. A tooth on the pitch circle goes to and fro along the shaft by the
 * radius times the angle as the sine of a full turn, so that v = pi * pitch diameter * turns a second * angle: kinematics,
 * no source needed. Its mean over a turn is 2/pi of that.
 */
export const slidingSpeed = (
  angle: Milliradians,
  pitch: Millimetres,
  rpm: number,
): MillimetresPerSecond => (Math.PI * pitch * (rpm / 60) * angle) / 1000

/** The angle (mrad) at which teeth slide as fast as a limit lets them. */
export const angleAtSpeed = (
  speed: MillimetresPerSecond,
  pitch: Millimetres,
  rpm: number,
): Milliradians => (speed * 1000 * 60) / (Math.PI * pitch * rpm)

/** States in which a gear coupling runs: those that were named, else all in which it is engaged. */
export const runsIn = (coupling: Coupling, state: string): boolean =>
  coupling.gear !== undefined &&
  isEngaged(coupling, state) &&
  coupling.gear.states?.includes(state) !== false

/** Whether any gear coupling is to be kept off dead straight. */
export const keepsOff = ({ couplings }: Pick<Train, 'couplings'>): boolean =>
  couplings.some(({ gear }) => gear?.least !== undefined)

/** The train with no angle kept off nought on a chosen side. */
export const withoutSides = (train: Train): Train =>
  train.couplings.every(({ gear }) => (gear?.sides ?? []).length === 0)
    ? train
    : {
        ...train,
        couplings: train.couplings.map((coupling) =>
          coupling.gear ? { ...coupling, gear: { ...coupling.gear, sides: [] } } : coupling,
        ),
      }
