import type { State, StateBetween, Train } from '../mechanics/train'
import { temperatureSign } from '../mechanics/units'
import { signed } from './signed'

/**
 * How growth of a state is taken between two others: "on a straight line from "idle" (20 % load) to "full" (100 % load), at
 * 60 % load".
 */
export function betweenWords(
  { states, units }: Train,
  { between: { from, to, by }, ...state }: State & { readonly between: StateBetween },
): string {
  const stated = (one: State | undefined) => {
    const value = one?.[by]
    if (value === undefined) return by
    const digits = value < 0 ? signed(String(value)) : String(value)
    return by === 'load' ? `${digits} % load` : `${digits} ${temperatureSign(units)}`
  }
  const [first, last] = [from, to].map((end) => states.find(({ id }) => id === end))
  return `on a straight line from "${first?.name ?? from}" (${stated(first)}) to "${last?.name ?? to}" (${stated(last)}), at ${stated(state)}`
}
