import type { ReadAgain, WorkDone } from '../../../document/work'
import type { Train } from '../../../mechanics/train'
import type { ExpectedAnswer } from '../../plan/answer'
import type { StepAnswer } from '../steps/answer'
import type { NewReadings } from './compare'

/** Readings taken again, by whether they still say how the train stands. */
export interface StandingReadings {
  /** The newest of each set that nothing was moved after, each with its index in the record. */
  readonly counting: readonly { readonly index: number; readonly entry: ReadAgain }[]
  /** Read at a stop point, and left behind by work ticked at a later step or by newer readings. */
  readonly passed: readonly ReadAgain[]
}

/** Parts new readings into those that still hold and those that later moves have left behind. */
export function standingReadings(
  train: Train,
  steps: readonly Pick<StepAnswer, 'id' | 'kind'>[],
  work: readonly Pick<WorkDone, 'step' | 'body' | 'done' | 'foot'>[],
  again: readonly ReadAgain[],
): StandingReadings {
  const moved = movedSince(train, steps, work)
  const stands = (entry: ReadAgain): boolean => !moved(entry)
  const all = again.map((entry, index) => ({ entry, index }))
  const counting = all.filter(
    ({ entry, index }) =>
      stands(entry) &&
      !all.some(
        (other) =>
          other.index > index &&
          other.entry.coupling === entry.coupling &&
          other.entry.set === entry.set &&
          stands(other.entry),
      ),
  )
  return {
    counting,
    passed: all.flatMap((one) => (counting.includes(one) ? [] : [one.entry])),
  }
}

/**
 * Whether a machine beside a coupling, or what carries it, was moved after the step at whose stop point it was read; of a
 * step that is none of this plan nobody knows, and it counts as moved.
 */
export function movedSince(
  train: Train,
  steps: readonly Pick<StepAnswer, 'id' | 'kind'>[],
  work: readonly Pick<WorkDone, 'step' | 'body' | 'done' | 'foot'>[],
): (read: { readonly coupling: string; readonly step?: string | undefined }) => boolean {
  const numberOf = (id: string) => steps.findIndex((step) => step.id === id)
  const moved = work.filter(({ done, foot }) => done && foot !== undefined)
  return ({ coupling: id, step }) => {
    if (step === undefined) return false
    const at = numberOf(step)
    const coupling = train.couplings.find((one) => one.id === id)
    if (at < 0 || !coupling) return true
    const bodies = [coupling.left, coupling.right].flatMap((m) => {
      const machine = train.bodies[m]
      const skid = train.bodies[machine?.skid ?? -1]
      return [machine?.id, skid?.id]
    })
    return moved.some((entry) => bodies.includes(entry.body) && numberOf(entry.step) > at)
  }
}

/** A set laid out to be read, with nothing in it. */
export function blankOf(entry: ExpectedAnswer, step?: string): ReadAgain {
  const { coupling, set } = entry
  const common = { coupling, set, ...(step !== undefined && { step }) }
  return 'readings' in entry
    ? { ...common, readings: entry.readings.map(([hour]) => [hour]) }
    : { ...common, offset: {}, slope: {} }
}

/** A set as it counts: only when every value is in; one or none. */
export function newReadings({ coupling, set, readings, offset, slope }: ReadAgain): NewReadings[] {
  if (readings) {
    const rows = readings.flatMap(([hour, value]): [number, number][] =>
      value === undefined ? [] : [[hour, value]],
    )
    return rows.length === readings.length ? [{ coupling, set, readings: rows }] : []
  }
  const { y, z } = offset ?? {}
  const { y: sy, z: sz } = slope ?? {}
  if (y === undefined || z === undefined || sy === undefined || sz === undefined) return []
  return [{ coupling, set, offset: { y, z }, slope: { y: sy, z: sz } }]
}
