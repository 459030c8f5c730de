import type { LeftOut } from './terms'

/** An offset or a slope in the two directions across the train. */
interface Pair {
  y?: number | undefined
  z?: number | undefined
}

export interface Hole {
  clearance: number
  x?: number | undefined
  y?: number | undefined
  /** How well it is known where the bolt stands in its hole. */
  u?: number | undefined
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
  /** Standard uncertainty of each quantity that the point gives. */
  u?: number | undefined
  /** Intervals in place of values. */
  range?: { rise?: Room | undefined; side?: Room | undefined; axial?: Room | undefined } | undefined
  /** False: it stands beside the others and does not count. */
  use?: boolean | undefined
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

/** What every set may say of itself. */
interface AnySet {
  u?: number | undefined
  use?: boolean | undefined
  why?: string | undefined
}

/** The bar that carries the dial of a set, and how well its sag is known. */
interface OnBracket {
  sag?: number | undefined
  uSag?: number | undefined
  bracket?: string | undefined
}

interface Rim extends AnySet, OnBracket {
  kind: 'rim'
  rides: 'left' | 'right'
  at: number
  uAt?: number | undefined
  readings: Reading[]
}

interface Face extends AnySet, OnBracket {
  kind: 'face'
  rides: 'left' | 'right'
  diameter: number
  uDiameter?: number | undefined
  face?: 'front' | 'back' | undefined
  readings: Reading[]
}

interface Gap extends AnySet {
  kind: 'gap'
  diameter: number
  uDiameter?: number | undefined
  readings: Reading[]
}

interface Spool extends AnySet, OnBracket {
  kind: 'spool'
  end: 'left' | 'right'
  diameter: number
  uDiameter?: number | undefined
  readings: Reading[]
}

export interface Line extends AnySet {
  kind: 'line'
  at: number
  offset?: Pair | undefined
  slope?: Pair | undefined
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
  speed?: number | undefined
  /** How far its halves run out. */
  runOut?:
    | {
        left?: { rim?: number | undefined; face?: number | undefined } | undefined
        right?: { rim?: number | undefined; face?: number | undefined } | undefined
        limit?: number | undefined
      }
    | undefined
  /** Least angle at its teeth, their size, and how fast they may slide. */
  gear?:
    | {
        pitch?: number | undefined
        least?: number | undefined
        sliding?: number | undefined
        states?: string[] | undefined
      }
    | undefined
  /** States in which its clutch is open. */
  disengaged?: string[] | undefined
  axial?:
    | {
        found: number
        want: number
        tolerance: number
        u?: number | undefined
        stretch?: Room | undefined
        rotors?: { left?: Rotor | undefined; right?: Rotor | undefined } | undefined
      }
    | undefined
  found: ReadingSet[]
}

/** Where a rotor may lie endwise, from where it lay when the gap was found. */
export interface Rotor {
  centre?: number | undefined
  float?: Room | undefined
}

export interface State {
  id: string
  name: string
  tolerance?: number | undefined
  load?: number | undefined
  temperature?: number | undefined
  /** The states between which a machine that says nothing of this one is taken to grow in a straight line. */
  between?: { from: string; to: string; by: 'load' | 'temperature' } | undefined
}

/** Places of shaft axes, each survey against a straight line of its own. */
export interface Survey {
  id: string
  use?: boolean | undefined
  joins?: boolean | undefined
  u?: number | undefined
  points: SurveyPoint[]
}

export interface SurveyPoint {
  machine: string
  x: number
  z?: number | undefined
  y?: number | undefined
  u?: number | undefined
}

export interface Plan {
  share?: number | undefined
  weights?: { shim?: number; side?: number; axial?: number } | undefined
  reserve?: number | undefined
  slip?: number | undefined
  guard?: number | undefined
  worst?: boolean | undefined
  sure?: Sure | undefined
}

/** How well the work is done, and what is asked about the chance. */
export interface Sure {
  shim?: number | undefined
  slide?: number | undefined
  foot?: number | undefined
  chance?: number | undefined
  draws?: number | undefined
  seed?: number | undefined
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
  surveys?: Survey[] | undefined
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

/** The sets of a coupling that count. */
export const counted = (c: Coupling): ReadingSet[] => c.found.filter((set) => set.use !== false)

/** The states a plan must satisfy: those listed, or one cold state without growth. */
export function statesOf(train: Train): State[] {
  const listed = train.states ?? []
  return listed.length > 0 ? listed : [{ id: 'cold', name: 'cold' }]
}
