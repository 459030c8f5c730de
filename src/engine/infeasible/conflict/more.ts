import { axialChecks, isAxial, type AxialWhat } from '../../../mechanics/axial'
import type { Coupling } from '../../../mechanics/train'

/** One number of a coupling's tolerance as it is entered; both planes have one. */
export type ToleranceCheck = 'planes' | 'offset' | 'angle' | AxialWhat

/**
 * How much more one limit must be, as it was entered. Room: um, or mrad of a tilt. A tolerance: the
 * part of itself by which each of the checks named must be larger.
 */
export interface More {
  readonly amount: number
  /** Of a tolerance: its checks that must give; the others may stay. */
  readonly checks?: readonly ToleranceCheck[]
}

/** The check that a row or circle of a tolerance belongs to. */
export const checkOf = (what: string): ToleranceCheck =>
  what === 'offset' || what === 'angle' || isAxial(what) ? what : 'planes'

/** The numbers of a coupling's tolerance as entered: mrad, um for the offset, mm along the train (of a range half its width). */
export function limitsOf(coupling: Coupling | undefined): Map<ToleranceCheck, number> {
  const { flex, offset, angle } = coupling?.tolerance ?? {}
  const all: [ToleranceCheck, number | undefined][] = [
    ['planes', flex],
    ['offset', offset],
    ['angle', angle],
    ...(coupling?.axial
      ? axialChecks(coupling.axial, 1).map(({ what, limit }): [ToleranceCheck, number] => [
          what,
          limit,
        ])
      : []),
  ]
  return new Map(all.flatMap(([check, limit]) => (limit === undefined ? [] : [[check, limit]])))
}
