import type { GrowthPointDocument } from '../../../document/schema'
import type { Micrometres, Millimetres, Milliradians, Minutes } from '../../../mechanics/units'

/** What a hot check tells: of every coupling, of every machine, and whether a trim pays. */
export interface HotCheckAnswer {
  check: string
  name: string
  /** Id of the state that ran. */
  state: string
  when?: string
  by?: string
  couplings: HotCouplingAnswer[]
  machines: MachineMovedAnswer[]
  /** Machines that are taken to have moved as their growth says, by direction ("z" up, "y" sideways): all of it, or the tilt alone. */
  against: { machine: string; way: 'y' | 'z'; tiltAlone: boolean }[]
  /** Whether couplings and measured movement agree, where they tell more than is needed. */
  agree?: SquaresTold
  /** Growth that was found, as points of the train file that `correct` would put in use. */
  growth: { machine: string; points: GrowthPointDocument[] }[]
  trim: TrimAnswer
  sentences: string[]
}

/** Sum of squares in standard uncertainties, its degrees of freedom, and what chance passes once in 20. */
interface SquaresTold {
  chi2: number
  dof: number
  limit: number
  agree: boolean
}

interface Sides<Value> {
  y: Value
  z: Value
}

/** A line: offset at mid-span and slope, right axis against left. */
export interface LineTold {
  offset: Sides<Micrometres>
  slope: Sides<Milliradians>
}

export interface HotCouplingAnswer {
  coupling: string
  /** How the line at the stop comes about; "open": it cannot be told, and `why`; "measured": not read, it follows from movement measured. */
  how: 'at the stop' | 'fitted' | 'bounded' | 'measured' | 'open'
  why?: string
  /** Time constant, where one was fitted; null: the readings lie on a straight line. */
  cooling?: {
    time: Minutes | null
    between: [low: Minutes, high: Minutes | null]
    fits?: SquaresTold
  }
  /** What was read, minutes after the stop. */
  times: ({ after: Minutes } & LineTold)[]
  /** As it ran, as the plan expects it, and the one less the other, each with the standard uncertainty of its numbers. */
  running?: LineTold & { u: LineTold }
  expected?: LineTold
  apart?: LineTold & { u: LineTold }
  /** Part of the tolerance of that state used as it ran, from where to where 19 times of 20, and as expected. */
  share?: { running: number; low: number; high: number; expected: number }
}

interface MachineMovedAnswer {
  machine: string
  rows: {
    quantity: 'rise' | 'side'
    axis?: 'left' | 'right'
    x: Millimetres
    entered: Micrometres
    found: Micrometres
    u: Micrometres
    sigmas: number
  }[]
}

/** Whether a trim pays: now, at the next stop, or not; "open" where nothing is told of any coupling. */
export interface TrimAnswer {
  when: 'now' | 'next stop' | 'not' | 'open'
  /** The coupling that uses most of its tolerance, as it ran. */
  coupling?: string
  share?: number
  /** Between these the largest share lies, 19 times of 20. */
  band?: [low: number, high: number]
  /** What the readings show of the whole tolerance, and of the share asked for. */
  tolerance?: 'in' | 'not shown' | 'out'
  asked?: 'in' | 'not shown' | 'out'
  /** The least trim by the growth that was found. */
  plan?: TrimPlanAnswer
}

export interface TrimPlanAnswer {
  status: 'planned' | 'in-tolerance' | 'impossible' | 'unproven' | 'stopped'
  /** Whether the moves are those rounded to the shims of the store. */
  rounded: boolean
  bodies: string[]
  /** Shims over all feet, slides over all rows of feet, moves along. */
  total?: { shim: Micrometres; side: Micrometres; axial: Micrometres }
  worstShare?: number
  /** Best share that can be reached, of an impossible trim. */
  floor?: number
}
