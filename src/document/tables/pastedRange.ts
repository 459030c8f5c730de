import type { PastedValues } from './pasted'

type Pasted = PastedValues[string] | undefined

/**
 * Both ends of a range of which a row gives one or both; an end it does not give stays as it was.
 * @returns undefined where the row gives neither, or why there is no range
 */
export function pastedRange(
  what: string,
  before: unknown,
  [low, high]: readonly [Pasted, Pasted],
): readonly [number, number] | string | undefined {
  if (low === undefined && high === undefined) return undefined
  const old = (before ?? []) as readonly unknown[]
  const from = low ?? old[0]
  const to = high ?? old[1]
  return typeof from === 'number' && typeof to === 'number'
    ? [from, to]
    : `${what}: one end of the range is given, the other end is needed too`
}
