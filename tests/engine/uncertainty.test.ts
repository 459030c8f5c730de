import { choleskyOf } from '../../src/mechanics/cholesky'
import { describe, expect, it } from 'vitest'
import { checkTrain } from '../../src/engine/plan/checkTrain'
import { asFound } from '../../src/mechanics/readings/asFound'
import { close, at, pair, planOf, trainOf } from './pair'

const wide = { tolerance: { offset: 1000, angle: 10 } }
const turn = (top: number, three: number, bottom: number, nine: number) => [
  [12, top],
  [3, three],
  [6, bottom],
  [9, nine],
]

describe('uncertainty of a line as found', () => {
  // constructed case U1: each half known to 0.577 / 2 mil, planes 14 in apart (D); by hand
  // u(x) = 0.2887 sqrt((1 - x/14)^2 + (x/14)^2): 0.2887 * 2.0454 at 26, 0.2887 * 4.6004 at 52
  const u = 1 / Math.sqrt(3) // of a TIR, rectangular over 1 mil either way
  const each = u / Math.SQRT2 // of each of the two readings of a TIR
  const rim = (rides: string, x: number) => ({
    kind: 'rim',
    rides,
    at: x,
    sag: 0,
    u: each,
    readings: turn(0, 0, 0, 0),
  })
  const document = pair({
    found: [rim('left', 0), rim('right', 14)],
    coupling: {
      left: { machine: 'A', plane: 0 },
      right: { machine: 'B', plane: 14 },
      tolerance: { offset: 10, angle: 1 },
    },
    rest: { units: { length: 'in', fine: 'mil' } },
  })

  it.each([
    ['inboard feet', 26, 0.59],
    ['outboard feet', 52, 1.328],
    ['first plane', 0, 0.2887],
    ['second plane', 14, 0.2887],
    ['mid-span', 7, 0.2041], // 0.2887 / sqrt 2
  ])('grows along the line, from the covariance: %s', (_, x, expected) => {
    const coupling = at(trainOf(document).couplings, 0)
    const { covariance } = asFound(coupling)
    const arm = x * 25.4 - coupling.mid
    for (const first of [0, 2]) {
      const entry = (i: number, j: number) => covariance[first + i]?.[first + j] ?? NaN
      const variance = entry(0, 0) + 2 * arm * entry(0, 1) + arm * arm * entry(1, 1)
      expect(Math.sqrt(variance) / 25.4).toBeCloseTo(expected, 3)
    }
    // up and down say nothing about sideways
    expect(covariance[0]?.[2]).toBeCloseTo(0, 9)
    expect(covariance[1]?.[3]).toBeCloseTo(0, 9)
  })

  it('is told with the line: offset 0.2041 mil, slope 0.2887 sqrt 2 / 14 = 0.02916 mil/in', () => {
    const { u: told } = at(planOf(document).asFound, 0)
    expect(told.offset).toEqual({ y: close(0.2041, 4), z: close(0.2041, 4) })
    expect(told.slope).toEqual({ y: close(0.02916, 5), z: close(0.02916, 5) })
  })

  it('is 10 um a reading and 0.05 mrad a slope where nothing is said', () => {
    const line = { kind: 'line', at: 100, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }
    const { u: told } = at(planOf(pair({ found: [line], coupling: wide })).asFound, 0)
    expect(told).toEqual({ offset: { y: 10, z: 10 }, slope: { y: 0.05, z: 0.05 } })
  })
})

describe('sets that say more than is needed', () => {
  const line = (z: number, u?: number) => ({
    kind: 'line',
    at: 100,
    offset: { y: 0, z },
    slope: { y: 0, z: 0 },
    ...(u !== undefined && { u }),
  })

  it('are weighed by 1 / u^2: 10 +- 5 and 20 +- 10 make 12', () => {
    // (10/25 + 20/100) / (1/25 + 1/100) = 0.6 / 0.05; u = sqrt(1 / 0.05)
    const answer = planOf(pair({ found: [line(10, 5), line(20, 10)], coupling: wide }))
    const { offset, u, residual } = at(answer.asFound, 0)
    expect(offset.z).toBeCloseTo(12, 9)
    expect(u.offset.z).toBeCloseTo(4.47213595, 6)
    // left over are -2 and +8: 0.4 and 0.8 of their u, among 8 numbers: sqrt(0.8 / 8)
    expect(residual).toBeCloseTo(0.316227766, 8)
  })

  it('leave a residual for each reading of a sweep, in its own u', () => {
    // zero is free and y, slope 0 are given: 0, 3, 0, -3 fits y = 3; with y said to be 0 +- 10 and
    // the sweep's u = 10 as well: y = 2 (two readings +-3 against one 0: 2 * 3 / 3); left over are
    // 1, 1 of the sweep and 2 of the line, over 10: squares 0.06 over 4 + 4 numbers
    const rim = { kind: 'rim', rides: 'right', at: 100, sag: 0, readings: turn(0, 3, 0, -3) }
    const { offset, residual } = at(
      planOf(pair({ found: [line(0), rim], coupling: wide })).asFound,
      0,
    )
    expect(offset.y).toBeCloseTo(2, 9)
    expect(residual).toBeCloseTo(Math.sqrt(0.06 / 8), 9)
  })

  it('are said to differ where chance does not make as much of two sound methods once in twenty', () => {
    const findings = (z: number) =>
      planOf(pair({ found: [line(0), line(z)], coupling: wide })).findings
    // 40 at 10 um each: 40^2 / (10^2 + 10^2) = 8, of the 9.488 that four numbers pass once in twenty (table value)
    expect(findings(40)).toEqual([])
    // 100: 50, and sqrt(50 / 9.488) = 2.3
    expect(findings(100)).toEqual([
      {
        where: 'couplings[0].found',
        what: expect.stringMatching(
          /the line of set 2 against the line of set 1: .* 2\.3 times what their uncertainties allow/,
        ) as string,
      },
    ])
  })
})

describe('closure', () => {
  const rim = (...hours: [number, number, number, number]) => ({
    kind: 'rim',
    rides: 'right',
    at: 150,
    sag: 10,
    readings: turn(...hours),
  })
  const line = { kind: 'line', at: 100, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }

  it('is top + bottom - (left + right), for sets with all four hours', () => {
    const found = [
      rim(0, 55, 30, -25), // 30 - 30
      rim(0, 7, 20, 5), // 20 - 12
      line,
      {
        ...rim(0, 0, 0, 0),
        readings: [
          [12, 0],
          [6, 40],
        ],
      },
      { kind: 'gap', diameter: 300, readings: turn(100, 102, 104, 99) }, // 204 - 201
    ]
    const report = checkTrain(pair({ found, coupling: wide }))
    if (!('ok' in report)) throw new Error('refused')
    expect(report.closure).toEqual([
      { coupling: 'c', set: 0, value: 0 },
      { coupling: 'c', set: 1, value: 8 },
      { coupling: 'c', set: 4, value: 3 },
    ])
  })

  it('is worth a finding beyond 25.4 um (1 mil)', () => {
    const where = (closing: number) => {
      const report = checkTrain(pair({ found: [line, rim(0, 0, closing, 0)], coupling: wide }))
      return 'ok' in report ? report.findings.map((finding) => finding.where) : []
    }
    expect(where(25)).toEqual([])
    expect(where(26)).toEqual(['couplings[0].found[1]'])
    expect(where(-26)).toEqual(['couplings[0].found[1]'])
  })
})

describe('the triangle of a covariance', () => {
  it('is as small as the diagonal allows where one error is nearly all of it', () => {
    const by = [3333333333363.337, 10936132983.47551, -2416666666644.9185, -7928696412.877024]
    const matrix = by.map((a, i) => by.map((b, j) => a * b + (i === j ? 1e-6 : 0)))
    const lower = choleskyOf(matrix)
    matrix.forEach((row, i) => {
      const size = Math.sqrt(row[i] ?? 0)
      for (const value of lower[i] ?? []) expect(Math.abs(value)).toBeLessThan(1.001 * size)
      for (const [j, value] of row.entries()) {
        const back = (lower[i] ?? []).reduce((sum, a, k) => sum + a * (lower[j]?.[k] ?? 0), 0)
        expect(Math.abs(back - value)).toBeLessThan(1e-6 * size * Math.sqrt(matrix[j]?.[j] ?? 0))
      }
    })
  })
})
