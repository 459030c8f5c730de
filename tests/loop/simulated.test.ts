import { describe, expect, it } from 'vitest'
import { Random } from '../second/random'
import { shapes, simulate, type Job } from './simulated'

const count = process.env['HOLDFAST_LONG'] === '1' ? 200 : 3
const start = Number(process.env['HOLDFAST_SEED'] ?? 900)

describe(`${count} simulated jobs: as found, plan, work with errors, read again, plan again`, () => {
  const jobs: Job[] = []
  it('are worked through', { timeout: 1_200_000 }, () => {
    for (let k = 0; k < count; k++) {
      const shape = shapes[k % shapes.length] ?? ''
      jobs.push(simulate(new Random(start + k), shape, k % 8 === 5))
    }
    expect(jobs).toHaveLength(count)
    const story = ({ shape, shares, end }: Job) =>
      `${shape} ${shares.map((share) => share.toFixed(2)).join(' ')} ${end}`
    const worse = ({ shares }: Job) => shares.some((s, i) => i > 0 && s > (shares[i - 1] ?? 0))
    console.log(
      `seeds ${start} to ${start + count - 1}: ${jobs.filter(({ shares }) => (shares.at(-1) ?? 2) <= 1).length} done, ` +
        `rounds ${[1, 2, 3].map((n) => jobs.filter(({ shares }) => shares.length === n + 1).length).join(' ')}; ` +
        `not done or worse on the way:\n${jobs
          .filter((job) => (job.shares.at(-1) ?? 2) > 1 || worse(job))
          .map(story)
          .join('\n')}`,
    )
  })

  it('are in full tolerance by the true geometry within three rounds, at least 95 of 100', () => {
    const done = jobs.filter(({ shares }) => (shares.at(-1) ?? Infinity) <= 1)
    expect(done.length / count).toBeGreaterThanOrEqual(0.95)
  })

  // What keeps the loop from diverging: where a trim comes out depends on its own errors, never on
  // how far out the train stood, and those errors are no larger than they were said to be.
  it('come out of every trim where it was said they would, within its doubt', () => {
    const trims = jobs.flatMap((job) => job.trims)
    const beyond = trims.map(({ said, u, came }) => (came - said) / u)
    const guarded = beyond.filter((by) => by <= 1.645).length
    console.log(
      `${trims.length} trims, ${guarded} within 1.645 standard uncertainties of what was said, the worst ${Math.max(...beyond).toFixed(2)}`,
    )
    expect(trims.length).toBeGreaterThan(count / 10)
    expect(Math.max(...beyond)).toBeLessThan(3)
    // one in ten, and one where there are few
    expect(trims.length - guarded).toBeLessThanOrEqual(Math.max(1, trims.length / 10))
  })

  // A single round may make a train worse by the errors of that round; what must not be is that it
  // goes on, or that a job ends far out.
  it('never diverge: none ends worse than it began or far out, none gets worse twice running out of tolerance', () => {
    for (const { shares, shape } of jobs) {
      const story = `${shape} ${shares.map((share) => share.toFixed(2)).join(' ')}`
      const last = shares.at(-1) ?? Infinity
      expect(last, story).toBeLessThan(Math.min(shares[0] ?? 0, 1.25))
      for (const [i, share] of shares.entries()) {
        const [two = Infinity, one = Infinity] = [shares[i - 2], shares[i - 1]]
        expect(share > 1 && share > one && one > two, story).toBe(false)
      }
    }
  })
})
