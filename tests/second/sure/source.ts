import type { Normals } from './normals'

/** Kinds of error: what one chance or another leaves out, or what better knowledge would make smaller. */
type Group = 'readings' | 'brackets' | 'gap' | 'growth' | 'surveys' | 'work' | 'places' | 'bolts'

/** What one draw adds to one number. */
export interface Effect {
  to: number
  by: number
}

/** One error that is drawn apart from all others: what a standard normal draw of 1 adds to each number. */
export interface Source {
  group: Group
  /** The coupling, machine or body that it belongs to. */
  of: string
  effects: Effect[]
}

/** A source without what adds nothing. */
export const source = (group: Group, of: string, effects: Effect[]): Source => ({
  group,
  of,
  effects: effects.filter(({ by }) => by !== 0),
})

/** Draws every source once and adds it up, in the order of the list. */
export function addDraws(sources: readonly Source[], normals: Normals, numbers: Float64Array) {
  for (const { effects } of sources) {
    const draw = normals.next()
    for (const { to, by } of effects) numbers[to] = (numbers[to] ?? 0) + by * draw
  }
}
