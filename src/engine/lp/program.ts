import { tol } from '../../mechanics/tolerances'
import type { FootFact } from '../../mechanics/footLimits'
import type { Micrometres } from '../../mechanics/units'
import type { MotionName } from '../../mechanics/motion'
import type { ToothPlace } from '../../mechanics/gearCoupling'
import type { CheckResult } from '../../mechanics/misalignment/shares'
import type { KeptRoom } from '../../mechanics/uncertainty/kept'
import type { Affine } from './affine'

/**
 * The planner's linear program before a stage chooses its objective. Displacements are in program
 * units: a size at which coefficients, limits and moves all lie near one, as the simplex likes.
 */
export const programUnit: Micrometres = 10

/** No plan moves anything by more than 100 mm: bounds columns that the dual bound needs bounded. */
export const reach = tol.farthest / programUnit

/** Index of the column that is the share of tolerance used by the worst check. */
export const shareColumn = 0

export interface Program {
  readonly columns: readonly Column[]
  /** Columns before this index are the share and the motions; behind it stand the moves that cost. */
  readonly firstMove: number
  /** Rows that always hold. */
  readonly limits: readonly Row[]
  /** Rows that split a displacement into the two moves that are paid for. */
  readonly displacements: readonly Row[]
  readonly circles: readonly Circle[]
}

export interface Column {
  readonly name: string
  readonly lower: number
  readonly upper: number
  /** Cost in program units per program unit. */
  readonly cost: number
  readonly meaning: ColumnMeaning
}

type ColumnMeaning =
  | { readonly part: 'share' | 'room' }
  /** `scale` turns the column's value into um or mrad. */
  | {
      readonly part: 'motion'
      readonly body: number
      readonly motion: MotionName
      readonly scale: number
    }
  | { readonly part: 'move'; readonly body: number; readonly way: string }
  /** Shim change of feet that need not stand exactly in one plane. */
  | { readonly part: 'height'; readonly body: number; readonly feet: readonly number[] }

/** `lower <= sum of coefficient * column <= upper`, in program units of what the row states. */
export interface Row {
  readonly name: string
  readonly terms: readonly (readonly [column: number, coefficient: number])[]
  readonly lower: number
  readonly upper: number
  readonly meaning: Meaning
  /** Of a tolerance: the room kept free of its limit (program units), which `upper` has taken off already. */
  readonly kept?: number
}

/** The physical fact that a row or circle states. Indices are those of the train. */
export type Meaning =
  | { readonly fact: 'shim'; readonly body: number; readonly foot: number }
  | { readonly fact: FootFact; readonly body: number; readonly foot: number }
  | { readonly fact: 'slide'; readonly body: number; readonly row: number }
  | { readonly fact: 'axial' | 'tilt'; readonly body: number }
  | {
      readonly fact: 'restraint'
      readonly body: number
      readonly restraint: number
      readonly way: 'axial' | 'side' | 'rise'
    }
  | {
      /** Teeth of a gear coupling kept off dead straight, on one side. */
      readonly fact: 'least'
      readonly coupling: number
      readonly state: number
      readonly what: ToothPlace
      readonly way: 'y' | 'z'
    }
  | {
      readonly fact: 'tolerance'
      readonly coupling: number
      readonly state: number
      readonly what: CheckResult['what']
      readonly way: 'y' | 'z' | 'x' | 'round'
    }

/**
 * `hypot(u, w) <= radius`, kept by tangent cuts. The radius may grow with the share column. Where room is kept free of
 * a tolerance, n.(u, w) + room(n) <= radius in every direction n: a convex disc that is smaller by its support function.
 */
export interface Circle {
  readonly name: string
  readonly u: Affine
  readonly w: Affine
  readonly radius: Affine
  /** A solution may pass the circle by this much (program units) before another cut is added. */
  readonly slack: number
  readonly meaning: Meaning
  /** The room kept free (program units). */
  readonly kept?: KeptRoom
}

/** A tangent of a circle, at an angle (rad) from u toward w. */
export interface Cut {
  readonly circle: number
  readonly angle: number
}
