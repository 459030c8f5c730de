import { tidy } from '../../language/tidy'
import { micrometresPer, millimetresPer, type DocumentUnits } from '../../mechanics/units'

/** A maker's cold setting as makers print it: one machine against the other, in words and numbers. */
export interface SettingSaid {
  /** The machine that is described: at the left of the coupling or at its right. */
  readonly subject: 'left' | 'right'
  /** + where the subject is to stand higher; fine unit. */
  readonly high?: number
  /** + where the subject is to stand toward 3 o'clock; fine unit. */
  readonly toThree?: number
  /** Faces open at the top (+) or at the bottom (-) by so much (fine) across a diameter (length). */
  readonly openTop?: number
  /** Faces open at the 3 o'clock side (+) or at the other (-). */
  readonly openThree?: number
  readonly diameter?: number
}

/** The setting as the train file has it: offset in fine units, slope in mrad or mil/in. */
export interface SettingValues {
  readonly offset?: { readonly y?: number; readonly z?: number }
  readonly slope?: { readonly y?: number; readonly z?: number }
}

/**
 * What the train file keeps: the right axis against the left one. A left machine that is described
 * turns the sign of the offset. Faces open at the top where the right axis falls to the right, whichever
 * machine is described: slope = -opening / diameter.
 */
export function settingFrom(said: SettingSaid, units: DocumentUnits): SettingValues {
  const sign = said.subject === 'right' ? 1 : -1
  const offset = (value: number | undefined) =>
    value === undefined ? undefined : tidy(sign * value)
  const { diameter } = said
  const perLength = micrometresPer[units.fine] / millimetresPer[units.length]
  const slope = (open: number | undefined) =>
    open === undefined || diameter === undefined || diameter <= 0
      ? undefined
      : tidy((-open / diameter) * perLength)
  return {
    ...pair('offset', offset(said.toThree), offset(said.high)),
    ...pair('slope', slope(said.openThree), slope(said.openTop)),
  }
}

const pair = (name: 'offset' | 'slope', y: number | undefined, z: number | undefined) =>
  y === undefined && z === undefined
    ? {}
    : { [name]: { ...(y !== undefined && { y }), ...(z !== undefined && { z }) } }
