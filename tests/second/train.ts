import type { LeftOut } from './terms'

/** An offset or a slope in the two directions across the train. */
interface Pair {
  y?: number | undefined
  z?: number | undefined
}

interface Hole {
  clearance: number
  x?: number | undefined
  y?: number | undefined
}

export interface Foot {
  id: string
  x: number
  y?: number | undefined
  free?: { shim?: boolean | undefined; side?: boolean | undefined } | undefined
  pack?:
    | {
        now: number
        min?: number | undefined
        max?: number | undefined
        plates?: number[] | undefined
      }
    | undefined
  lift?: number | undefined
  hole?: Hole | undefined
}

export type Room = [number, number]

export interface Restraint {
  id: string
  x: number
  y?: number | undefined
  z: number
  axial?: Room | undefined
  side?: Room | undefined
  rise?: Room | undefined
}

/** What a machine and a skid have in common: a body that moves rigidly on feet. */
export interface Body {
  id: string
  name: string
  held?: boolean | undefined
  anchored?: string | undefined
  free?: { shim?: boolean; side?: boolean; axial?: boolean; roll?: boolean } | undefined
  weight?: number | undefined
  tilt?: number | undefined
  feet: Foot[]
  restraints?: Restraint[] | undefined
}

interface AxisPoint {
  y?: number | undefined
  z: number
}

export interface GrowthPoint {
  at: number
  axis?: 'left' | 'right' | undefined
  rise?: number | undefined
  side?: number | undefined
  axial?: number | undefined
  heat?: { height: number; expansion: number; from: number; to: number } | undefined
}

export interface Machine extends Body {
  base?: number | undefined
  axis: AxisPoint | { left: AxisPoint; right: AxisPoint }
  growth?: Record<string, GrowthPoint[]> | undefined
}

export interface Skid extends Body {
  carries: string[]
}

export type Reading = [hour: number, value: number]

interface Rim {
  kind: 'rim'
  rides: 'left' | 'right'
  at: number
  sag?: number | undefined
  readings: Reading[]
  u?: number | undefined
}

interface Face {
  kind: 'face'
  rides: 'left' | 'right'
  diameter: number
  face?: 'front' | 'back' | undefined
  sag?: number | undefined
  readings: Reading[]
  u?: number | undefined
}

interface Gap {
  kind: 'gap'
  diameter: number
  readings: Reading[]
  u?: number | undefined
}

interface Spool {
  kind: 'spool'
  end: 'left' | 'right'
  diameter: number
  sag?: number | undefined
  readings: Reading[]
  u?: number | undefined
}

export interface Line {
  kind: 'line'
  at: number
  offset?: Pair | undefined
  slope?: Pair | undefined
  u?: number | undefined
  uSlope?: number | undefined
}

export type Sweep = Rim | Face | Gap | Spool
export type ReadingSet = Sweep | Line

export interface Aim {
  offset?: Pair | undefined
  slope?: Pair | undefined
}

/** What the maker asks for, cold; used in place of growth and aim, or kept beside them. */
export interface Setting extends Aim {
  from?: string | undefined
  use?: boolean | undefined
  why?: string | undefined
}

export interface Coupling {
  id: string
  left: { machine: string; plane: number }
  right: { machine: string; plane: number }
  tolerance: {
    flex?: number | undefined
    offset?: number | undefined
    angle?: number | undefined
    shape?: 'box' | 'round' | undefined
  }
  aim?: Record<string, Aim> | undefined
  setting?: Setting | undefined
  axial?: { found: number; want: number; tolerance: number } | undefined
  found: ReadingSet[]
}

export interface State {
  id: string
  name: string
  tolerance?: number | undefined
}

export interface Plan {
  share?: number | undefined
  weights?: { shim?: number; side?: number; axial?: number } | undefined
  reserve?: number | undefined
  slip?: number | undefined
}

export interface Train {
  format: 'holdfast-train'
  version: 1
  name: string
  units: { length: 'mm' | 'in'; fine: 'um' | 'mm' | 'mil'; temperature?: 'C' | 'F' | undefined }
  clock: { seenFrom: 'left' | 'right' }
  machines: Machine[]
  skids?: Skid[] | undefined
  couplings: Coupling[]
  states?: State[] | undefined
  plan?: Plan | undefined
}

/** Millimetres in one length unit of the document. */
export function lengthFactor(train: Train, leaveOut?: LeftOut): number {
  return train.units.length === 'in' && leaveOut !== 'length unit' ? 25.4 : 1
}

/** Micrometres in one fine unit of the document. */
export function fineFactor(train: Train, leaveOut?: LeftOut): number {
  if (leaveOut === 'fine unit') return 1
  return { um: 1, mm: 1000, mil: 25.4 }[train.units.fine]
}

/** The states a plan must satisfy: those listed, or one cold state without growth. */
export function statesOf(train: Train): State[] {
  const listed = train.states ?? []
  return listed.length > 0 ? listed : [{ id: 'cold', name: 'cold' }]
}
