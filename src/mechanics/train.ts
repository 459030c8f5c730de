import type { Stator } from './stator'
import type {
  DocumentUnits,
  Kilograms,
  Micrometres,
  Millimetres,
  Milliradians,
  NewtonMetres,
} from './units'

import type { AxialGap } from './axial'
import type { HotCheck } from './hotCheck'
import type { Outage } from './outage'
import type { PlanSettings } from './planSettings'
import type { ReadingSet } from './readingSet'
import type { Survey } from './survey'
import type { GearCoupling } from './gearCoupling'

import type { GrowthPoint } from './growthPoint'

export type { GrowthPoint, GrowthQuantity, GrowthSource } from './growthPoint'
export { growthQuantities } from './growthPoint'
export type { PlanSettings, SureSettings } from './planSettings'
export type { Reading, ReadingSet } from './readingSet'

/** What a machine is for: a train file may name one of these. */
export const roles = [
  'motor',
  'turbine',
  'gearbox',
  'compressor',
  'pump',
  'fan',
  'generator',
  'blower',
  'fluid-drive',
  'expander',
  'engine',
  'other',
] as const
type Role = (typeof roles)[number]

/**
 * The train as the engine works with it: every default filled in, every number in micrometres,
 * millimetres and milliradians, every id resolved. Made by `readTrain`; never changed afterwards.
 */
export interface Train {
  readonly name: string
  readonly units: DocumentUnits
  readonly seenFrom: 'left' | 'right'
  /** Months from one alignment to the next look at the train. */
  readonly checkEvery?: number
  /** What people call the two sides; always given, "3 o'clock" and "9 o'clock" where the file names none. */
  readonly sides: { readonly three: string; readonly nine: string }
  /** Machines in train order, then skids in document order. */
  readonly bodies: readonly Body[]
  readonly machines: readonly Body[]
  readonly couplings: readonly Coupling[]
  readonly states: readonly State[]
  readonly surveys: readonly Survey[]
  readonly hotChecks: readonly HotCheck[]
  /** Oldest first. */
  readonly outages: readonly Outage[]
  readonly plan: PlanSettings
  /** Values that look like slips, of which nobody has said that they are right, in words with their place. */
  readonly asked: readonly { readonly place: string; readonly words: string }[]
}

/** Anything that moves as one piece: a machine, or a skid under machines. */
export interface Body {
  readonly id: string
  readonly name: string
  readonly kind: 'machine' | 'skid'
  readonly role: Role | 'skid'
  readonly speed?: number
  /** Place in the document, such as `machines[2]`. */
  readonly place: string
  /** Held now: chosen, or anchored. */
  readonly held: boolean
  readonly anchored?: string
  readonly may: Freedom
  /** Index in `bodies` of the skid that carries this machine. */
  readonly skid?: number
  /** Height of this body's feet above the plane of its skid's feet; 0 without a skid. */
  readonly base: Millimetres
  /** Mean x of the feet: the reference point of the motion. */
  readonly x0: Millimetres
  readonly axis: { readonly left: AxisPoint; readonly right: AxisPoint }
  /** True where the file gives two axes, as for a parallel-shaft gearbox. */
  readonly twoAxes: boolean
  readonly weight: number
  /** Of disturbing it; that of its pins which are in is part of it. */
  readonly effort: Micrometres
  readonly pins: readonly Pin[]
  readonly tilt?: Milliradians
  /** Kilograms. */
  readonly mass?: Kilograms
  /** What one jack may carry. */
  readonly jack?: Kilograms
  /** Slope from level as found, + rising to the right. */
  readonly level?: Milliradians
  readonly feet: readonly Foot[]
  /** Sets of feet at the same x, left to right: their slide counts once. */
  readonly rows: readonly FootRow[]
  readonly restraints: readonly Restraint[]
  /** Of a machine whose stator stands on feet of its own, where its air gaps count. */
  readonly stator?: Stator
  /** Points that give the growth of a state. */
  readonly growth: ReadonlyMap<string, readonly GrowthPoint[]>
  /** Points that stand beside them and do not count. */
  readonly growthBeside: ReadonlyMap<string, readonly GrowthPoint[]>
  /** What growth is made of in a state in which this body has none of its own and which lies between two others. */
  readonly growthBetween: ReadonlyMap<string, readonly GrowthPart[]>
}

/** A state whose growth counts for so much. */
export interface GrowthPart {
  readonly state: string
  readonly weight: number
}

/** The shaft axis above the plane of the feet. */
export interface AxisPoint {
  readonly y: Millimetres
  readonly z: Millimetres
}

/** What a body may do when it is not held, after its feet have had their say. */
export interface Freedom {
  readonly rise: boolean
  readonly pitch: boolean
  readonly slide: boolean
  readonly yaw: boolean
  readonly axial: boolean
  readonly roll: boolean
}

export interface Foot {
  readonly id: string
  readonly place: string
  readonly x: Millimetres
  readonly y: Millimetres
  readonly mayShim: boolean
  readonly maySlide: boolean
  readonly pack?: {
    readonly now: Micrometres
    readonly min: Micrometres
    readonly max?: Micrometres
    /** The plates that lie there now; they count while they add up to `now`. */
    readonly plates?: readonly Micrometres[]
  }
  readonly lift?: Micrometres
  readonly hole?: Hole
  /** Height of the soleplate under it against a level line of the body, + is up. */
  readonly soleplate?: Micrometres
  readonly soft?: Micrometres
  /** Gaps under the foot's corners with its bolt loosened: left end toward 3, left toward 9, right toward 3, right toward 9. */
  readonly gaps?: readonly [Micrometres, Micrometres, Micrometres, Micrometres]
  /** What its bolt is tightened to, and in which pattern with the others. */
  readonly torque?: { readonly value: NewtonMetres; readonly pattern?: string | undefined }
}

/** Ends and sides of a foot in the order in which its four gaps are given. */
export const corners = [
  { end: 'left', side: 'three' },
  { end: 'left', side: 'nine' },
  { end: 'right', side: 'three' },
  { end: 'right', side: 'nine' },
] as const

/** `x`, `y`: hole centre from bolt centre now; the document leaves them out where not measured. */
export interface Hole {
  readonly clearance: Micrometres
  readonly x: Micrometres
  readonly y: Micrometres
  readonly centred: boolean
  /** Standard uncertainty of where the bolt stands, sideways and along; undefined where the file gives none. */
  readonly u?: Micrometres
}

export interface FootRow {
  readonly x: Millimetres
  /** Indices in `feet`. */
  readonly feet: readonly number[]
}

/** What keeps a body where it stands besides its bolts. */
export const pinKinds = ['dowel', 'key'] as const
/** In its hole; drawn, and its hole still fits; drawn, and its hole to be reamed anew, since the body has moved. */
export const pinStates = ['in', 'out', 'ream'] as const

export interface Pin {
  readonly id: string
  readonly kind: (typeof pinKinds)[number]
  readonly now: (typeof pinStates)[number]
}

export type Range = readonly [low: Micrometres, high: Micrometres]

export interface Restraint {
  readonly id: string
  readonly place: string
  readonly x: Millimetres
  readonly y: Millimetres
  readonly z: Millimetres
  readonly axial?: Range
  readonly side?: Range
  readonly rise?: Range
}

export interface Coupling {
  readonly id: string
  readonly name: string
  readonly place: string
  /** Indices in `machines` (and in `bodies`, which starts with the machines). */
  readonly left: number
  readonly right: number
  /** Flex planes, p <= q. */
  readonly p: Millimetres
  readonly q: Millimetres
  readonly mid: Millimetres
  readonly tolerance: {
    readonly flex?: Milliradians
    readonly offset?: Micrometres
    readonly angle?: Milliradians
    readonly shape: 'box' | 'round'
    readonly basis?: string
  }
  readonly aim: ReadonlyMap<string, Aim>
  readonly setting?: ColdSetting
  readonly axial?: AxialGap
  /** Ids of the states in which its clutch is open, never all of them. */
  readonly disengaged?: readonly string[]
  readonly runOut?: RunOut
  /** What its teeth need, of a gear coupling. */
  readonly gear?: GearCoupling
  readonly found: readonly ReadingSet[]
}

/** How far the halves of a coupling run out over a full turn. */
export interface RunOut {
  readonly left: { readonly rim?: Micrometres; readonly face?: Micrometres }
  readonly right: { readonly rim?: Micrometres; readonly face?: Micrometres }
  readonly limit?: Micrometres
  readonly basis?: string
}

/** Misalignment wanted: offset at mid-span and slope. */
export interface Aim {
  readonly y: Micrometres
  readonly z: Micrometres
  readonly sy: Milliradians
  readonly sz: Milliradians
  /** Why it is wanted. */
  readonly why?: string
}

/**
 * How the maker wants the right axis to lie against the left one, cold. Used, it stands in every state
 * for growth and aim of its coupling; else it only stands beside them.
 */
export interface ColdSetting extends Aim {
  readonly used: boolean
  readonly from?: string
  /** Why it is used and not the growth figures. */
  readonly why?: string
  /** Parts that the file leaves out, taken as 0. */
  readonly lacks: readonly string[]
}

export interface State {
  readonly id: string
  readonly name: string
  /** Scales every limit of every coupling in this state. */
  readonly factor: number
  /** Percent. */
  readonly load?: number
  /** In the unit of the document. */
  readonly temperature?: number
  /** The two states between which growth is taken on a straight line, where a machine has none of its own. */
  readonly between?: StateBetween
}

/** Ids of two states, and how far this one lies from the first (0) to the second (1) by what was stated of all three. */
export interface StateBetween {
  readonly from: string
  readonly to: string
  readonly by: 'load' | 'temperature'
  readonly part: number
}
