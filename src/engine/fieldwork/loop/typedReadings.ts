import { withValue } from '../../../document/place'
import type { ReadAgain } from '../../../document/work'
import type { StepAnswer } from '../steps/answer'
import type { StopGroup, StopReading } from '../steps/stopReadings'
import { blankOf } from './standingReadings'

/** Sets as they are typed at the stop point of a step, in the document's units. */
export const typedSet = (
  again: readonly ReadAgain[],
  step: string,
  { coupling, set }: Pick<StopGroup, 'coupling' | 'set'>,
): ReadAgain | undefined =>
  again.find((entry) => entry.step === step && entry.coupling === coupling && entry.set === set)

/** What was typed of one reading; 0 where its dial is set to 0. */
export function typedValue(
  again: readonly ReadAgain[],
  step: string,
  group: StopGroup,
  { at, band }: StopReading,
): number | undefined {
  const entry = typedSet(again, step, group)
  if (at.kind === 'line') return entry?.[at.what]?.[at.way]
  if (at.kind !== 'hour') return undefined
  return entry?.readings?.find(([hour]) => hour === at.hour)?.[1] ?? (band ? undefined : 0)
}

/** All that was read, with one reading more in its set, or one less. */
export function withReading(
  again: readonly ReadAgain[],
  step: StepAnswer,
  group: StopGroup,
  { at }: StopReading,
  value: number | undefined,
): ReadAgain[] {
  const typed = typedSet(again, step.id, group)
  const now = typed ?? blankAt(step, group)
  if (!now || at.kind === 'stays' || at.kind === 'gap') return [...again]
  const next: ReadAgain =
    at.kind === 'line'
      ? { ...now, [at.what]: withValue(now[at.what] ?? {}, [at.way], value) }
      : {
          ...now,
          readings: (now.readings ?? []).map(([hour, was]) => {
            const kept = hour === at.hour ? value : was
            return kept === undefined ? [hour] : [hour, kept]
          }),
        }
  return typed ? again.map((entry) => (entry === typed ? next : entry)) : [...again, next]
}

/** A set as it is laid out at a stop point: 0 where its dial is set to 0. */
function blankAt(step: StepAnswer, group: StopGroup): ReadAgain | undefined {
  const expected = step.expected.find(
    (entry) => entry.coupling === group.coupling && entry.set === group.set,
  )
  if (!expected) return undefined
  const blank = blankOf(expected, step.id)
  if (!blank.readings) return blank
  const zeros = group.readings.flatMap(({ at, band }) =>
    at.kind === 'hour' && !band ? [at.hour] : [],
  )
  return {
    ...blank,
    readings: blank.readings.map(([hour]) => (zeros.includes(hour) ? [hour, 0] : [hour])),
  }
}
