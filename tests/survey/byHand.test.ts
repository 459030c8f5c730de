import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { chiSquareQuantile } from '../../src/mechanics/chiSquare'
import { foundLines } from '../../src/mechanics/uncertainty/foundLines'
import { surveyChecks } from '../../src/mechanics/uncertainty/surveyChecks'
import { caseOf } from '../published/cases'
import { foundFrom, train } from '../published/three'
import { known, wide } from '../sure/handWorked'
import { twoMachines } from '../second/pairs'
import type { Survey } from '../second/train'

const read = (document: unknown) => {
  const answer = readTrain(document)
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  return answer.train
}

describe('chi-square', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.4, upper critical values
  it.each([
    [0.05, 1, 3.841],
    [0.05, 2, 5.991],
    [0.05, 4, 9.488],
    [0.05, 10, 18.307],
    [0.05, 30, 43.773],
    [0.05, 100, 124.342],
    [0.025, 1, 5.024],
    [0.025, 3, 9.348],
    [0.025, 20, 34.17],
    [0.001, 1, 10.828],
    [0.001, 15, 37.697],
  ])('is passed with a risk of %d and %i degrees of freedom at %d', (risk, freedom, value) => {
    expect(Math.abs(chiSquareQuantile(risk, freedom) - value)).toBeLessThanOrEqual(0.0005 + 1e-9)
  })
})

/**
 * Two machines with the coupling at x = 100 mm, its offset known to 30 um and its slope as good as exactly. Heights of A at 0 and at
 * 100 and of B at 200, each known to 10 um: 2 of A at 100 less A at 0 is where A would lie at 200. What B lies above it
 * is the offset, known to 10 times the root of 1 + 4 + 1 = 24.5 um.
 */
const level = (b: number, joins = false, extra: Partial<Survey> = {}) =>
  read(
    twoMachines(
      { offset: wide },
      [{ ...known(0, 0, 30), uSlope: 1e-6 }],
      {},
      {
        surveys: [
          {
            id: 'level',
            u: 10,
            joins,
            points: [
              { machine: 'A', x: 0, z: 500 },
              { machine: 'A', x: 100, z: 700 },
              { machine: 'B', x: 200, z: 900 + b },
            ],
            ...extra,
          },
        ],
      },
    ),
  )

describe('one coupling and three heights', () => {
  it('disagree by what is seen over what both are unsure by', () => {
    // 100 squared over 900 + 600: over the 5.024 that chance passes once in forty
    const [check] = surveyChecks(level(100)).single
    expect(check?.squares).toBeCloseTo(10_000 / 1500, 9)
    expect(check?.freedom).toBe(1)
    expect(check?.limit).toBeCloseTo(5.024, 3)
    expect(check?.agree).toBe(false)
    // 80 squared over the same is 4.27, under it
    expect(surveyChecks(level(80)).single[0]?.agree).toBe(true)
    expect(surveyChecks(level(80)).single[0]?.squares).toBeCloseTo(6400 / 1500, 9)
  })

  it('cannot say which entry is wrong where one number is left over', () => {
    const [check] = surveyChecks(level(100)).single
    // three heights, and the offset and the slope of the coupling
    expect(check?.explains).toHaveLength(5)
    const of = (index: number) =>
      check?.explains.find((one) => one.kind === 'point' && one.index === index)?.error
    // B 100 too high, A at 100 50 too low, or A at 0 100 too high
    expect(of(2)).toBeCloseTo(100, 9)
    expect(of(1)).toBeCloseTo(-50, 9)
    expect(of(0)).toBeCloseTo(100, 9)
    for (const { left } of check?.explains ?? []) expect(left).toBeCloseTo(0, 9)
  })

  it('join by their weights', () => {
    const [line] = foundLines(level(100, true))
    // the offset read, 0 to 900 um2, and surveyed, 100 to 600 um2: 100 * 900 / 1500
    expect(line?.line.z).toBeCloseTo(60, 6)
    expect(line?.line.y).toBeCloseTo(0, 9)
    // 1 / (1/900 + 1/600)
    expect(line?.covariance[2]?.[2]).toBeCloseTo(360, 6)
    // sideways nothing is surveyed
    expect(line?.covariance[0]?.[0]).toBeCloseTo(900, 6)
  })

  it('stay as read where the survey does not join, or is not used', () => {
    expect(foundLines(level(100))[0]?.line.z).toBe(0)
    const unused = level(100, true, { use: false })
    expect(foundLines(unused)[0]?.line.z).toBe(0)
    expect(surveyChecks(unused)).toEqual({ single: [] })
  })

  it('do not see what is a straight line of the survey itself', () => {
    const tilted = level(100, false, {
      points: [
        { machine: 'A', x: 0, z: -300 },
        { machine: 'A', x: 100, z: 900 },
        { machine: 'B', x: 200, z: 2200 },
      ],
    })
    expect(surveyChecks(tilted).single[0]?.squares).toBeCloseTo(10_000 / 1500, 9)
  })
})

describe('T1, three machines (published values, constructed)', () => {
  type Lines = Parameters<typeof foundFrom>[0]
  const t1 = caseOf<{ input: Lines; expected: unknown }>('trains', 'T1').input
  /** Heights of the axes (mil) as T1 measures them: M 18 - 0.20 x, G -12 + 0.10 x, C 0. */
  const heights = { motor: [18, -0.2], gear: [-12, 0.1], compressor: [0, 0] } as const
  const places = { motor: [0, 40], gear: [75, 95], compressor: [130, 180] } as const
  const points = (['motor', 'gear', 'compressor'] as const).flatMap((machine) =>
    places[machine].map((x) => ({
      machine,
      x,
      z: heights[machine][0] + heights[machine][1] * x,
    })),
  )
  const surveyed = (change: (z: number, i: number) => number = (z) => z) =>
    read({
      ...train({ found: foundFrom(t1) }),
      surveys: [
        { id: 'level', u: 0.2, points: points.map((p, i) => ({ ...p, z: change(p.z, i) })) },
      ],
    })

  it('is seen by a survey of its true heights as the readings see it', () => {
    const [check] = surveyChecks(surveyed()).single
    expect(check?.squares).toBeCloseTo(0, 9)
    // six heights, less height and slope of the survey's own line
    expect(check?.freedom).toBe(4)
    expect(check?.agree).toBe(true)
    for (const { apart } of check?.rows ?? []) expect(apart?.by).toBeCloseTo(0, 6)
    // against any other line of sight
    expect(
      surveyChecks(surveyed((z, i) => z + 40 - 0.7 * (points[i]?.x ?? 0))).single[0]?.squares,
    ).toBeCloseTo(0, 6)
  })

  it('names the one height that is 5 mil off, and by how much', () => {
    const [check] = surveyChecks(surveyed((z, i) => (i === 2 ? z + 5 : z))).single
    expect(check?.agree).toBe(false)
    const [best] = check?.explains ?? []
    expect(best).toMatchObject({ kind: 'point', index: 2, way: 'z' })
    expect(best?.error).toBeCloseTo(5 * 25.4, 6)
    expect(best?.left).toBeCloseTo(0, 6)
  })

  it('tells nobody to be wrong alone where two heights are', () => {
    const [check] = surveyChecks(surveyed((z, i) => (i === 1 || i === 5 ? z + 12 : z))).single
    expect(check?.agree).toBe(false)
    expect(check?.explains).toEqual([])
  })
})
