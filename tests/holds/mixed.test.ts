import { describe, expect, it, test } from 'vitest'
import { allChoices } from '../../src/engine/studies/holds/choice'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { holdsOf, mostRows } from '../../src/engine/studies/holds/holdRows'
import { mixedBest } from '../../src/engine/studies/holds/mixed'
import { rankHolds } from '../../src/engine/studies/holds/rank'
import type { HoldRow } from '../../src/engine/studies/holds/row'
import type { Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import { example, read } from './choice'
import { longTrain } from './longTrain'
import { firstOf } from '../counts'

const solver = await glpkSolver()
const long = process.env.HOLDFAST_LONG === '1'

/** The mixed program's choice against the best of all of them; undefined where nothing is planned. */
function compare(train: Train): { found: number; best: number; binaries: number } | undefined {
  const holds = new HoldSolver(train, solver)
  const rows = rankHolds(
    train,
    allChoices(train).map((choice) => holds.row(choice, false)),
  )
  const best = rows[0]?.costWithEffort
  const choice = mixedBest(new HoldSolver(train, solver))
  if (best === undefined || rows[0]?.status !== 'planned') {
    expect(choice).toBeUndefined()
    return undefined
  }
  if (!choice) throw new Error('no choice found')
  const found = holds.row(choice, false).costWithEffort ?? Infinity
  return { found, best, binaries: train.bodies.filter(({ effort }) => effort > 0).length }
}

describe('the choice that the mixed-integer program finds', () => {
  it.each(
    firstOf(['bolt-bound-gearbox', 'piped-compressor', 'base-bound-motor', 'skid-as-one'], 1),
  )('is the best of all choices of %s', (name) => {
    const both = compare(example(name))
    expect(both?.found).toBeCloseTo(both?.best ?? NaN, 2)
    expect(both?.found).toBeLessThanOrEqual((both?.best ?? NaN) * (1 + 5e-6))
  })

  it('is the best of all for random trains with random efforts', () => {
    let compared = 0
    for (let seed = 901; seed <= (long ? 1100 : 908); seed++) {
      const random = new Random(seed)
      const given = read(randomTrain(seed))
      if (given.bodies.length > 5) continue
      const effort = () => random.pick([0, random.scale(20, 2000)])
      const bodies = given.bodies.map((body) => ({ ...body, effort: effort() }))
      const train = { ...given, bodies, machines: bodies.slice(0, given.machines.length) }
      const both = compare(train)
      if (!both) continue
      expect(both.found, `seed ${seed}`).toBeLessThanOrEqual(both.best * (1 + 5e-6) + 1e-6)
      if (both.binaries > 1) compared++
    }
    expect(compared).toBeGreaterThan(long ? 20 : 1)
  }, 600_000)
})

describe('a list of choices that is not complete', () => {
  const train = read(longTrain(7))
  const all = holdsOf(train, solver, { prices: false })
  const some = holdsOf(train, solver, { prices: false, bodies: 6 })

  it('says so, and holds no choice twice', () => {
    expect([all.complete, some.complete]).toEqual([true, false])
    expect(all.rows).toHaveLength(128)
    expect(new Set(some.rows.map(({ held }) => held.join(' '))).size).toBe(some.rows.length)
    expect(some.rows.length).toBeLessThanOrEqual(mostRows)
  })

  it('begins with the best of all choices, and has the same numbers for each', () => {
    const numbers = ({ held, cost, costWithEffort, floor, disturbed }: HoldRow) =>
      JSON.stringify({ held, cost, costWithEffort, floor, disturbed })
    const known = new Set(all.rows.map(numbers))
    for (const row of some.rows) expect(known.has(numbers(row)), row.held.join(' ')).toBe(true)
    expect(some.rows[0]?.held).toEqual(all.rows[0]?.held)
  })

  it('misses none of the ten best plans here, and none of what people ask for', () => {
    const listed = new Set(some.rows.map(({ held }) => held.join(' ')))
    for (const row of all.rows.slice(0, 10)) expect(listed.has(row.held.join(' '))).toBe(true)
    const now = train.bodies.filter(({ held }) => held).map(({ id }) => id)
    for (const held of [[], now]) expect(listed.has(held.join(' '))).toBe(true)
  })
})

if (long)
  test('thirteen machines: the best of 8,192 choices is found', () => {
    const train = read(longTrain(13))
    const all = holdsOf(train, solver, { prices: false, bodies: 13 })
    const some = holdsOf(train, solver, { prices: false })
    expect(all.rows).toHaveLength(8192)
    expect(some.complete).toBe(false)
    expect(some.rows).toHaveLength(mostRows)
    expect(some.rows[0]?.costWithEffort).toBeCloseTo(all.rows[0]?.costWithEffort ?? NaN, 5)
  }, 600_000)
