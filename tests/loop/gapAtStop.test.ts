import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { workRecordOf, type WorkDone } from '../../src/document/work'
import { gapVerdict } from '../../src/engine/fieldwork/loop/gapVerdict'
import { stepPage } from '../../src/engine/fieldwork/loop/pages'
import { standNow } from '../../src/engine/fieldwork/loop/standNow'
import { standingGaps, typedGap, withGap } from '../../src/engine/fieldwork/loop/typedGaps'
import { workCards, type ReadCard } from '../../src/engine/fieldwork/steps/cards'
import { instructionsOf } from '../../src/engine/fieldwork/steps/instructions'
import { judgeReading } from '../../src/engine/fieldwork/steps/stopReadings'
import { roundLines } from '../../src/text/roundText'
import { solver } from '../engine/pair'
import { blocksOf, exampleOf, made } from '../paper/sheets'
import { mustPlan, stepsFor, wholeAnswer } from '../planned'

/** The pump with a gap of 3.2 mm between its shaft ends, where 3 is wanted; in inches, as the example is. */
const gap = { found: 0.126, want: 0.118, tolerance: 0.02, u: 0.002 }

function job(axial: Partial<typeof gap> = {}, free = false) {
  const document = structuredClone(exampleOf('pump-and-motor'))
  const [coupling] = document.couplings
  const [motor] = document.machines
  if (!coupling || !motor) throw new Error('no coupling')
  coupling.axial = { ...gap, ...axial }
  if (free) motor.free = { ...motor.free, axial: true }
  return document
}

function worked(document: TrainDocument) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const { train } = read
  const answer = mustPlan(wholeAnswer(read, solver, { prices: false, packs: true }))
  const steps = stepsFor(read, answer)?.steps ?? []
  const cards = workCards(train, instructionsOf(train, { steps }))
  const stops = cards.flatMap((card): ReadCard[] => (card.kind === 'read' ? [card] : []))
  const id = train.couplings[0]?.id ?? ''
  return { train, steps, cards, stops, id }
}
const gapsOf = ({ groups }: ReadCard) => groups.filter(({ key }) => key.endsWith(' gap'))

describe('a gap between shaft ends', () => {
  it('is asked for at the stop point that tells it, with the same numbers', () => {
    const { stops } = worked(job())
    const asked = stops.flatMap((stop) => gapsOf(stop).map((group) => ({ stop, group })))
    expect(asked).toHaveLength(1)
    for (const { stop, group } of asked) {
      const [reading] = group.readings
      const [low, high] = reading?.good.split(' to ') ?? []
      expect(stop.stop).toContain(`${reading?.should} in, good from ${low} in to ${high} in, cold`)
      // nothing moves along the train: it should be what it was, give or take twice its uncertainty
      expect(Number(reading?.should)).toBeCloseTo(0.126, 2)
      expect(reading?.band?.[0]).toBeLessThan(0.126)
      expect(judgeReading(reading ?? { decimals: 3, unit: 'in' }, 0.126).words).toBe('inside')
      expect(judgeReading(reading ?? { decimals: 3, unit: 'in' }, 0.2).words).toMatch(
        /^outside by 0\.0\d+ in, above$/,
      )
    }
    // a train without one is asked for none
    const bare = worked(exampleOf('pump-and-motor'))
    expect(bare.stops.flatMap(gapsOf)).toEqual([])
  })

  it('is asked for after a move along the train, as that move leaves it', () => {
    // so far off that the motor has to go along the train
    const { steps, stops } = worked(job({ found: 0.15 }, true))
    const along = steps.find(({ kind }) => kind === 'axial')
    expect(along?.gaps).toHaveLength(1)
    const stop = stops.find(({ instruction }) => instruction.id === along?.id)
    const [group] = stop ? gapsOf(stop) : []
    const should = Number(group?.readings[0]?.should)
    expect(should).toBeLessThan(0.118 + 0.02)
    expect(stop?.stop).toContain(`${group?.readings[0]?.should} in`)
    // its bolts are still loose: the sets of dials wait for the stop at which they are tight
    expect(stop?.groups.filter(({ set }) => set !== undefined)).toEqual([])
    expect(stop?.instruction.readings).toEqual([])
    expect(stops.at(-1)?.groups.filter(({ set }) => set !== undefined)).not.toEqual([])
  })

  it('is judged in every state as its share says, by hand', () => {
    const { train, steps, id } = worked(job())
    const at = steps.length - 1
    // the pump grows along by nothing in the file, so the states differ by their factors alone
    const factor = Math.min(...train.states.map((state) => state.factor))
    const share = (found: number) => Math.round((Math.abs(found - 0.118) / (0.02 * factor)) * 100)
    const doubt = Math.round(((1.645 * 0.002) / (0.02 * factor)) * 100)
    const say = (found: number) => gapVerdict(train, steps, at, id, found)
    expect(say(0.122)?.verdict).toBe('in')
    expect(say(0.122)?.words).toContain(`${share(0.122)} % of tolerance, give or take ${doubt} %`)
    expect(say(0.137)?.verdict).toBe('not sure')
    expect(say(0.16)?.verdict).toBe('out')
    expect(say(0.16)?.words).toContain(`: ${share(0.16)} % of tolerance`)
    expect(
      gapVerdict(worked(exampleOf('pump-and-motor')).train, steps, at, id, 0.1),
    ).toBeUndefined()
  })

  it('is kept with the readings, counts until its machine moves on, and is on the page of the round', () => {
    const document = job()
    const { train, steps, id } = worked(document)
    const [first, last] = [steps[0]?.id ?? '', steps.at(-1)?.id ?? '']
    let gaps = withGap([], last, id, 0.121)
    gaps = withGap(gaps, last, id, 0.122)
    expect(gaps).toEqual([{ coupling: id, step: last, gap: 0.122 }])
    expect(typedGap(gaps, last, id)).toBe(0.122)
    expect(withGap(gaps, last, id, undefined)).toEqual([])
    expect(workRecordOf({ gaps })?.gaps).toEqual(gaps)
    const motor = steps[0]?.body ?? ''
    const work: WorkDone[] = [{ step: last, body: motor, foot: '1 road', shim: 1, done: true }]
    expect(standingGaps(train, steps, work, gaps)).toEqual({ [id]: 0.122 })
    expect(standingGaps(train, steps, work, withGap([], first, id, 0.122))).toEqual({})
    const sign = { when: '2031-02-03T04:05:06Z' }
    const round = { actuals: [], readings: [], gaps: { [id]: 0.122 }, sign, after: 'round 1' }
    const stood = standNow(document, train, round)
    if (!stood.ok) throw new Error(stood.why)
    expect(stood.document.couplings[0]?.axial?.found).toBe(0.122)
    const { units } = train
    const page = stepPage(
      { work, read: [], gaps, steps: { done: 1, of: 3 }, units },
      undefined,
      sign,
    )
    expect(roundLines(page.content, (one) => one)?.join('\n')).toContain(`at ${last}: 0.122 in`)
  })

  it('stands on paper beside its expected value, with a box', async () => {
    const { paper } = await made(job())
    const rows = blocksOf(paper).flatMap((block) =>
      block.kind === 'table' && block.columns[0]?.head.startsWith('gap between') ? block.rows : [],
    )
    expect(rows).toHaveLength(1)
    const { stops } = worked(job())
    const [reading] = stops.flatMap(gapsOf).flatMap(({ readings }) => readings)
    expect(rows[0]?.slice(1)).toEqual(['0.126', reading?.should, reading?.good, ''])
  })
})
