import { describe, expect, it } from 'vitest'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { prove } from '../../src/engine/proof/prove'
import { limitExcesses } from '../../src/engine/proof/limitsKept'
import { footLimitWords } from '../../src/language/footLimitWords'
import { footLimitList } from '../second/footLimits'
import { tol } from '../../src/mechanics/tolerances'
import { asFound } from '../../src/mechanics/readings/asFound'
import { close, given, pair, trainOf, type Json } from '../engine/pair'

type Foot = Record<string, unknown>

/** Every limit there is, all of them wide; `tight` changes the one that is passed. */
interface Tight {
  readonly foot?: Foot
  readonly right?: Json
  readonly coupling?: Json
  readonly plan?: Json
  readonly skid?: Json
}

const feet = [1000, 2000].flatMap((x) => [300, -300].map((y) => ({ x, y })))

const document = ({ foot, right, coupling, plan, skid }: Tight) =>
  pair({
    right: {
      base: 200,
      free: { axial: true, roll: true },
      tilt: 20,
      feet: feet.map((place, i) => ({
        id: `${i + 1}`,
        ...place,
        pack: { now: 3000, min: 0, max: 9000 },
        lift: 6000,
        hole: { clearance: 9000 },
        ...(i === 0 && foot),
      })),
      restraints: [
        {
          id: 'n',
          x: 1500,
          y: 100,
          z: 900,
          axial: [-5e4, 5e4],
          side: [-5e4, 5e4],
          rise: [-5e4, 5e4],
        },
      ],
      ...right,
    },
    coupling: {
      tolerance: { flex: 50, offset: 5e4, angle: 50 },
      axial: { found: 250, want: 250, tolerance: 50 },
      ...coupling,
    },
    found: [given(0, 0)],
    rest: {
      plan: { ...plan },
      skids: [
        {
          id: 'S',
          name: 'Bedplate',
          carries: ['B'],
          free: { axial: true, roll: true },
          feet: feet.map((place, i) => ({ id: `${i + 1}`, ...place })),
          ...skid,
        },
      ],
    },
  })

function proofOf(tight: Tight, moves: Partial<Motion>, skid: Partial<Motion> = {}) {
  const train = trainOf(document(tight))
  const lines = train.couplings.map((coupling) => asFound(coupling).line)
  const motions = [noMotion, { ...noMotion, ...moves }, { ...noMotion, ...skid }]
  const judge = (bound: number) => prove(train, lines, motions, train.plan.share, bound)
  return { judge, proof: judge(judge(0).cost) }
}

interface Case {
  readonly name: string
  readonly tight: Tight
  readonly move: Partial<Motion>
  readonly skid?: Partial<Motion>
  /** The limit that the proof must name, and by how much it is passed (um). */
  readonly where: string
  readonly by: number
}

const free = { axial: true, roll: true }

const cases: Case[] = [
  {
    name: 'minimum pack',
    tight: { foot: { pack: { now: 3000, min: 2950 } } },
    move: { tz: -60 },
    where: 'B foot 1: minimum pack',
    by: 10,
  },
  {
    name: 'no pack left',
    tight: { foot: { pack: { now: 50 } } },
    move: { tz: -60 },
    where: 'B foot 1: minimum pack',
    by: 10,
  },
  {
    name: 'maximum pack',
    tight: { foot: { pack: { now: 3000, max: 3050 } } },
    move: { tz: 60 },
    where: 'B foot 1: maximum pack',
    by: 10,
  },
  {
    name: 'a pack under its minimum',
    tight: { foot: { pack: { now: 3000, min: 4000 } } },
    move: { tz: -10 },
    where: 'B foot 1: minimum pack',
    by: 10,
  },
  {
    name: 'a pack over its maximum',
    tight: { foot: { pack: { now: 3000, max: 2000 } } },
    move: { tz: 10 },
    where: 'B foot 1: maximum pack',
    by: 10,
  },
  // foot 1 stands 500 mm from the reference: 0.12 mrad lowers it by 60
  {
    name: 'minimum pack, by pitch',
    tight: { foot: { pack: { now: 3000, min: 2950 } } },
    move: { sz: 0.12 },
    where: 'B foot 1: minimum pack',
    by: 10,
  },
  // and 300 mm toward 3 o'clock: 0.2 mrad of roll raises it by 60
  {
    name: 'maximum pack, by roll',
    tight: { foot: { pack: { now: 3000, max: 3050 } } },
    move: { roll: 0.2 },
    where: 'B foot 1: maximum pack',
    by: 10,
  },
  {
    name: 'lift',
    tight: { foot: { lift: 50 } },
    move: { tz: 60 },
    where: 'B foot 1: lift',
    by: 10,
  },
  {
    name: 'a lift passed already',
    tight: { foot: { lift: -50 } },
    move: { tz: 10 },
    where: 'B foot 1: lift',
    by: 10,
  },
  {
    name: 'hole, across',
    tight: { foot: { hole: { clearance: 100 } } },
    move: { ty: -60 },
    where: 'B foot 1: bolt in hole',
    by: 10,
  },
  {
    name: 'hole, along',
    tight: { foot: { hole: { clearance: 100 } } },
    move: { tx: 60 },
    where: 'B foot 1: bolt in hole',
    by: 10,
  },
  {
    name: 'hole, slantwise',
    tight: { foot: { hole: { clearance: 90 } } },
    move: { tx: 33, ty: 44 },
    where: 'B foot 1: bolt in hole',
    by: 10,
  },
  {
    name: 'hole, off the middle',
    tight: { foot: { hole: { clearance: 100, y: 20 } } },
    move: { ty: 40 },
    where: 'B foot 1: bolt in hole',
    by: 10,
  },
  // 0.2 mrad of yaw: 60 along at 300 mm from the middle, 100 across at 500 mm
  {
    name: 'hole, by yaw',
    tight: { foot: { hole: { clearance: 200 } } },
    move: { sy: 0.2 },
    where: 'B foot 1: bolt in hole',
    by: Math.hypot(60, 100) - 100,
  },
  {
    name: 'hole with a reserve',
    tight: { foot: { hole: { clearance: 120 } }, plan: { reserve: 10 } },
    move: { ty: 60 },
    where: 'B foot 1: bolt in hole',
    by: 10,
  },
  {
    name: 'a hole touched already',
    tight: { foot: { hole: { clearance: 100, y: 70 } } },
    move: { ty: 10 },
    where: 'B foot 1: bolt in hole',
    by: 10,
  },
  {
    name: 'a foot that cannot be shimmed',
    tight: { foot: { free: { shim: false } } },
    move: { tz: 10 },
    where: 'B foot 1: cannot be shimmed',
    by: 10,
  },
  {
    name: 'a foot that cannot slide',
    tight: { foot: { free: { side: false } } },
    move: { ty: -10 },
    where: 'B foot 1: cannot slide',
    by: 10,
  },
  {
    name: 'restraint, axial',
    tight: { right: { restraints: [{ id: 'n', x: 1500, z: 900, axial: [-50, 10] }] } },
    move: { tx: 20 },
    where: 'B n: axial',
    by: 10,
  },
  {
    name: 'restraint, side',
    tight: { right: { restraints: [{ id: 'n', x: 1500, z: 900, side: [-10, 50] }] } },
    move: { ty: -20 },
    where: 'B n: side',
    by: 10,
  },
  {
    name: 'restraint, rise',
    tight: { right: { restraints: [{ id: 'n', x: 1500, z: 900, rise: [-50, 10] }] } },
    move: { tz: 20 },
    where: 'B n: rise',
    by: 10,
  },
  // 900 mm up: 0.02 mrad of pitch carries it 18 along
  {
    name: 'restraint, by pitch',
    tight: { right: { restraints: [{ id: 'n', x: 1500, z: 900, axial: [-8, 50] }] } },
    move: { sz: 0.02 },
    where: 'B n: axial',
    by: 10,
  },
  // the skid sees it 1100 mm up: 0.02 mrad of its roll carries it 22 to 9 o'clock
  {
    name: 'restraint, by the skid',
    tight: { right: { restraints: [{ id: 'n', x: 1500, z: 900, side: [-12, 50] }] } },
    move: {},
    skid: { roll: 0.02 },
    where: 'B n: side',
    by: 10,
  },
  // over the half length of 500 mm
  { name: 'tilt', tight: { right: { tilt: 0.05 } }, move: { sz: 0.07 }, where: 'B: tilt', by: 10 },
  {
    name: 'tilt, with the skid',
    tight: { right: { tilt: 0.05 } },
    move: { sz: -0.03 },
    skid: { sz: -0.04 },
    where: 'B: tilt',
    by: 10,
  },
  {
    name: 'tilt of the skid',
    tight: { skid: { tilt: 0.05, free } },
    move: {},
    skid: { sz: 0.07 },
    where: 'S: tilt',
    by: 10,
  },
  {
    name: 'axial that is not free',
    tight: { right: { free: { roll: true } } },
    move: { tx: 10 },
    where: 'B: not free, axial',
    by: 10,
  },
  {
    name: 'shims that are not free',
    tight: { right: { free: { shim: false } } },
    move: { tz: 10 },
    where: 'B: not free, rise',
    by: 10,
  },
  {
    name: 'a slide that is not free',
    tight: { right: { free: { ...free, side: false } } },
    move: { ty: 10 },
    where: 'B: not free, slide',
    by: 10,
  },
  {
    name: 'a pitch that is not free',
    tight: { right: { free: { shim: false } } },
    move: { sz: 0.02 },
    where: 'B: not free, pitch',
    by: 10,
  },
  {
    name: 'a yaw that is not free',
    tight: { right: { free: { ...free, side: false } } },
    move: { sy: 0.02 },
    where: 'B: not free, yaw',
    by: 10,
  },
  {
    name: 'a roll that is not free',
    tight: { right: { free: { axial: true } } },
    move: { roll: -0.05 },
    where: 'B: not free, roll',
    by: 15,
  },
  {
    name: 'a held machine',
    tight: { right: { held: true } },
    move: { tz: 10 },
    where: 'B: held, rise',
    by: 10,
  },
  {
    name: 'a held skid',
    tight: { skid: { held: true } },
    move: {},
    skid: { ty: 10 },
    where: 'S: held, slide',
    by: 10,
  },
]

describe('the proof', () => {
  it('finds nothing wrong while every limit is wide', () => {
    for (const { move, skid } of cases) {
      const { proof } = proofOf({}, move, skid)
      expect(proof.faults).toEqual([])
      expect(proof.worstViolation).toBe(0)
    }
  })

  it.each(cases)('finds exactly what is passed: $name', ({ tight, move, skid, where, by }) => {
    const { proof } = proofOf(tight, move, skid)
    expect(proof.faults).toHaveLength(1)
    expect(proof.faults[0]).toContain(`${where} is passed by `)
    expect(proof.worstViolation).toBeCloseTo(by, 6)
    expect(proof.sound).toBe(false)
  })

  it('is asked about every limit of a foot, and the second builder knows them all', () => {
    const passed = cases.flatMap(({ tight, move, skid }) => {
      const motions = [noMotion, { ...noMotion, ...move }, { ...noMotion, ...skid }]
      return limitExcesses(trainOf(document(tight)), motions).filter(({ by }) => by > 1)
    })
    const limits = passed.flatMap((one) => (one.is === 'foot' ? [one.limit] : []))
    const all = Object.keys(footLimitWords).sort()
    expect([...new Set(limits)].sort()).toEqual(all)
    expect(footLimitList.map(({ name }) => name).sort()).toEqual(all)
  })

  it.each(cases)('lets a train stand still with $name', ({ tight }) => {
    expect(proofOf(tight, {}).proof).toMatchObject({ faults: [], worstViolation: 0, cost: 0 })
  })

  it('lets a limit of length be passed by a thousandth of a um and no more', () => {
    const tight = { foot: { lift: 50 } }
    expect(proofOf(tight, { tz: 50.0009 }).proof.sound).toBe(true)
    expect(proofOf(tight, { tz: 50.0011 }).proof.sound).toBe(false)
  })

  const shares: [string, Json, Partial<Motion>, number][] = [
    // B's axis at mid-span is 1400 mm from its reference and 400 up
    ['offset', { tolerance: { offset: 100 } }, { tz: 150 }, 1.5],
    ['offset, by roll', { tolerance: { offset: 100 } }, { roll: 0.5 }, 2], // 400 * 0.5
    ['offset, by pitch', { tolerance: { offset: 100 } }, { sz: -0.1 }, 1.4],
    ['round offset', { tolerance: { offset: 100, shape: 'round' } }, { ty: 90, tz: 120 }, 1.5],
    ['angle', { tolerance: { angle: 0.2 } }, { sy: 0.3 }, 1.5],
    ['left plane', { tolerance: { flex: 1 } }, { tz: 300 }, 1.5], // 300 / 200
    // at x = 200, 1300 mm off: -0.2 * 1300 = -260; at 0: -300: right plane 300 / 200
    ['right plane', { tolerance: { flex: 1 } }, { sz: 0.2 }, 1.5],
    [
      'gap',
      { axial: { found: 250, want: 250, tolerance: 0.2 }, tolerance: { offset: 9e5 } },
      { tx: 300 },
      1.5,
    ],
    // the axis stands 400 up: 0.5 mrad of pitch opens the gap by -0.2 mm
    [
      'gap, by pitch',
      { axial: { found: 250, want: 250, tolerance: 0.1 }, tolerance: { offset: 9e5 } },
      { sz: 0.5 },
      2,
    ],
  ]
  it.each(shares)('finds the coupling that uses too much: %s', (_, coupling, move, share) => {
    const { proof } = proofOf({ coupling }, move)
    expect(proof.worstShare).toBeCloseTo(share, 9)
    expect(proof.faults).toEqual([expect.stringContaining('coupling c uses')])
    expect(proofOf({ coupling, plan: { share: 1 } }, {}).proof.faults).toEqual([])
  })

  it('lets a tolerance be passed by a millionth of itself and no more', () => {
    const coupling = { tolerance: { offset: 100 } }
    expect(proofOf({ coupling, plan: { share: 0.5 } }, { tz: 50.00009 }).proof.sound).toBe(true)
    expect(proofOf({ coupling, plan: { share: 0.5 } }, { tz: 50.00011 }).proof.sound).toBe(false)
  })

  it('adds up the cost anew: feet, rows once, axial once', () => {
    // four feet up 10, two rows across 20, 30 along: 40 + 40 + 30
    expect(proofOf({}, { tz: 10, ty: -20, tx: 30 }).proof.cost).toBeCloseTo(110, 9)
    // weights 2, 3 and 0.5 and the machine's own 4
    const weights = { shim: 2, side: 3, axial: 0.5 }
    const weighed = { right: { weight: 4, free }, plan: { weights } }
    expect(proofOf(weighed, { tz: 10, ty: -20, tx: 30 }).proof.cost).toBeCloseTo(
      4 * (80 + 120 + 15),
      9,
    )
    // pitch 0.02 and roll 0.01: feet at -+10 +-3: 7 + 13 + 13 + 7; yaw 0.04: rows 20 each
    expect(proofOf({}, { sz: 0.02, roll: 0.01, sy: 0.04 }).proof.cost).toBeCloseTo(80, 9)
  })

  it('asks that cost and bound meet within 2e-5, or a hundredth of a um', () => {
    const { judge } = proofOf({}, { tz: 1000 }) // costs 4000, so 0.08
    expect(judge(4000 - 0.079).sound).toBe(true)
    expect(judge(4000 - 0.081).sound).toBe(false)
    expect(judge(4000 + 0.079).sound).toBe(true)
    expect(judge(4000 + 0.081).sound).toBe(false)
    expect(judge(NaN).sound).toBe(false)
    expect(judge(-Infinity).sound).toBe(false)
    expect(judge(3999)).toMatchObject({ cost: close(4000), bound: 3999, gap: close(1) })
    const small = proofOf({}, { tz: 1 }).judge
    expect(small(4 - 0.9 * tol.allowedGapLeast).sound).toBe(true)
    expect(small(4 - 1.1 * tol.allowedGapLeast).sound).toBe(false)
  })

  it.each(['tx', 'ty', 'tz', 'sy', 'sz', 'roll'])(
    'does not take a %s that is no number',
    (name) => {
      const { judge } = proofOf({}, { [name]: NaN })
      expect(judge(0).sound).toBe(false)
      expect(judge(NaN).sound).toBe(false)
    },
  )
})
