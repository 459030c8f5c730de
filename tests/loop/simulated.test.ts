import { describe, expect, it } from 'vitest'
import { Random } from '../second/random'
import { shapes, simulate, type Job } from './simulated'

const count = process.env['HOLDFAST_LONG'] === '1' ? 200 : 40
const start = Number(process.env['HOLDFAST_SEED'] ?? 900)

describe(`${count} simulated jobs: as found, plan, work with errors, read again, plan again`, () => {
  const jobs: Job[] = []
  it('are worked through', { timeout: 1_200_000 }, () => {
    for (let k = 0; k < count; k++) {
      const shape = shapes[k % shapes.length] ?? ''
      jobs.push(simulate(new Random(start + k), shape, k % 8 === 5))
    }
    expect(jobs).toHaveLength(count)
  })

  it('are in full tolerance by the true geometry within three rounds, at least 95 of 100', () => {
    const done = jobs.filter(({ shares }) => (shares.at(-1) ?? Infinity) <= 1)
    const rounds = [0, 1, 2, 3].map(
      (n) => jobs.filter(({ shares }) => shares.length - 1 === n).length,
    )
    const ends = Object.fromEntries(
      ['done', 'three rounds', 'no plan'].map((e) => [
        e,
        jobs.filter(({ end }) => end === e).length,
      ]),
    )
    console.log(
      done.length,
      rounds,
      ends,
      jobs.filter((j) => !done.includes(j)),
    )
    expect(done.length / count).toBeGreaterThanOrEqual(0.95)
  })

  it('never diverge: none ends worse than it began, or leaves tolerance once it is in', () => {
    for (const { shares, shape } of jobs) {
      const last = shares.at(-1) ?? Infinity
      expect(last, shape).toBeLessThanOrEqual(Math.max(1, shares[0] ?? 0))
    }
  })
})
