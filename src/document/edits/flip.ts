import type { DraftReading } from './hours'
import type { DraftSet } from './readingPresets'

/** Turned, without a negative zero. */
const turned = (value: unknown): unknown => (typeof value === 'number' ? 0 - value : value)

/**
 * A set as it is kept when its dial reads - as the stem is pushed in: every reading with the other
 * sign, and the sag with it, since the bar was read with the same dial.
 */
export function flippedSet<T extends DraftSet>(set: T): T {
  const readings = set['readings']
  return {
    ...set,
    ...('sag' in set && { sag: turned(set['sag']) }),
    ...(Array.isArray(readings) && {
      readings: (readings as DraftReading[]).map(([hour, value]) => [hour, turned(value)]),
    }),
  }
}

/** Whether the dial of a set has a stem whose sign could be the other one. */
export const hasDial = (kind: unknown): boolean =>
  kind === 'rim' || kind === 'face' || kind === 'spool'
