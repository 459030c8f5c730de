import { describe, expect, it } from 'vitest'
import { floorReason, type FloorReason } from '../../src/engine/infeasible/floor/floorReason'
import { choiceNow, choiceOf } from '../../src/engine/studies/holds/choice'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import type { Body, Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'
import { example, holding, read, subsets } from '../holds/choice'
import { randomTrain } from '../second/randomTrain'
import { firstOf } from '../counts'

const solver = await glpkSolver()

function reasonOf(train: Train): FloorReason {
  const holds = new HoldSolver(train, solver)
  const reason = floorReason(holds, holds.free(choiceNow(train)))
  if (!reason) throw new Error('no floor')
  return reason
}

function floorOf(train: Train): number {
  const holds = new HoldSolver(train, solver)
  return holds.solve(choiceNow(train)).floor ?? NaN
}

/** The train with nothing that keeps a foot or a nozzle where it is. */
function unlimited(train: Train): Train {
  const bodies = train.bodies.map((body): Body => {
    const free: { -readonly [Key in keyof Body]: Body[Key] } = { ...body }
    delete free.tilt
    return {
      ...free,
      restraints: [],
      feet: body.feet.map(({ id, place, x, y, mayShim, maySlide }) => ({
        id,
        place,
        x,
        y,
        mayShim,
        maySlide,
      })),
    }
  })
  return { ...train, bodies, machines: bodies.slice(0, train.machines.length) }
}

const same = (a: number, b: number) => Math.abs(a - b) <= 2e-4 * Math.max(a, b) + 1e-6

/** What a reason claims, tried out on changed trains; answers its kind. */
function tried(train: Train, what: string): string {
  const reason = reasonOf(train)
  const { kind, floor, pulls, sentence } = reason
  expect(floor, what).toBeCloseTo(floorOf(train), 9)
  expect(sentence, what).not.toBe('')
  if (kind !== 'none') {
    const weights = pulls.reduce((sum, { weight }) => sum + weight, 0)
    expect(weights, what).toBeCloseTo(1, 4)
  }
  switch (kind) {
    case 'none':
      expect(floor, what).toBeLessThan(1e-5)
      break
    case 'states': {
      // wherever the machines are put: nothing held, no limit anywhere
      const { apart } = reason
      if (!apart) throw new Error(`${what}: no pair`)
      const [a, b] = apart.states.map((id) => train.states.find((state) => state.id === id))
      const coupling = train.couplings.find(({ id }) => id === apart.coupling)
      if (!a || !b || !coupling) throw new Error(`${what}: no such states`)
      expect(apart.share, what).toBeLessThanOrEqual(floor * (1 + 2e-4))
      expect(same(floorOf(holding(unlimited(train), [])), floor), what).toBe(true)
      break
    }
    case 'still': {
      const [pull] = pulls
      expect(pulls, what).toHaveLength(1)
      expect(sentence).toContain('lies between machines that stay')
      expect(train.couplings.map(({ id }) => id)).toContain(pull?.coupling)
      break
    }
    case 'limits':
      expect(reason.limits.length, what).toBeGreaterThan(0)
      expect(floorOf(unlimited(train)), what).toBeLessThan(floor * (1 - 1e-5))
      break
    case 'machines':
      expect(reason.limits, what).toEqual([])
      // no limit of a foot or a nozzle has a part in it
      expect(same(floorOf(unlimited(train)), floor), what).toBe(true)
      break
    case 'teeth':
      throw new Error(
        `${what}: no teeth are kept off dead straight here, and the floor is said to be theirs`,
      )
    case 'kept':
      throw new Error(`${what}: nothing is kept free here, and the floor is said to be that`)
  }
  return kind
}

describe('why the floor is where it is', () => {
  it('names the two states and how far they pull the coupling apart', () => {
    const reason = reasonOf(example('piped-compressor'))
    expect(reason.kind).toBe('states')
    expect(reason.apart).toMatchObject({
      coupling: 'gear-compressor',
      states: ['cold-start', 'hot-summer'],
      what: 'right plane',
    })
    expect(reason.sentence).toBe(
      'Cold start and hot summer pull gear to compressor apart by 0.85 mrad at its right plane; no shim can close that.',
    )
  })

  it('by hand: a coupling that two states pull 0.1 mm apart, each with 0.1 mm of offset', () => {
    // full load and part load at a short coupling of 0.1 mm: the better shared, the worse uses half
    const { apart, floor, sentence } = reasonOf(example('five-in-a-line'))
    expect(apart).toMatchObject({ what: 'offset', states: ['full-load', 'part-load'] })
    expect(apart?.value).toBeCloseTo(100, 0)
    expect(floor).toBeCloseTo((apart?.value ?? NaN) / (2 * 100), 3)
    expect(sentence).toContain('apart by 0.10 mm of offset; no shim can close that')
  })

  it('names bolts and nozzles where they hold it', () => {
    const { kind, limits, sentence } = reasonOf(holding(example('bolt-bound-gearbox'), ['gear']))
    expect(kind).toBe('limits')
    expect(new Set(limits.map((limit) => 'body' in limit && limit.body))).toEqual(
      new Set(['low-stage']),
    )
    expect(new Set(limits.map((one) => (one.kind === 'foot' ? one.limit : one.kind)))).toEqual(
      new Set(['hole', 'restraint']),
    )
    expect(sentence).toContain(
      'Low stage to gear (turndown) comes to 372 % of its tolerance at best',
    )
    expect(sentence).toContain('the low-stage compressor meets its bolts')
  })

  it('names the motor that has nothing under it', () => {
    const { limits, sentence } = reasonOf(holding(example('base-bound-motor'), ['fluid-drive']))
    expect(new Set(limits.map((one) => (one.kind === 'foot' ? one.limit : one.kind)))).toEqual(
      new Set(['minimum pack']),
    )
    expect(sentence).toContain('the spare motor has no more shim to take out')
  })

  it.each(
    firstOf(['bolt-bound-gearbox', 'piped-compressor', 'base-bound-motor', 'skid-as-one'], 1),
  )('is what a changed train shows, for every choice of %s', (name) => {
    const train = example(name)
    for (const held of subsets(train)) tried(holding(train, held), `${name} ${held.join(' ')}`)
  })

  it('is what a changed train shows, for random trains', () => {
    const kinds = new Map<string, number>()
    const wanted = ['none', 'states', 'still', 'limits', 'machines']
    // 50 of them, and more until each kind has come up
    for (let seed = 401; seed <= 450 || wanted.some((kind) => !kinds.has(kind)); seed++) {
      const kind = tried(read(randomTrain(seed)), `seed ${seed}`)
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
    }
    for (const kind of wanted) expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(0)
  })

  it('is found for any choice by a solver that has solved others', () => {
    const train = example('bolt-bound-gearbox')
    const holds = new HoldSolver(train, solver)
    for (const held of subsets(train)) {
      const index = new Set(train.bodies.flatMap(({ id }, b) => (held.includes(id) ? [b] : [])))
      expect(floorReason(holds, holds.free(choiceOf(train, index)))).toEqual(
        reasonOf(holding(train, held)),
      )
    }
  })
})
