import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { expectedAnswer } from '../../src/engine/plan/report'
import { noMotion } from '../../src/mechanics/motion'
import { foundLines } from '../../src/mechanics/uncertainty/foundLines'
import { twoMachines } from '../second/pairs'

/** Rims at x = 50 and 150 mm, mid-span at 100, read at 12, 3 and 6, known to 8 um; no sag, which is known exactly. */
const train = (joins: boolean) => {
  const rim = (at: number, rides: 'right' | 'left', values: readonly number[], uSag: number) => ({
    ...{ kind: 'rim' as const, at, rides, u: 8, sag: 0, uSag, uAt: 1e-6 },
    readings: [12, 3, 6].map((hour, i): [number, number] => [hour, values[i] ?? NaN]),
  })
  const answer = readTrain(
    twoMachines(
      { offset: 1e6 },
      [rim(150, 'right', [10, 60, 110], 20), rim(50, 'left', [5, -60, -10], 20)],
      {},
      {
        surveys: [
          {
            id: 'wire',
            u: 0.5,
            joins,
            points: [
              ...[-900, -100].map((x) => ({ machine: 'A', x, z: 0, y: 0 })),
              ...[300, 1500].map((x) => ({ machine: 'B', x, z: -10 - 0.02 * x, y: 40 })),
            ],
          },
        ],
      },
    ),
  )
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  return answer.train
}

describe('a line that a survey joins', () => {
  const joined = train(true)
  const [found] = foundLines(joined)
  const { y, sy, z, sz } = found?.line ?? { y: NaN, sy: NaN, z: NaN, sz: NaN }
  // what a rim shows at 12, 3 and 6 without its zero: z, y and -z at its place, the other way on the left shaft
  const shown = [
    { values: [10, 60, 110], sign: 1, arm: 50 },
    { values: [5, -60, -10], sign: -1, arm: -50 },
  ].map(({ values, sign, arm }) => {
    const [up, side] = [sign * (z + sz * arm), sign * (y + sy * arm)]
    const model = [up, side, -up]
    const rest = values.map((value, i) => value - (model[i] ?? NaN))
    const zero = rest.reduce((a, b) => a + b, 0) / 3
    return { model, zero, left: rest.map((value) => value - zero) }
  })

  it('is off from that of the readings', () => {
    const [alone] = foundLines(train(false))
    expect(Math.abs((alone?.line.z ?? NaN) - z)).toBeGreaterThan(5)
  })

  it('has the zero of each sweep that fits it, and expects readings with these', () => {
    const still = joined.bodies.map(() => noMotion)
    const expected = expectedAnswer(joined, foundLines(joined), still)
    for (const [i, { model, zero }] of shown.entries()) {
      expect(found?.zeros[i]).toBeCloseTo(zero, 6)
      const set = expected[i]
      if (!set || !('readings' in set)) throw new Error('no sweep')
      expect(set.readings).toHaveLength(3)
      for (const [k, [, value]] of set.readings.entries())
        expect(value).toBeCloseTo((model[k] ?? NaN) + zero, 6)
    }
  })

  it('has the residual of the readings beside itself', () => {
    const squares = shown.flatMap(({ left }) => left.map((value) => (value / 8) ** 2))
    const residual = Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length)
    const [own] = checkRead(joined).asFound
    expect(own?.residual).toBeCloseTo(residual, 6)
    expect(own?.residual).toBeGreaterThan(
      (checkRead(train(false)).asFound[0]?.residual ?? NaN) + 0.1,
    )
  })
})
