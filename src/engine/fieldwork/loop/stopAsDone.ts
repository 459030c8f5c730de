import type { WorkDone } from '../../../document/work'
import type { Band } from '../../../mechanics/misalignment/bands'
import type { AsFound } from '../../../mechanics/readings/asFound'
import type { Train } from '../../../mechanics/train'
import type { ExpectedAnswer } from '../../plan/answer'
import { expectedAt } from '../steps/judge'
import type { StepAnswer } from '../steps/answer'
import type { ReadCard, WorkCard } from '../steps/cards'
import { stopReadings, type StopGroup } from '../steps/stopReadings'
import { actualMotion } from './actual'
import { entryOf } from './stepsDone'

/** What is read at a stop point, and whether it is worked out from what was really done before it. */
export interface StopAsDone {
  readonly groups: readonly StopGroup[]
  readonly asDone: boolean
}

/**
 * What the readings of a stop point should be with the moves before it as they were written down: each band goes along with
 * its value. Where a foot before it is not ticked, or nothing differs, it is what the plan says.
 * @param found lines of the couplings (um, mrad)
 * @param work what was written down of the cards, in the fine unit of the document
 */
export function stopAsDone(
  train: Train,
  found: readonly AsFound[],
  steps: readonly StepAnswer[],
  cards: readonly WorkCard[],
  card: ReadCard,
  work: readonly WorkDone[],
): StopAsDone {
  const planned = { groups: card.groups, asDone: false }
  const at = steps.findIndex(({ id }) => id === card.instruction.id)
  const step = steps[at]
  if (!step) return planned
  // a shim that fills the air under a soft foot carries its machine nowhere
  const moved = new Set(
    steps.slice(0, at + 1).flatMap(({ id, kind }) => (kind === 'soft foot' ? [] : [id])),
  )
  const before = cards.filter((one) => one.kind === 'foot' && moved.has(one.instruction.id))
  if (before.length === 0 || before.some((one) => entryOf(one, work)?.done !== true)) return planned
  const actuals = work.flatMap(({ step: id, body, foot, done, shim, side, axial }) =>
    !done || foot === undefined || !moved.has(id)
      ? []
      : [
          {
            ...{ body, foot },
            ...(shim !== undefined && { shim }),
            ...(side !== undefined && { side }),
            ...(axial !== undefined && { axial }),
          },
        ],
  )
  const motions = train.bodies.map((body) => actualMotion(train, body, actuals))
  const couplings = train.couplings.flatMap(({ id }, c) =>
    step.expected.some(({ coupling }) => coupling === id) ? [c] : [],
  )
  const real = expectedAt(train, found, motions, couplings)
  const expected = step.expected.map((entry) => {
    const now = real.find(({ coupling, set }) => coupling === entry.coupling && set === entry.set)
    return now ? carried(entry, now) : entry
  })
  const groups = stopReadings(train, { ...step, expected })
  const told = (list: readonly StopGroup[]) =>
    list.flatMap(({ readings }) => readings.map(({ should }) => should)).join(' ')
  return told(groups) === told(card.groups) ? planned : { groups, asDone: true }
}

/** What is expected at another place, its bands as wide as they were. */
function carried(planned: ExpectedAnswer, now: ExpectedAnswer): ExpectedAnswer {
  if ('readings' in planned && 'readings' in now) {
    const value = (k: number) => now.readings[k]?.[1] ?? 0
    const good = planned.good?.map((band, k) =>
      along(band, planned.readings[k]?.[1] ?? 0, value(k)),
    )
    return { ...planned, readings: now.readings, ...(good && { good }) }
  }
  if ('offset' in planned && 'offset' in now) {
    const { offset, slope } = now
    const way = (what: 'offset' | 'slope', key: 'y' | 'z', band: Band) =>
      along(band, planned[what][key], now[what][key])
    const good = planned.good && {
      offset: {
        y: way('offset', 'y', planned.good.offset.y),
        z: way('offset', 'z', planned.good.offset.z),
      },
      slope: {
        y: way('slope', 'y', planned.good.slope.y),
        z: way('slope', 'z', planned.good.slope.z),
      },
    }
    return { ...planned, offset, slope, ...(good && { good }) }
  }
  return planned
}

const along = ([low, high]: Band, was: number, is: number): Band => [
  low + is - was,
  high + is - was,
]
