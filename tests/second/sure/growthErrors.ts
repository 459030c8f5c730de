import type { Train } from '../train'
import { influences } from './influences'
import type { Joint } from './joints'
import { source, type Effect, type Source } from './source'

/** Most of what is wrong with a machine's growth is wrong alike at all its points and in all its states. */
const shared = Math.sqrt(4 / 5)
const apart = Math.sqrt(1 / 5)

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

/**
 * The errors of growth: a draw for a machine and direction, and one for each point, state and direction.
 * Intervals are errors too, unless a plan holds for all that lies in them.
 */
export function growthErrors(
  train: Train,
  joints: readonly Joint[],
  intervals: 'uncertain' | 'held to' = 'uncertain',
): Source[] {
  const draws = new Draws()
  for (const joint of joints) {
    for (const { machine, direction, known, effects } of influences(train, joint)) {
      if (known.half !== undefined && intervals === 'held to') continue
      const times = (factor: number) => effects.map(({ to, by }) => ({ to, by: factor * by }))
      draws.add(machine.id, direction, times((known.value < 0 ? -shared : shared) * known.u))
      draws.add(machine.id, `${direction} ${known.name}`, times(apart * known.u))
    }
  }
  return draws.sources()
}
