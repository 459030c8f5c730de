import { describe, expect, it } from 'vitest'
import { lineAt, moves, near, plan } from './bench'
import { caseOf } from './cases'
import { foundFrom, rawSweeps, train, type Three } from './three'

/**
 * Couplings here may be off by 0.0001 mil and 0.0001 mrad: over the length of the train that moves a
 * limit by less than 0.015 mil. A hair is a little more than that.
 */
const hair = 0.02

const status = (three: Three) => plan(train(three)).status

describe('T1: three machines, up and down (constructed, no printed answer)', () => {
  type Holds = Record<'hold compressor' | 'hold gear' | 'hold motor', number[]>
  interface Expected extends Holds {
    couplings: { offset: number; slope: number }[]
    'least greatest move': number
    'moves then': number[]
    'adding only': number[]
    'adding only, sum': number
    'adding only, greatest': number
  }
  const t1 = caseOf<{ input: Parameters<typeof foundFrom>[0]; expected: Expected }>('trains', 'T1')
  const { expected, tolerance } = t1
  const found = foundFrom(t1.input)

  it('has the printed misalignment at both couplings', () => {
    const answer = plan(train({ found, held: ['gear'] }))
    for (const [i, { offset, slope }] of expected.couplings.entries()) {
      near(answer.asFound[i]?.offset.z, offset, 1e-9)
      near(answer.asFound[i]?.slope.z, slope, 1e-9)
    }
  })

  it.each(['compressor', 'gear', 'motor'] as const)('holding the %s', (held) => {
    const answer = plan(train({ found, held: [held] }))
    expect(answer.held).toEqual([held])
    near(moves(answer).shim, expected[`hold ${held}`], tolerance)
  })

  it('differs between any two holds by a straight line', () => {
    const xs = Object.values(t1.input.feet).flat()
    const [compressor, gear] = (['compressor', 'gear'] as const).map(
      (held) => moves(plan(train({ found, held: [held] }))).shim,
    )
    const apart = xs.map((_, i) => (compressor?.[i] ?? 0) - (gear?.[i] ?? 0))
    near(
      apart,
      xs.map((x) => 12 - 0.1 * x),
      tolerance,
    )
  })

  it('moves no foot by more than 7.5, and a hair less cannot be had', () => {
    const most = expected['least greatest move']
    const answer = plan(train({ found, within: { way: 'rise', most } }))
    expect(answer.status).toBe('planned')
    near(moves(answer).shim, expected['moves then'], tolerance)
    expect(status({ found, within: { way: 'rise', most: most - hair } })).toBe('impossible')
  })

  it('adds 35 where nothing may be taken out, 15 under one foot', () => {
    const pack = { now: 100, min: 100 }
    const answer = plan(train({ found, foot: { pack } }))
    near(moves(answer).shim, expected['adding only'], tolerance)
    near(answer.total?.shim, expected['adding only, sum'], tolerance)
    const lift = expected['adding only, greatest']
    expect(status({ found, foot: { pack, lift } })).toBe('planned')
    expect(status({ found, foot: { pack, lift: lift - hair } })).toBe('impossible')
  })
})

describe('T3: the raw readings of T1 (constructed, no printed answer)', () => {
  interface Expected {
    rise: { at: number; offset: number }[]
    side: { at: number; offset: number }[]
    couplings: {
      rise: { offset: number; slope: number }
      side: { offset?: number; slope: number }
    }[]
  }
  const { expected, tolerance } = caseOf<{ input: unknown; expected: Expected }>('trains', 'T3')
  const answer = plan(train({ found: rawSweeps(), seenFrom: 'left', held: ['compressor'] }))

  it('gives back both lines at the dial planes and at the couplings', () => {
    // planes 50 and 70 belong to the first coupling, 103 and 117 to the second
    for (const { at, offset } of expected.rise)
      near(lineAt(answer.asFound[at < 90 ? 0 : 1], at).z, offset, tolerance)
    for (const { at, offset } of expected.side)
      near(lineAt(answer.asFound[at < 90 ? 0 : 1], at).y, offset, tolerance)
    for (const [i, { rise, side }] of expected.couplings.entries()) {
      const line = answer.asFound[i]
      near(
        [line?.offset.z, line?.slope.z, line?.slope.y],
        [rise.offset, rise.slope, side.slope],
        tolerance,
      )
      if (side.offset !== undefined) near(line?.offset.y, side.offset, tolerance)
      near(line?.residual, 0, 1e-9)
    }
  })

  it('plans the moves of T1 and T4 with the compressor held', () => {
    near(moves(answer).shim, [-18, -10, 4.5, 2.5, 0, 0], 0.03)
    near(moves(answer).side, [-4, 0, 0, 0, 0, 0], 0.03)
  })
})

describe('T4: three machines, sideways in their holes (constructed, no printed answer)', () => {
  interface Expected {
    'least greatest move': number
    'moves then': number[]
    'bolt-bound at': number
    'hold compressor, motor needs': number
    'hold compressor, bolt-bound at': number
  }
  const t4 = caseOf<{ input: Parameters<typeof foundFrom>[0]; expected: Expected }>('trains', 'T4')
  const found = foundFrom(t4.input)
  const most = t4.expected['least greatest move']
  const side = (limit: number, of?: Three['held']) =>
    ({ way: 'side', most: limit, ...(of && { of }) }) as const
  const bolts = (room: number) => ({ hole: { clearance: 2 * room } })

  it.each([
    ['restraints', (limit: number): Three => ({ found, within: side(limit) })],
    ['bolts in their holes', (limit: number): Three => ({ found, foot: bolts(limit) })],
  ])('moves no foot by more than 1.5556, and a hair less cannot be had: %s', (_, limited) => {
    const answer = plan(train(limited(most)))
    expect(answer.status).toBe('planned')
    near(moves(answer).side, t4.expected['moves then'], 0.02)
    expect(status(limited(most - hair))).toBe('impossible')
    expect(status(limited(2))).toBe('planned')
    // bolt-bound, short by 0.3556 a foot
    expect(status(limited(t4.expected['bolt-bound at']))).toBe('impossible')
  })

  it('is bolt-bound with the compressor held and 3 of room, short by 1', () => {
    const limited = (limit: number): Three => ({
      found,
      held: ['compressor'],
      within: side(limit, ['motor', 'gear']),
    })
    const needs = Math.abs(t4.expected['hold compressor, motor needs'])
    expect(status(limited(t4.expected['hold compressor, bolt-bound at']))).toBe('impossible')
    expect(status(limited(needs - hair))).toBe('impossible')
    expect(status(limited(needs))).toBe('planned')
  })
})
