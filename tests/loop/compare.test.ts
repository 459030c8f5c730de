import { describe, expect, it } from 'vitest'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { expectedAt } from '../../src/engine/fieldwork/steps/judge'
import {
  compareReadings,
  type Comparison,
  type NewReadings,
} from '../../src/engine/fieldwork/loop/compare'
import { at, fourFeet, given, pair, trainOf, type Json } from '../engine/pair'

/** Dials on both rims, 200 mm apart, at a coupling whose planes are at x and x + 200. */
const rims = (x: number): Json[] =>
  (['left', 'right'] as const).map((rides) => ({
    kind: 'rim',
    rides,
    at: rides === 'left' ? x : x + 200,
    readings: [
      [12, 0],
      [3, 0],
      [6, 0],
      [9, 0],
    ],
  }))

/** Three machines, the left one anchored, each coupling read by two rims. */
const three = (): Json => {
  const { machines, couplings, ...rest } = pair({ found: rims(0) })
  const [a, b] = machines as Json[]
  const [c] = couplings as Json[]
  return {
    ...rest,
    machines: [
      a,
      b,
      {
        id: 'C',
        name: 'Fan',
        axis: { z: 400 },
        feet: fourFeet.map((f) => ({ ...f, x: f.x + 2000 })),
      },
    ],
    couplings: [
      { ...c, name: 'first' },
      {
        id: 'd',
        name: 'second',
        left: { machine: 'B', plane: 2500 },
        right: { machine: 'C', plane: 2700 },
        tolerance: { offset: 100 },
        found: rims(2500),
      },
    ],
  }
}

const train = trainOf(three())
const found = train.couplings.map(asFound)
const moved: Motion[] = [
  noMotion,
  { ...noMotion, tz: 600, sz: 0.3, ty: -200 },
  { ...noMotion, tz: -300, sz: 0.2, ty: 250, sy: 0.4 },
]

/** What the sets would show where the bodies really stand. */
const shownAt = (motions: readonly Motion[]): NewReadings[] =>
  expectedAt(train, found, motions, [0, 1])

const scaledBy = (share: number): Motion[] =>
  moved.map((motion) => ({
    ...motion,
    tz: motion.tz * share,
    sz: motion.sz * share,
    ty: motion.ty * share,
    sy: motion.sy * share,
  }))

const compared = (measured: readonly NewReadings[]): Comparison =>
  compareReadings(train, found, moved, measured)

/** Readings with something added at the hours of one set of one coupling. */
const off = (set: number, coupling: string, by: Record<number, number>): NewReadings[] =>
  shownAt(moved).map((entry) =>
    'readings' in entry && entry.set === set && entry.coupling === coupling
      ? {
          ...entry,
          readings: entry.readings.map(([h, v]): [number, number] => [h, v + (by[h] ?? 0)]),
        }
      : entry,
  )

describe('measured beside expected', () => {
  it('differs by nothing where all went as told', () => {
    const { couplings, meaning } = compared(shownAt(moved))
    expect(meaning.kind).toBe('within doubt')
    expect(couplings.map(({ coupling }) => coupling)).toEqual(['c', 'd'])
    for (const { sets, line } of couplings) {
      expect(sets).toHaveLength(2)
      for (const { rows } of sets) for (const row of rows) expect(row.difference).toBeCloseTo(0, 8)
      expect(line?.offset.z).toBeCloseTo(0, 8)
    }
  })

  it('says each reading in the unit of the document, with its sign', () => {
    const { couplings } = compared(off(0, 'c', { 6: -12 }))
    const rows = at(at(couplings, 0).sets, 0).rows
    const row = rows.find(({ hour }) => hour === 6)
    expect(row?.difference).toBeCloseTo(-12, 9)
    expect((row?.measured ?? 0) - (row?.expected ?? 0)).toBeCloseTo(-12, 9)
  })

  it('says the difference of the line: the right machine high is +', () => {
    const higher = moved.map((motion, b) => (b === 1 ? { ...motion, tz: motion.tz + 90 } : motion))
    const { couplings } = compared(shownAt(higher))
    expect(at(couplings, 0).line?.offset.z).toBeCloseTo(90, 6)
    expect(at(couplings, 1).line?.offset.z).toBeCloseTo(-90, 6)
  })
})

describe('what a difference means', () => {
  it('a third too small everywhere: a springing foot or a wrong distance', () => {
    const { meaning } = compared(shownAt(scaledBy(2 / 3)))
    expect(meaning.kind).toBe('too small')
    expect(meaning.ratio).toBeCloseTo(2 / 3, 2)
    expect(meaning.words).toContain('about a third too small')
    expect(meaning.words).toContain('springing foot')
  })

  it('too large everywhere', () => {
    const { meaning } = compared(shownAt(scaledBy(1.5)))
    expect(meaning).toMatchObject({ kind: 'too large' })
    expect(meaning.words).toContain('about half too large')
  })

  it('the other way: a sign', () => {
    expect(compared(shownAt(scaledBy(-1))).meaning).toMatchObject({ kind: 'reversed' })
  })

  it('one coupling alone, up and down as sag is: its bracket', () => {
    // both rims sag 60 at 6 against 12; a rim that rides left counts the other way round
    const sag = off(1, 'd', { 6: -120, 3: -60, 9: -60 })
    const { meaning } = compared(
      sag.map((entry) =>
        'readings' in entry && entry.set === 0 && entry.coupling === 'd'
          ? {
              ...entry,
              readings: entry.readings.map(([h, v]): [number, number] => [
                h,
                v + ({ 6: -120, 3: -60, 9: -60 }[h] ?? 0),
              ]),
            }
          : entry,
      ),
    )
    expect(meaning.kind).toBe('one coupling')
    expect(meaning.words).toContain('Only second differs')
    expect(meaning.words).toContain('as sag is')
  })

  it('both couplings of one machine: it does not stand where it should', () => {
    const bumped = moved.map((motion, b) => (b === 1 ? { ...motion, ty: motion.ty + 150 } : motion))
    const { meaning } = compared(shownAt(bumped))
    expect(meaning.kind).toBe('one machine')
    expect(meaning.words).toContain('Both couplings of Pump differ')
  })

  it('readings that cannot all be true', () => {
    const { meaning } = compared(off(0, 'c', { 3: 400 }))
    expect(meaning.kind).toBe('sets contradict')
  })

  it('shims of 10 um and readings of 12 um more or less are no matter', () => {
    const { meaning } = compared(off(0, 'c', { 3: 12, 6: -9, 9: 7 }))
    expect(meaning.kind).toBe('within doubt')
  })

  it('up and down only, everywhere', () => {
    const low = moved.map((motion, b) =>
      b === 1
        ? { ...motion, tz: motion.tz - 120 }
        : b === 2
          ? { ...motion, tz: motion.tz + 100 }
          : motion,
    )
    const { meaning } = compared(shownAt(low).slice(0, 2))
    expect(meaning.kind).toBe('up and down only')
  })

  it('is asked of couplings and sets that are there', () => {
    expect(() => compared([{ coupling: 'x', set: 0, readings: [[12, 0]] }])).toThrow(
      'no coupling x',
    )
    expect(() => compared([{ coupling: 'c', set: 5, readings: [[12, 0]] }])).toThrow('no set 5')
  })

  it('is about readings of lines too', () => {
    const lined = trainOf(pair({ found: [given(0, 0)] }))
    const { couplings } = compareReadings(
      lined,
      lined.couplings.map(asFound),
      [noMotion, noMotion],
      [{ coupling: 'c', set: 0, offset: { y: 0, z: 70 }, slope: { y: 0, z: 0 } }],
    )
    expect(at(couplings, 0)).toMatchObject({
      line: { offset: { y: 0, z: 70 } },
      meaning: { kind: 'up and down only' },
    })
  })
})
