import { describe, expect, it } from 'vitest'
import { Random } from '../second/random'
import { simulate, type Job, type Planted } from './simulated'

const count = process.env['HOLDFAST_LONG'] === '1' ? 40 : 1

/** The motor, gear and piped compressor of the examples, read to a hundredth of a mm; one dial shows so much more at one hour. */
const job = (seed: number, planted?: Planted): Job =>
  simulate(new Random(seed), 'piped-compressor', false, {
    reading: 3,
    ...(planted && { planted }),
  })

const says = /Done:|Nothing more|nothing more needs/

describe(`the whole loop, ${count} jobs each: read, plan, work with errors, read again`, () => {
  it('calls nothing a contradiction where nothing is wrong', { timeout: 600_000 }, () => {
    const said = Array.from({ length: count }, (_, i) => job(70 + i)).flatMap((one) => one.said)
    expect(said.length).toBeGreaterThanOrEqual(count)
    for (const { words } of said) expect(words).not.toMatch(/contradict|not what was expected/)
  })

  // Four readings of a rim are told by three numbers, so a dial 80 um off leaves a chi-square of (80 / 20)^2 = 16 of
  // readings that are good to 10 um, where chance passes 10.8 once in a thousand (tables).
  const plants: Planted[] = [
    { coupling: 0, set: 0, hour: 6, by: 80, from: 'the start' },
    { coupling: 0, set: 1, hour: 3, by: -80, from: 'the work' },
    { coupling: 1, set: 0, hour: 6, by: 80, from: 'the work' },
    { coupling: 1, set: 1, hour: 9, by: 80, from: 'the start' },
  ]
  it.each(plants)(
    'never with a dial that contradicts: $by um at hour $hour of set $set, coupling $coupling, from $from',
    { timeout: 1_800_000 },
    (planted) => {
      for (let i = 0; i < count; i++) {
        const { said, shares } = job(70 + i, planted)
        expect(said.length).toBeGreaterThan(0)
        for (const { state, headline, words } of said) {
          const story = `seed ${70 + i}: ${shares.map((s) => s.toFixed(2)).join(' ')}: ${words}`
          expect(state, story).not.toBe('done')
          expect(`${headline} ${words}`).not.toMatch(says)
        }
      }
    },
  )
})
