import { describe, expect, it } from 'vitest'
import { close, given, pair, at, planOf, oneRow, type Json } from './pair'

interface Sweep {
  readonly name: string
  readonly set: Json
  readonly readings: readonly (readonly [hour: number, value: number])[]
}

/**
 * What each kind of set shows of one misalignment, worked out from the formulas of the file format:
 * d(x) = (30, -20) um + (0.2, -0.1) mrad * (x - 100 mm), y and z, planes at 0 and 200 mm.
 */
const sweeps: Sweep[] = [
  {
    // d(150) = (40, -25); c + d.u + 10 cos: c - 15, c + 40, c + 15, c - 40; c = 15
    name: 'rim riding the right shaft',
    set: { kind: 'rim', rides: 'right', at: 150, sag: 10 },
    readings: [
      [12, 0],
      [3, 55],
      [6, 30],
      [9, -25],
    ],
  },
  {
    // d(40) = (18, -14); c - d.u + 5 cos: c + 19, c - 18, c - 19, c + 18; c = 18
    name: 'rim riding the left shaft',
    set: { kind: 'rim', rides: 'left', at: 40, sag: 5 },
    readings: [
      [12, 37],
      [3, 0],
      [6, -1],
      [9, 36],
    ],
  },
  {
    // 200 s = (40, -20); c + 200 s.u - 4 cos: c - 24, c + 40, c + 24, c - 40; c = 24
    name: 'face, front',
    set: { kind: 'face', rides: 'right', diameter: 400, sag: -4 },
    readings: [
      [12, 0],
      [3, 64],
      [6, 48],
      [9, -16],
    ],
  },
  {
    // the same riding the left shaft: the front looks at the other machine on either side
    name: 'face, front, on the left shaft',
    set: { kind: 'face', rides: 'left', diameter: 400, sag: -4, face: 'front' },
    readings: [
      [12, 0],
      [3, 64],
      [6, 48],
      [9, -16],
    ],
  },
  {
    // c - 200 s.u: c + 20, c - 40, c - 20, c + 40; c = -20
    name: 'face, back',
    set: { kind: 'face', rides: 'right', diameter: 400, face: 'back', sag: 0 },
    readings: [
      [12, 0],
      [3, -60],
      [6, -40],
      [9, 20],
    ],
  },
  {
    // -150 s = (-30, 15) about c = 3000: the gap is narrow at 3, where the right face leans over
    name: 'gap',
    set: { kind: 'gap', diameter: 300 },
    readings: [
      [12, 3015],
      [3, 2970],
      [6, 2985],
      [9, 3030],
    ],
  },
  {
    // d(200) = (50, -30), over 200: (0.25, -0.15), times 125: (31.25, -18.75), + 2 cos; c = 16.75
    name: 'spool, left end',
    set: { kind: 'spool', end: 'left', diameter: 250, sag: 2 },
    readings: [
      [12, 0],
      [3, 48],
      [6, 33.5],
      [9, -14.5],
    ],
  },
  {
    // d(0) = (10, -10), over -200: (-0.05, 0.05), times 125: (-6.25, 6.25); c = -6.25
    name: 'spool, right end',
    set: { kind: 'spool', end: 'right', diameter: 250, sag: 0 },
    readings: [
      [12, 0],
      [3, -12.5],
      [6, -12.5],
      [9, 0],
    ],
  },
]
const partial: Sweep[] = [
  {
    // at 1.5 both parts count 0.70711: c + 0.70711 (40 - 25 + 10) = 15 + 17.6777
    name: 'rim over a quarter',
    set: { kind: 'rim', rides: 'right', at: 150, sag: 10 },
    readings: [
      [12, 0],
      [1.5, 32.6776695297],
      [3, 55],
    ],
  },
  {
    // 10 and 2 o'clock: y -+0.86603, z 0.5; c -+ 34.6410 - 12.5 + 5 with c = 15: 7.5 -+ 34.6410
    name: 'rim over the upper third',
    set: { kind: 'rim', rides: 'right', at: 150, sag: 10 },
    readings: [
      [10, -27.1410161514],
      [12, 0],
      [2, 42.1410161514],
    ],
  },
]
const line: Json = {
  kind: 'line',
  at: 300,
  offset: { y: 70, z: -40 }, // 30 + 0.2 * 200, -20 - 0.1 * 200
  slope: { y: 0.2, z: -0.1 },
}

const wide = { coupling: { tolerance: { offset: 1000, angle: 10 } } }
const named = (name: string) => {
  const sweep = [...sweeps, ...partial].find((s) => s.name === name)
  if (!sweep) throw new Error(name)
  return { ...sweep.set, readings: sweep.readings }
}

function expectHidden(answer: ReturnType<typeof planOf>): void {
  const { offset, slope, residual, at: middle } = at(answer.asFound, 0)
  expect(middle).toBe(100)
  expect([offset.y, offset.z]).toEqual([close(30, 8), close(-20, 8)])
  expect([slope.y, slope.z]).toEqual([close(0.2, 9), close(-0.1, 9)])
  expect(residual).toBeLessThan(1e-9)
}

describe('a set of readings', () => {
  it.each([...sweeps, ...partial])(
    'shows what the misalignment makes of it: $name',
    ({ set, readings }) => {
      const answer = planOf(pair({ ...wide, found: [line, { ...set, readings }] }))
      expectHidden(answer)
      const shown = answer.expected?.[1]
      expect(shown && 'readings' in shown ? shown.readings : []).toEqual(
        readings.map(([hour, value]) => [hour, close(value, 8)]),
      )
    },
  )

  it.each(sweeps)('is told from its wrong reading: $name', ({ set, readings }) => {
    const wrong = readings.map(([hour, value], i) => [hour, i === 1 ? value + 7 : value])
    const answer = planOf(pair({ ...wide, found: [line, { ...set, readings: wrong }] }))
    expect(at(answer.asFound, 0).residual).toBeGreaterThan(0.1)
  })

  it.each([
    ['reverse dials', ['rim riding the right shaft', 'rim riding the left shaft']],
    ['rim and face', ['rim riding the right shaft', 'face, front']],
    ['rim and back of a face', ['rim riding the left shaft', 'face, back']],
    ['rim and gap', ['rim riding the left shaft', 'gap']],
    ['two faces', ['spool, left end', 'spool, right end']],
    ['reverse dials over part of a turn', ['rim over a quarter', 'rim riding the left shaft']],
    ['all at once', sweeps.map(({ name }) => name)],
  ])('and others give the misalignment back: %s', (_, names) => {
    expectHidden(planOf(pair({ ...wide, found: names.map(named) })))
  })

  it('may be taken in pieces, each with a zero of its own', () => {
    const rim = (rides: string, at: number, sag: number, readings: number[][]) => ({
      kind: 'rim',
      rides,
      at,
      sag,
      readings,
    })
    // of the sweeps above: 12 to 6 is +30, 9 to 3 is +80; riding left 12 to 6 is -38, 3 to 9 +36
    const found = [
      rim('right', 150, 10, [
        [12, 0],
        [6, 30],
      ]),
      rim('right', 150, 10, [
        [9, 0],
        [3, 80],
      ]),
      rim('left', 40, 5, [
        [6, 0],
        [12, 38],
      ]),
      rim('left', 40, 5, [
        [3, 100],
        [9, 136],
      ]),
    ]
    const answer = planOf(pair({ ...wide, found }))
    expectHidden(answer)
    // the zero stays where it was given; the set that has none keeps its own
    expect(answer.expected?.map((set) => ('readings' in set ? set.readings : []))).toEqual(
      found.map(({ readings }) => readings.map(([hour, value]) => [hour, close(value ?? NaN, 8)])),
    )
  })

  it('of lines gives offsets and slopes, whole or in parts', () => {
    const offsetAt = (x: number, y: number, z: number) => ({
      kind: 'line',
      at: x,
      offset: { y, z },
    })
    expectHidden(planOf(pair({ ...wide, found: [line] })))
    expectHidden(planOf(pair({ ...wide, found: [offsetAt(0, 10, -10), offsetAt(200, 50, -30)] })))
    const parts = [
      { kind: 'line', at: 0, offset: { y: 10 }, slope: { z: -0.1 } },
      { kind: 'line', at: 200, offset: { z: -30 }, slope: { y: 0.2 } },
    ]
    expectHidden(planOf(pair({ ...wide, found: parts })))
  })

  it('left out does not count, and is still said what to show', () => {
    const off = { kind: 'rim', rides: 'right', at: 150, sag: 10, use: false, why: 'hub not turned' }
    const readings = [
      [12, 0],
      [3, 500],
      [6, 90],
      [9, 1],
    ]
    const answer = planOf(pair({ ...wide, found: [line, { ...off, readings }] }))
    expectHidden(answer)
    const shown = answer.expected?.[1]
    expect(shown && 'readings' in shown ? shown.readings.map(([, v]) => v) : []).toEqual(
      [0, 55, 30, -25].map((v) => close(v, 8)),
    )
  })
})

describe('readings to expect after the moves', () => {
  // B lies 500 low and may end 100 low: it is raised by 400 on its one row of feet
  const low = { right: { feet: oneRow }, coupling: { tolerance: { offset: 100 } } }

  it('are those of the misalignment that is left', () => {
    // d = (0, -500) before and (0, -100) after, riding right: c + d.z cos
    const found = [
      {
        kind: 'rim',
        rides: 'right',
        at: 100,
        sag: 0,
        readings: [
          [12, 0],
          [3, 500],
          [6, 1000],
          [9, 500],
        ],
      },
      {
        kind: 'face',
        rides: 'right',
        diameter: 300,
        sag: 0,
        readings: [
          [12, 5],
          [3, 5],
          [6, 5],
          [9, 5],
        ],
      },
      given(0, -500),
    ]
    const answer = planOf(pair({ ...low, found }))
    expect(answer.status).toBe('planned')
    expect(at(answer.feet, 0).shim).toBeCloseTo(400, 2)
    const [rim, face, straight] = answer.expected ?? []
    expect(rim && 'readings' in rim ? rim.readings : []).toEqual(
      [
        [12, 0],
        [3, 100],
        [6, 200],
        [9, 100],
      ].map(([h, v]) => [h, close(v ?? NaN, 2)]),
    )
    expect(face && 'readings' in face ? face.readings : []).toEqual(
      [12, 3, 6, 9].map((h) => [h, close(5, 6)]),
    )
    expect(straight).toMatchObject({ offset: { z: close(-100, 2) } })
  })

  it('follow the shaft ends where a gap is measured', () => {
    // 250.8 mm between the ends where 250 +- 0.5 is wanted: B goes 300 um toward A
    const answer = planOf(
      pair({
        right: { feet: oneRow, free: { shim: false, side: false, axial: true } },
        coupling: {
          tolerance: { offset: 100 },
          axial: { found: 250.8, want: 250, tolerance: 0.5 },
        },
        found: [
          given(0, 0),
          {
            kind: 'gap',
            diameter: 200,
            readings: [
              [12, 3000],
              [6, 3000],
            ],
          },
        ],
      }),
    )
    expect(answer.status).toBe('planned')
    expect(answer.total).toEqual({ shim: 0, side: 0, axial: close(300, 2) })
    expect(at(answer.bodies, 1).move.tx).toBeCloseTo(-300, 2)
    const gap = answer.expected?.[1]
    expect(gap && 'readings' in gap ? gap.readings : []).toEqual([
      [12, close(2700, 2)],
      [6, close(2700, 2)],
    ])
  })
})
