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
  const first = (measured: readonly NewReadings[]) => at(compared(measured).meaning.causes, 0)

  it('a third too small everywhere: work not done in full, a springing foot, a wrong distance', () => {
    const { meaning } = compared(shownAt(scaledBy(2 / 3)))
    expect(meaning.kind).toBe('causes')
    expect(at(meaning.causes, 0)).toMatchObject({ kind: 'part of the work', odds: 1 })
    expect(at(meaning.causes, 0)).not.toHaveProperty('body')
    expect(meaning.words).toMatch(/Most likely: all that was done came to 67 %: feet that spring/)
    expect(meaning.words).toContain('(leaves 0.0 times their doubt over)')
  })

  it('too large everywhere', () => {
    expect(first(shownAt(scaledBy(1.5))).words).toMatch(/^all that was done came to 150 %/)
  })

  it('the other way: a sign', () => {
    const { kind, words } = first(shownAt(scaledBy(-1)))
    expect(kind).toBe('wrong way')
    expect(words).toMatch(
      /^all that was done went the other way: .* move nothing before it is found$/,
    )
  })

  it('up and down at the end coupling, as sag is: its bracket or the end machine, which nothing tells apart', () => {
    // both rims sag 60 at 6 against 12, so whole bars read 120 less
    const sagged = shownAt(moved).map((entry) =>
      'readings' in entry && entry.coupling === 'd'
        ? {
            ...entry,
            readings: entry.readings.map(([h, v]): [number, number] => [
              h,
              v + ({ 6: -120, 3: -60, 9: -60 }[h] ?? 0),
            ]),
          }
        : entry,
    )
    const { meaning } = compared(sagged)
    expect(first(sagged)).toMatchObject({ kind: 'bracket', coupling: 'd' })
    expect(first(sagged).words).toBe(
      "the bracket of second: on a stiff bar it would read \u2212120 µm more at 6 o'clock than was entered, or it gives",
    )
    const fan = meaning.causes.find(({ body }) => body === 'C')
    expect(fan?.kind).toBe('stands off')
    expect(meaning.words).toMatch(/Cannot be told from it: .*the fan stands elsewhere/)
    expect(meaning.words).not.toMatch(/both/)
  })

  it('a machine between two couplings that does not stand where it should', () => {
    const bumped = moved.map((motion, b) => (b === 1 ? { ...motion, ty: motion.ty + 150 } : motion))
    const { meaning } = compared(shownAt(bumped))
    // its slides were all alike, so that a part of them left undone would look the same
    expect(at(meaning.causes, 0)).toMatchObject({ kind: 'part of the work', body: 'B' })
    const off = meaning.causes.find(({ kind }) => kind === 'stands off')
    expect(off?.body).toBe('B')
    expect(off?.words).toMatch(/^the pump stands elsewhere, at a foot by up to 150 µm sideways/)
    expect(meaning.words).toContain('Cannot be told from it: the pump stands elsewhere')
  })

  it('readings that cannot all be true, and the one that is not', () => {
    const { meaning } = compared(off(0, 'c', { 3: 400 }))
    expect(meaning.kind).toBe('sets contradict')
    expect(meaning.words).toMatch(/^The readings of first contradict each other/)
    expect(at(meaning.causes, 0)).toMatchObject({ kind: 'dial', coupling: 'c', set: 0, hour: 3 })
    expect(at(meaning.causes, 0).words).toContain('+400 µm off')
  })

  it('shims of 10 um and readings of 12 um more or less are no matter', () => {
    const { meaning } = compared(off(0, 'c', { 3: 12, 6: -9, 9: 7 }))
    expect(meaning).toMatchObject({ kind: 'within doubt', causes: [] })
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
      meaning: { kind: 'differs' },
    })
  })
})
