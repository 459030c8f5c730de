import { describe, expect, it } from 'vitest'
import { micrometresPer } from '../../src/mechanics/units'
import { readTrain } from '../../src/document/readTrain'
import type { ReadAgain, WorkDone } from '../../src/document/work'
import type { NewReadings } from '../../src/engine/fieldwork/loop/compare'
import { standingReadings } from '../../src/engine/fieldwork/loop/standingReadings'
import { isStepDone, stepsDone, stepsDoneText } from '../../src/engine/fieldwork/loop/stepsDone'
import { typedValue, withReading } from '../../src/engine/fieldwork/loop/typedReadings'
import { stopVerdict } from '../../src/engine/fieldwork/loop/stopVerdict'
import { workCards, type ReadCard } from '../../src/engine/fieldwork/steps/cards'
import { instructionsOf } from '../../src/engine/fieldwork/steps/instructions'
import { judgeReading, type StopGroup } from '../../src/engine/fieldwork/steps/stopReadings'
import type { StepAnswer } from '../../src/engine/fieldwork/steps/answer'
import { stopAsDone } from '../../src/engine/fieldwork/loop/stopAsDone'
import { foundLines } from '../../src/mechanics/uncertainty/foundLines'
import { exampleOf } from '../paper/sheets'
import { mustPlan, stepsFor, wholeAnswer } from '../planned'
import { solver } from '../engine/pair'

/** An example with its order of work and cards. */
function work(name: string) {
  const read = readTrain(exampleOf(name))
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const answer = mustPlan(wholeAnswer(read, solver, { prices: false, packs: true }))
  const steps = stepsFor(read, answer)?.steps ?? []
  const { train } = read
  return { train, answer, steps, cards: workCards(train, instructionsOf(train, { steps })) }
}
const blast = work('piped-compressor')

const reads = ({ cards }: typeof blast): ReadCard[] =>
  cards.flatMap((card) => (card.kind === 'read' ? [card] : []))
const indexOf = (steps: readonly StepAnswer[], { instruction }: ReadCard): number =>
  steps.findIndex(({ id }) => id === instruction.id)

/** What a stop point expects of a coupling, as if it had been read so, `more` added at 6 o'clock (um). */
function asExpected({ train, steps }: typeof blast, at: number, coupling: string): NewReadings[] {
  const per = micrometresPer[train.units.fine]
  return (steps[at]?.expected ?? []).flatMap((entry): NewReadings[] =>
    entry.coupling === coupling && 'readings' in entry
      ? [
          {
            ...{ coupling, set: entry.set },
            readings: entry.readings.map(([hour, value]) => [hour, value / per]),
          },
        ]
      : [],
  )
}

describe('a reading typed at a stop point', () => {
  const one = { band: [19, 43] as const, decimals: 0, unit: 'µm' }

  it('is inside up to the last digit that is shown, and outside by what it is over', () => {
    for (const value of [19, 31, 43, 43.4]) expect(judgeReading(one, value).words).toBe('inside')
    expect(judgeReading(one, 55)).toEqual({ inside: false, words: 'outside by 12 µm, above' })
    expect(judgeReading(one, -31).words).toBe('outside by 50 µm, below')
    const mil = { band: [-0.4, 0.4] as const, decimals: 1, unit: 'mil' }
    expect(judgeReading(mil, 0.4).inside).toBe(true)
    expect(judgeReading(mil, 0.7).words).toBe('outside by 0.3 mil, above')
  })

  it('has a card of its own after the feet, with the bands that the sentences tell', () => {
    const cards = reads(blast)
    expect(cards.length).toBeGreaterThan(2)
    for (const { groups, instruction } of cards) {
      const told = instruction.readings.join(' ')
      for (const { readings, coupling } of groups)
        for (const { should, good, band, at } of readings)
          if (coupling !== undefined && at.kind === 'hour') {
            expect(told).toContain(`at ${at.hour}: ${should}${good === '' ? '' : ` (${good})`}`)
            if (band) expect(band[0]).toBeLessThan(band[1])
          }
    }
    const last = new Map(blast.cards.map((card) => [card.instruction.id, card]))
    for (const card of blast.cards)
      expect(card.stop).toBe(
        last.get(card.instruction.id) === card ? card.instruction.stop : undefined,
      )
  })

  it('takes what dials that must stay show as well', () => {
    const dials = reads(blast).flatMap(({ groups }) => groups.filter(({ key }) => key === 'dials'))
    expect(dials.length).toBeGreaterThan(0)
    for (const { readings } of dials)
      for (const reading of readings) {
        expect(reading.should).toBe('0')
        expect(judgeReading(reading, 0).inside).toBe(true)
        expect(judgeReading(reading, 60).words).toMatch(/^outside by \d+ µm, above$/)
      }
  })
})

describe('the readings of a coupling at a stop point', () => {
  it('as expected at the last one are in, with the shares of the plan', () => {
    const { train, answer, steps } = blast
    const at = steps.length - 1
    for (const { coupling } of steps[at]?.judge ?? []) {
      const told = stopVerdict(train, steps, at, coupling, asExpected(blast, at, coupling))
      expect(told?.verdict).toMatch(/^(in|over the share)$/)
      const own = Math.max(
        ...answer.couplings.flatMap((one) =>
          one.coupling === coupling
            ? one.checks.flatMap(({ what, share }) => (what === 'gap' ? [] : [share]))
            : [],
        ),
      )
      const share = Number(/: (\d+) % of tolerance/.exec(told?.words ?? '')?.[1])
      expect(Math.abs(share - 100 * own)).toBeLessThan(3)
    }
  })

  it('far off are out at a state that is named', () => {
    const { train, steps } = blast
    const at = steps.length - 1
    const id = steps[at]?.judge[0]?.coupling ?? ''
    const measured = asExpected(blast, at, id).map((entry) => {
      if (!('readings' in entry)) return entry
      // both dials by what an axis 600 um low shows at each hour
      const turn = (hour: number) =>
        (entry.set === 0 ? 1 : -1) * 600 * (hour === 6 ? -2 : hour === 12 ? 0 : -1)
      return {
        ...entry,
        readings: entry.readings.map(([h, v]): [number, number] => [h, v + turn(h)]),
      }
    })
    const told = stopVerdict(train, steps, at, id, measured)
    expect(told?.words).toMatch(/^Out at .+, .+: \d{3,} % of tolerance, give or take \d+ %\./)
  })

  it('where a machine beside it has still to move are judged with that move to come', () => {
    const { train, steps } = blast
    let waiting = 0
    steps.forEach((step, at) => {
      for (const { coupling, judge } of step.judge) {
        if (judge !== 'not yet') continue
        const told = stopVerdict(train, steps, at, coupling, asExpected(blast, at, coupling))
        expect(told?.words).toMatch(/^With the moves to come, as planned: in, in every state/)
        waiting++
      }
    })
    expect(waiting).toBeGreaterThan(0)
  })

  it('are not judged before every set that fixes the line is whole', () => {
    const { train, steps } = blast
    const at = steps.length - 1
    const id = steps[at]?.judge[0]?.coupling ?? ''
    const some = asExpected(blast, at, id).slice(0, 1)
    expect(stopVerdict(train, steps, at, id, some)).toBeUndefined()
  })
})

describe('readings typed at stop points', () => {
  const { train, steps } = blast
  const [first, second] = reads(blast)
  if (!first || !second) throw new Error('too few stop points')
  const id = steps[indexOf(steps, first)]?.judge[0]?.coupling ?? ''
  const entry = (step: string, value: number): ReadAgain => ({
    ...{ coupling: id, set: 0, step },
    readings: [[12, value]],
  })

  it('count until work at their coupling is ticked at a later step', () => {
    const again = [entry(first.instruction.id, 1)]
    expect(standingReadings(train, steps, [], again).counting).toHaveLength(1)
    const body = first.instruction.body
    const done = (step: string) => ({ step, body, foot: '1', done: true })
    const before = [done(first.instruction.id)]
    expect(standingReadings(train, steps, before, again).counting).toHaveLength(1)
    const later = steps.slice(indexOf(steps, first) + 1).find((step) => step.body === body)
    const after = standingReadings(train, steps, [done(later?.id ?? '')], again)
    expect([after.counting.length, after.passed.length]).toEqual([0, 1])
    const unticked = [{ ...done(later?.id ?? ''), done: false }]
    expect(standingReadings(train, steps, unticked, again).counting).toHaveLength(1)
  })

  it('give way to those read later', () => {
    const again = [entry(first.instruction.id, 1), entry(second.instruction.id, 2)]
    const { counting } = standingReadings(train, steps, [], again)
    expect(counting.map(({ index }) => index)).toEqual([1])
  })
})

describe('what was typed at a stop point', () => {
  const { steps, cards } = blast
  const [card] = reads(blast)
  if (!card) throw new Error('no stop point')
  const step = card.instruction.step
  const sets = card.groups.filter(({ coupling }) => coupling !== undefined)
  const type = (again: readonly ReadAgain[], of: readonly StopGroup[], value: number) =>
    of.reduce<ReadAgain[]>(
      (all, group) =>
        group.readings.reduce<ReadAgain[]>(
          (some, reading) => (reading.band ? withReading(some, step, group, reading, value) : some),
          all,
        ),
      [...again],
    )

  it('is kept reading by reading, with the 0 that a dial is set to', () => {
    const [group] = sets
    const [zero, first] = group?.readings ?? []
    if (!group || !zero || !first) throw new Error('no readings')
    expect([zero.band, zero.good]).toEqual([undefined, ''])
    const once = withReading([], step, group, first, -1500)
    expect(once).toEqual([
      {
        ...{ coupling: group.coupling, set: group.set, step: step.id },
        readings: [[12, 0], [3, -1500], [6], [9]],
      },
    ])
    expect(typedValue(once, step.id, group, first)).toBe(-1500)
    expect(typedValue(once, step.id, group, zero)).toBe(0)
    const taken = withReading(once, step, group, first, undefined)
    expect(typedValue(taken, step.id, group, first)).toBeUndefined()
    // of another stop point it is nothing
    expect(typedValue(once, 'another', group, first)).toBeUndefined()
    expect(withReading(type([], sets, 1), step, group, first, 2)).toHaveLength(sets.length)
  })

  it('says which steps are done, whole sets alone', () => {
    const none = stepsDone(cards, [], [])
    expect([none.done, none.of, stepsDoneText(none)]).toEqual([0, 6, '0 of 6 steps done'])
    const some = stepsDone(cards, [], type([], sets.slice(1), 1))
    expect(some.done).toBe(0)
    const all = stepsDone(cards, [], type([], sets, 1))
    expect([...all.progress.values()].filter((one) => one === 'read past')).toHaveLength(1)
    expect(all.progress.get(step.id)).toBe('read past')
    expect(isStepDone(all, step.id)).toBe(true)
    expect(isStepDone(none, step.id)).toBe(false)
    expect(isStepDone(all, 'no such step')).toBe(false)
  })

  it('counts a step as ticked with all its cards, feet and stop point', () => {
    const work = cards
      .filter(({ instruction }) => instruction.id === step.id)
      .flatMap((one) => {
        const done = { step: step.id, body: one.instruction.body, done: true }
        return one.kind === 'foot' ? one.feet.map((foot) => ({ ...done, foot })) : [done]
      })
    expect(stepsDone(cards, work, []).progress.get(step.id)).toBe('ticked')
    expect(stepsDone(cards, work.slice(1), []).done).toBe(0)
    expect(steps.length).toBe(stepsDone(cards, work, []).of)
  })
})

describe('what a stop point should show when the work before it was done otherwise', () => {
  const { train, steps, cards } = blast
  const found = foundLines(train)
  const per = micrometresPer[train.units.fine]
  /** Every card written down as planned, `more` (um) of shim under every foot of one body. */
  const done = (body?: string, more = 0): WorkDone[] =>
    cards.flatMap((card) =>
      card.kind !== 'foot'
        ? []
        : card.feet.map((foot) => {
            const {
              feet = [],
              body: of = '',
              id = '',
            } = steps.find((step) => step.id === card.instruction.id) ?? {}
            const { shim, side, axial } = feet.find((one) => one.foot === foot) ?? {}
            return {
              ...{ step: id, body: of, foot, done: true },
              ...(shim !== undefined && { shim: (shim + (of === body ? more : 0)) / per }),
              ...(side !== undefined && { side: side / per }),
              ...(axial !== undefined && { axial: axial / per }),
            }
          }),
    )
  const at = (card: ReadCard, work: readonly WorkDone[]) =>
    stopAsDone(train, found, steps, cards, card, work)
  const cardsRead = reads(blast)
  const last = cardsRead.at(-1)
  if (!last) throw new Error('no stop point')

  it('is as planned where it was done as planned, or is not known', () => {
    for (const card of cardsRead) {
      expect(at(card, [])).toEqual({ groups: card.groups, asDone: false })
      expect(at(card, done())).toEqual({ groups: card.groups, asDone: false })
    }
  })

  it('goes along with 100 um more under the feet of the motor that are shimmed: twice what that raises, from 12 to 6', () => {
    const work = done('motor', 100)
    const told = at(last, work)
    expect(told.asDone).toBe(true)
    const six = (groups: readonly StopGroup[], key: string) =>
      groups
        .find((group) => group.key === key)
        ?.readings.find(({ at: place }) => place.kind === 'hour' && place.hour === 6)
    for (const group of last.groups) {
      const coupling = train.couplings.find(({ id }) => id === group.coupling)
      const set = coupling?.found[group.set ?? -1]
      const [was, now] = [six(last.groups, group.key), six(told.groups, group.key)]
      if (!coupling || set?.kind !== 'rim' || !was || !now) continue
      const motor = train.machines.findIndex(({ id }) => id === 'motor')
      // two of its feet are shimmed: it turns about the others
      const feet = train.bodies[motor]?.feet ?? []
      const xOf = (shimmed: boolean) =>
        feet.find(
          ({ id }) =>
            work.some((row) => row.foot === id && row.body === 'motor' && (row.shim ?? 0) !== 0) ===
            shimmed,
        )?.x ?? NaN
      const up = (100 * (set.at - xOf(false))) / (xOf(true) - xOf(false))
      // the left machine raised lowers the right axis against it; a rim on the right reads c + d.u
      const raises = coupling.left === motor ? -up : 0
      const six6 = (set.rides === 'right' ? -2 : 2) * raises
      expect(
        Number(now.should.replace('−', '-')) - Number(was.should.replace('−', '-')),
      ).toBeCloseTo(six6, -1)
      const middle = (band: typeof now.band) => ((band?.[0] ?? 0) + (band?.[1] ?? 0)) / 2
      expect(middle(now.band) - middle(was.band)).toBeCloseTo(six6, -1)
    }
    expect.assertions(1 + 2 * 2)
  })
})
