import { describe, expect, it } from 'vitest'
import { close, at, given, pair, planOf } from './pair'

/** d = (30, -20) um at mid-span with slopes (0.2, -0.1): (10, -10) at 0, (50, -30) at 200 mm. */
const found = [given(30, -20, 0.2, -0.1)]
const checksOf = (coupling: Record<string, unknown>, rest: Record<string, unknown> = {}) =>
  at(planOf(pair({ found, coupling, rest })).couplings, 0)

describe('checks of a coupling', () => {
  it('take d at the far plane over the span as the angle of a plane', () => {
    // left: d(200) / 200; right: -d(0) / 200
    expect(checksOf({ tolerance: { flex: 0.5 } })).toMatchObject({
      share: close(0.5),
      checks: [
        { what: 'left plane', y: close(0.25), z: close(-0.15), limit: 0.5, share: close(0.5) },
        { what: 'right plane', y: close(-0.05), z: close(0.05), limit: 0.5, share: close(0.1) },
      ],
    })
  })

  it('take the offset at mid-span and the angle as its slope', () => {
    expect(checksOf({ tolerance: { offset: 100, angle: 0.8 } }).checks).toEqual([
      { what: 'offset', y: close(30), z: close(-20), limit: 100, share: close(0.3) },
      { what: 'angle', y: close(0.2), z: close(-0.1), limit: 0.8, share: close(0.25) },
    ])
  })

  it('count y and z apart in a box, and the vector where the tolerance is round', () => {
    const round = checksOf({ tolerance: { flex: 0.5, offset: 100, shape: 'round' } })
    expect(round.checks.map(({ share }) => share)).toEqual([
      close(Math.sqrt(0.25 ** 2 + 0.15 ** 2) / 0.5), // 0.583
      close(Math.sqrt(0.05 ** 2 + 0.05 ** 2) / 0.5), // 0.141
      close(Math.sqrt(30 ** 2 + 20 ** 2) / 100), // 0.361
    ])
    expect(round.share).toBeCloseTo(0.5830951895, 9)
  })

  it('grow with the tolerance of the state, whose factor stands in the limit', () => {
    const states = [
      { id: 'start', name: 'Start', tolerance: 2 },
      { id: 'run', name: 'Run', tolerance: 0.5 },
    ]
    const answer = planOf(
      pair({
        found,
        coupling: {
          tolerance: { offset: 100 },
          axial: { found: 250.2, want: 250, tolerance: 0.5 },
        },
        rest: { states },
      }),
    )
    expect(answer.couplings?.map(({ state, checks }) => [state, checks])).toEqual([
      [
        'start',
        [
          { what: 'offset', y: close(30), z: close(-20), limit: 200, share: close(0.15) },
          { what: 'gap', x: close(0.2), limit: 1, share: close(0.2) },
        ],
      ],
      [
        'run',
        [
          { what: 'offset', y: close(30), z: close(-20), limit: 50, share: close(0.6) },
          { what: 'gap', x: close(0.2), limit: 0.25, share: close(0.8) },
        ],
      ],
    ])
    expect(at(answer.asFound, 0).share).toEqual({ start: close(0.2), run: close(0.8) })
    expect(answer.worstShare).toBeCloseTo(0.8, 9)
  })

  it('are taken from the line that is aimed at, offset at mid-span and slope', () => {
    const states = [{ id: 'run', name: 'Run' }]
    const aim = { run: { offset: { y: 5, z: -20 }, slope: { y: 0.15, z: -0.1 } } }
    // left: (25, 0) + (0.05, 0) * 100 = (30, 0) at 200; right: (20, 0) at 0
    expect(
      checksOf({ tolerance: { flex: 0.5, offset: 100, angle: 1 }, aim }, { states }).checks,
    ).toEqual([
      { what: 'left plane', y: close(0.15), z: close(0), limit: 0.5, share: close(0.3) },
      { what: 'right plane', y: close(-0.1), z: close(0), limit: 0.5, share: close(0.2) },
      { what: 'offset', y: close(25), z: close(0), limit: 100, share: close(0.25) },
      { what: 'angle', y: close(0.05), z: close(0), limit: 1, share: close(0.05) },
    ])
  })

  it('take the gap as found, opened by what the right end grows at its plane, closed by the left', () => {
    const growth = (...points: [number, number][]) => ({
      hot: points.map(([x, axial]) => ({ at: x, axial })),
    })
    const answer = planOf(
      pair({
        // at its plane (0): 100 + 0.2 * 500 = 200; at its plane (200): -400 + 0.5 * 200 = -300
        left: { growth: growth([-1000, 0], [-500, 100]) },
        right: { growth: growth([0, -400], [1000, 100]) },
        coupling: {
          tolerance: { offset: 100 },
          axial: { found: 250.1, want: 250, tolerance: 0.8 },
        },
        rest: { states: [{ id: 'hot', name: 'Hot' }] },
      }),
    )
    // 250.1 - 0.3 - 0.2 - 250
    expect(at(answer.couplings, 0).checks[1]).toEqual({
      what: 'gap',
      x: close(-0.4),
      limit: 0.8,
      share: close(0.5),
    })
  })

  it('are of the moved train, with how they stood as found beside them', () => {
    const answer = planOf(
      pair({
        right: { feet: [{ id: '1', x: 1000 }] },
        found: [given(0, -150)],
        coupling: { tolerance: { offset: 100 } },
      }),
    )
    const row = at(answer.couplings, 0)
    expect(row.share).toBeCloseTo(1, 5)
    expect(row.checks[0]?.z).toBeCloseTo(-100, 3)
    expect(row.asFound.share).toBeCloseTo(1.5, 9)
    expect(row.asFound.checks[0]?.z).toBeCloseTo(-150, 9)
  })
})
