import { midSpan } from '../reading'
import type { Train } from '../train'
import { knownOf, shutDown, type Direction } from './growthPoints'
import { placeOf, shaftEnds, type Joint } from './joints'
import { source, type Effect, type Source } from './source'
import { straight } from './straight'

/** Most of what is wrong with a machine's growth is wrong alike at all its points and in all its states. */
const shared = Math.sqrt(4 / 5)
const apart = Math.sqrt(1 / 5)

const directions: readonly Direction[] = ['rise', 'side', 'axial']

/** Errors by the machine and the name of their draw. */
class Draws {
  private readonly by = new Map<string, { of: string; effects: Effect[] }>()

  add(of: string, name: string, effects: Effect[]): void {
    const key = JSON.stringify([of, name])
    const known = this.by.get(key) ?? { of, effects: [] }
    this.by.set(key, { of, effects: [...known.effects, ...effects] })
  }

  sources(): Source[] {
    return [...this.by.values()].map(({ of, effects }) => source('growth', of, effects))
  }
}

/** What 1 um at one point of a shaft end does to the joint: `at` and `slope` are its part in the line. */
function inJoint(
  joint: Joint,
  direction: Direction,
  sign: number,
  here: { middle: number; plane: number; slope: number },
): Effect[] {
  if (direction === 'axial') return [{ to: placeOf(joint, 'gap'), by: sign * here.plane }]
  const [offset, slope] =
    direction === 'rise' ? (['z', 'slopeZ'] as const) : (['y', 'slopeY'] as const)
  return [
    { to: placeOf(joint, offset), by: sign * here.middle },
    { to: placeOf(joint, slope), by: sign * here.slope },
  ]
}

/** The errors of growth: a draw for a machine and direction, and one for each point, state and direction. */
export function growthErrors(train: Train, joints: readonly Joint[]): Source[] {
  const draws = new Draws()
  for (const joint of joints) {
    if (shutDown(train, joint.state.id)) continue
    const middle = midSpan(joint.c)
    for (const { machine, axis, plane, sign } of shaftEnds(joint)) {
      for (const direction of directions) {
        // a cold setting that is used has in it what the shafts do across the train
        if (direction !== 'axial' && joint.c.setting?.use === true) continue
        const known = knownOf(train, machine, axis, joint.state.id, direction)
        if (known.length === 0) continue
        const line = straight(known.map(({ at }) => at))
        const [atMiddle, atPlane] = [line.at(middle), line.at(plane)]
        known.forEach(({ name, value, u }, i) => {
          const here = {
            middle: atMiddle[i] ?? 0,
            plane: atPlane[i] ?? 0,
            slope: line.slope[i] ?? 0,
          }
          const one = inJoint(joint, direction, sign, here)
          const times = (factor: number) => one.map(({ to, by }) => ({ to, by: factor * by }))
          draws.add(machine.id, direction, times((value < 0 ? -shared : shared) * u))
          draws.add(machine.id, `${direction} ${joint.state.id} ${name}`, times(apart * u))
        })
      }
    }
  }
  return draws.sources()
}
