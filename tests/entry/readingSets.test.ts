import { describe, expect, it } from 'vitest'
import { aloneCoupling } from '../../src/document/edits/aloneCoupling'
import { flippedSet } from '../../src/document/edits/flip'
import { closureOf, furtherReadings, withHour } from '../../src/document/edits/hours'
import { readingPresets } from '../../src/document/edits/readingPresets'
import { readAgain, repeatsOf, usedAlone } from '../../src/document/edits/repeats'
import { sagDoubt, sagFrom, sagWords } from '../../src/document/edits/sag'
import { readingSaid, setTitle, setUp } from '../../src/document/words/setWords'
import { signWords } from '../../src/engine/fieldwork/ready/signs'
import type { CouplingDocument, ReadingSetDocument, TrainDocument } from '../../src/document/schema'

const units = { length: 'mm', fine: 'mm', temperature: 'C' } as const

/** A gear and a compressor, planes 200 mm apart; sides have names. */
function train(found: readonly unknown[]): TrainDocument {
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'two',
    units: { length: 'mm', fine: 'mm' },
    clock: { seenFrom: 'left' },
    sides: { three: 'the pipe rack', nine: 'toward the road' },
    machines: [
      {
        id: 'g',
        name: 'Gearbox',
        axis: { z: 500 },
        feet: [
          { id: '1', x: 0 },
          { id: '2', x: 800 },
        ],
      },
      {
        id: 'c',
        name: 'Compressor',
        axis: { z: 500 },
        feet: [
          { id: '1', x: 1400 },
          { id: '2', x: 2400 },
        ],
      },
    ],
    couplings: [
      {
        id: 'gc',
        left: { machine: 'g', plane: 1000 },
        right: { machine: 'c', plane: 1200 },
        tolerance: { flex: 0.5 },
        found: found as ReadingSetDocument[],
      },
    ],
  }
}
const coupling = (found: readonly unknown[] = []): CouplingDocument => {
  const [first] = train(found).couplings
  if (!first) throw new Error('no coupling')
  return first
}
const preset = (id: string) => {
  const found = readingPresets.find((one) => one.id === id)
  if (!found) throw new Error(`no preset ${id}`)
  return found
}
/** A preset filled in: 12, 3, 6, 9 of each set. */
const filled = (id: string, values: readonly (readonly number[])[]) =>
  preset(id)
    .sets(coupling())
    .map((set, s) => ({
      ...set,
      ...('diameter' in set && { diameter: 200 }),
      readings: [12, 3, 6, 9].map((hour, i) => [hour, values[s]?.[i] ?? 0]),
    }))

describe('sets from presets', () => {
  it('begin with every hour open and stems at the planes', () => {
    const [right, left] = preset('rims').sets(coupling())
    expect(right).toEqual({
      kind: 'rim',
      rides: 'right',
      at: 1200,
      readings: [
        [12, undefined],
        [3, undefined],
        [6, undefined],
        [9, undefined],
      ],
    })
    expect(left).toMatchObject({ kind: 'rim', rides: 'left', at: 1000 })
    expect(readingPresets.map(({ id }) => id)).toEqual([
      'rims',
      'rim-face',
      'faces',
      'gap',
      'line',
      'part',
    ])
  })

  it('read as a reverse rim pair give the line in words: 0.30 mm higher', () => {
    // rides right: c + d.u, so 0 at the top and -0.60 at the bottom put the right axis 0.30 up; T + B = L + R
    const document = train(
      filled('rims', [
        [0, -0.2, -0.6, -0.4],
        [0, 0.2, 0.4, 0.2],
      ]),
    )
    const alone = aloneCoupling(document, 0)
    if (!alone.ok) throw new Error(alone.why)
    // mean of left and right plane: d(1200).z = 0.30, d(1000).z = 0.20
    expect(alone.found.line.z).toBeCloseTo(250, 6)
    expect(alone.found.line.sz).toBeCloseTo(0.5, 9)
    expect(signWords(alone.train, alone.coupling, alone.found.line).says).toContain(
      'at the right plane the compressor is 0.30 mm HIGHER than the gearbox, and 0.10 mm toward the pipe rack',
    )
  })

  it('say what lacks while a set is half read, and keep the numbers of the others', () => {
    const [right] = filled('rims', [[0, 0, -0.6, 0]])
    const left = {
      kind: 'rim',
      rides: 'left',
      at: 1000,
      readings: [
        [12, 0],
        [3, undefined],
      ],
    }
    const half = aloneCoupling(train([left, right]), 0)
    expect(half.ok).toBe(false)
    expect(!half.ok && half.why).toContain('leave open')
    const bare = aloneCoupling(train([]), 0)
    expect(!bare.ok && bare.why).toBe('Nothing is read yet.')
    const closed = aloneCoupling(
      train([
        left,
        ...filled('rims', [
          [0, 0, -0.6, 0],
          [0, 0, 0.4, 0],
        ]),
      ]),
      0,
    )
    if (!closed.ok) throw new Error(closed.why)
    const { sets } = signWords(closed.train, closed.coupling, closed.found.line)
    expect(sets.map(({ set }) => set)).toEqual([1, 2])
  })
})

describe('hours', () => {
  it('go into the list by the clock, and what is beside the plain table is found', () => {
    const list = withHour(
      withHour(
        [
          [12, 0],
          [6, 1],
        ],
        3,
      ),
      10.5,
    )
    expect(list.map(([hour]) => hour)).toEqual([12, 3, 6, 10.5])
    expect(
      furtherReadings([
        [12, 0],
        [3, 1],
        [1.5, 2],
        [12, 0.01],
      ]),
    ).toEqual([2, 3])
  })

  it('close as top + bottom less left + right', () => {
    // a constructed turn; published turns are in tests/published
    expect(
      closureOf([
        [12, 0],
        [3, 7],
        [6, 12],
        [9, 5],
      ]),
    ).toBe(0)
    expect(
      closureOf([
        [12, 0],
        [3, 7],
        [6, 13],
        [9, 5],
      ]),
    ).toBe(1)
    expect(
      closureOf([
        [12, 0],
        [3, 7],
        [6, undefined],
        [9, 5],
      ]),
    ).toBeUndefined()
  })
})

describe('sag', () => {
  it('is half of the drop with the sign turned, as the contract has it: -100 at 6 after 0 is 50', () => {
    expect(sagFrom('whole', -100)).toBe(50)
    expect(sagFrom('half', 50)).toBe(50)
    expect(Object.is(sagFrom('whole', 0), 0)).toBe(true)
  })

  it('is said both ways', () => {
    expect(sagWords(0.03, units)).toEqual({
      bar: 'a stiff bar reads −0.06 mm at the bottom after 0 at the top',
      half: 'half of that with the sign turned, +0.03 mm',
    })
    expect(sagDoubt('rim', -0.03)).toContain('is the sign right?')
    expect(sagDoubt('face', -0.03)).toBeUndefined()
  })
})

describe('a dial that reads the other way', () => {
  it('is kept with the standard sign, sag and all, and twice is none', () => {
    const set = {
      kind: 'rim',
      rides: 'left',
      at: 5,
      sag: 0.02,
      readings: [
        [12, 0],
        [6, -0.4],
        [9, undefined],
      ],
    }
    const flipped = flippedSet(set)
    expect(flipped).toEqual({
      ...set,
      sag: -0.02,
      readings: [
        [12, 0],
        [6, 0.4],
        [9, undefined],
      ],
    })
    expect(Object.is(flipped.readings[0]?.[1], 0)).toBe(true)
    expect(flippedSet(flipped)).toEqual(set)
  })
})

describe('a set read again', () => {
  const first = {
    kind: 'rim',
    rides: 'right',
    at: 1200,
    by: 'A',
    sag: 0.02,
    readings: [
      [12, 0],
      [6, 1],
    ],
  }
  it('has the same dial at the same place and nothing read', () => {
    const again = readAgain(first)
    expect(again).toEqual({
      kind: 'rim',
      rides: 'right',
      at: 1200,
      sag: 0.02,
      readings: [
        [12, undefined],
        [6, undefined],
      ],
    })
    const others = [
      { ...first, at: 1100 },
      {
        ...first,
        readings: [
          [3, 0],
          [9, 1],
        ],
      },
    ]
    expect(repeatsOf([first, again, ...others], 0)).toEqual([1])
  })

  it('is used alone, the other kept', () => {
    const sets = usedAlone([first, { ...readAgain(first), use: false }], 1)
    expect(sets.map((set) => set['use'])).toEqual([false, undefined])
    expect(sets[0]).toEqual({ ...first, use: false })
  })
})

describe('words of a set', () => {
  const document = train([])
  it('say which way the stem went, and where', () => {
    expect(readingSaid(document, 'rim', 6, 0.3, units)).toBe('stem pushed in 0.3 mm at the bottom')
    expect(readingSaid(document, 'rim', 9, -0.3, units)).toBe('stem let out 0.3 mm toward the road')
    expect(readingSaid(document, 'gap', 3, 4.2, units)).toBe('gap of 4.2 mm toward the pipe rack')
    expect(readingSaid(document, 'rim', 1.5, 0.1, units)).toBe(
      "stem pushed in 0.1 mm at 1.5 o'clock",
    )
  })

  it('say where bracket and stem are', () => {
    const set = { kind: 'rim', rides: 'left', at: 1015 }
    expect(setTitle(document, coupling(), set, 1, units)).toBe(
      'Set 2: rim of the gearbox, stem at x 1015 mm',
    )
    expect(setUp(document, coupling(), set)).toBe(
      'The stem rides the rim of the gearbox and points at its axis; the bracket is on the compressor.',
    )
    expect(setUp(document, coupling(), { kind: 'face', rides: 'right', face: 'back' })).toContain(
      'looks away from the gearbox',
    )
  })
})
