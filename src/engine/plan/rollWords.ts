import { fineText } from '../../language/amounts'
import type { Body, Train } from '../../mechanics/train'
import { displacementOf, displaced, noMotion } from '../../mechanics/motion'
import { showsNought, towardSide } from '../../language/sides'
import { listed } from '../../language/names'

/** Whether a body's teeth are at stake when it rolls: a gearbox, or a case with two shafts. */
export const hasTeeth = (body: Body): boolean => body.role === 'gearbox' || body.twoAxes

/** What must be done about the teeth whenever a gear's case is rolled. */
export const toothCheck =
  'roll moves the tooth contact toward one end: have it checked with blue before it runs, by somebody who signs with a name'

/**
 * What a roll (mrad) about the middle of the feet's plane does to both shafts: dy = -roll z, dz = roll y
 * at each axis. "its left shaft 40 um toward the wall, its right shaft 40 um toward the wall and 20 um up".
 */
export function rolledShafts(train: Train, body: Body, roll: number): string {
  const motion = { ...noMotion, roll }
  const way = (end: 'left' | 'right'): string => {
    const by = displacementOf(body, { x: body.x0, ...body.axis[end] })
    const [dy, dz] = [displaced(by.dy, motion), displaced(by.dz, motion)]
    const size = (value: number) => fineText(Math.abs(value), train.units)
    const parts = [
      ...(showsNought(dy, train) ? [] : [`${size(dy)} ${towardSide(train, dy)}`]),
      ...(showsNought(dz, train) ? [] : [`${size(dz)} ${dz > 0 ? 'up' : 'down'}`]),
    ]
    return parts.length === 0 ? 'nowhere' : listed(parts)
  }
  const [left, right] = [way('left'), way('right')]
  return body.twoAxes ? `its left shaft ${left}, its right shaft ${right}` : `its shaft ${left}`
}
