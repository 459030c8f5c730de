import { describe, expect, it } from 'vitest'
import { sharesOf, worstShare } from '../../src/mechanics/misalignment/shares'
import { leastShare } from '../../src/engine/lp/leastShare'
import { solveRounds } from '../../src/engine/lp/rounds'
import { solvePlan } from '../../src/engine/plan/solvePlan'
import { buildProgram } from '../../src/engine/lp/rows/buildProgram'
import { firstCuts } from '../../src/engine/lp/cuts'
import { Partition } from '../../src/engine/lp/parts'
import { standingShare } from '../../src/engine/lp/standing'
import { stageOf } from '../../src/engine/lp/stage'
import { asFound } from '../../src/mechanics/readings/asFound'
import { prove } from '../../src/engine/proof/prove'
import { programUnit } from '../../src/engine/lp/program'
import type { Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomTrain } from '../second/randomTrain'
import { example, holding, read, subsets } from './choice'
import { firstOf } from '../counts'

const solver = await glpkSolver()

/** The contract's agreement between two right answers. */
const agreement = 2e-5

/** Floor, least cost and best share of a choice by the whole program at once, without any parts. */
function whole(train: Train) {
  const found = train.couplings.map(asFound)
  const program = buildProgram(train, found)
  const standing = worstShare(sharesOf(train, found))
  const { share } = train.plan
  const lowest = leastShare(program, { ask: 'floor' }, firstCuts(program), solver)
  if (lowest.kind !== 'optimal') throw new Error(lowest.why)
  const floor = Math.min(lowest.bound, standing)
  if (standing <= share + 1e-6 || floor > share + 1e-6) return { floor }
  const within = Math.max(share, floor * (1 + 1e-7) + 1e-9)
  const cost = solveRounds(
    program,
    stageOf(program, { ask: 'cost', share: within }),
    lowest.cuts,
    solver,
  )
  if (cost.kind !== 'optimal') throw new Error(cost.kind)
  const cap = cost.answer.objective * (1 + 9e-7)
  const best = leastShare(program, { ask: 'margin', share: within, cost: cap }, cost.cuts, solver)
  if (best.kind !== 'optimal') throw new Error(best.why)
  return { floor, cost: cost.answer.objective, best: best.bound }
}

const near = (value: number | undefined, wanted: number, what: string, least = 0) => {
  const apart = Math.abs((value ?? Infinity) - wanted)
  expect(apart, `${what}: ${value} for ${wanted}`).toBeLessThanOrEqual(agreement * wanted + least)
}

/** Compares the plan by parts with the whole program; answers how many parts there were. */
function compare(train: Train, what: string): { status: string; parts: number } {
  const found = train.couplings.map(asFound)
  const program = buildProgram(train, found)
  const standing = worstShare(sharesOf(train, found))
  const solved = solvePlan(train, program, standing, solver)
  const { floor, cost, best } = whole(train)
  if (solved.status === 'stopped') throw new Error(`${what}: ${solved.why}`)
  near(solved.floor, floor, `${what} floor`, 1e-7)
  expect(solved.status === 'planned', what).toBe(cost !== undefined)
  if (solved.status === 'planned') {
    const { objective } = solved.least.answer
    near(objective, cost ?? NaN, `${what} cost`, 1e-4)
    const lines = found.map(({ line }) => line)
    const bound = solved.least.bound * programUnit
    const proof = prove(train, lines, solved.motions, train.plan.share, bound)
    expect(proof.faults, what).toEqual([])
    near(proof.worstShare, best ?? NaN, `${what} worst share`, 1e-7)
  }
  return { status: solved.status, parts: new Partition(program).split().length }
}

describe('a plan put together from parts', () => {
  it.each(
    firstOf(['bolt-bound-gearbox', 'piped-compressor', 'base-bound-motor', 'skid-as-one'], 1),
  )('is that of the whole program for every choice of %s', (name) => {
    const train = example(name)
    const parts = subsets(train).map(
      (held) => compare(holding(train, held), `${name} holding ${held.join(' ')}`).parts,
    )
    expect(Math.max(...parts)).toBeGreaterThan(1)
  })

  it('is that of the whole program for random trains and choices', () => {
    const counts = new Map<string, number>()
    for (let seed = 501; seed <= 535; seed++) {
      const train = read(randomTrain(seed))
      const middle = train.bodies[Math.floor(train.machines.length / 2)]
      for (const held of [[], middle ? [middle.id] : []]) {
        const { status, parts } = compare(holding(train, held), `seed ${seed} ${held.join(' ')}`)
        const key = `${status}, ${parts > 1 ? 'parts' : 'whole'}`
        counts.set(key, (counts.get(key) ?? 0) + 1)
      }
    }
    for (const key of [
      'planned, parts',
      'planned, whole',
      'impossible, parts',
      'in-tolerance, parts',
    ])
      expect(counts.get(key) ?? 0, key).toBeGreaterThan(0)
  })
})

describe('a partition', () => {
  it('split with bodies that stay has the parts of the program built with them held', () => {
    for (let seed = 601; seed <= 625; seed++) {
      const train = holding(read(randomTrain(seed)), [])
      const found = train.couplings.map(asFound)
      const all = new Partition(buildProgram(train, found))
      for (const body of train.bodies) {
        const choice = holding(train, [body.id])
        const staying = new Set(choice.bodies.flatMap(({ held }, b) => (held ? [b] : [])))
        const free = (column: number) => {
          const meaning = all.program.columns[column]?.meaning
          return meaning?.part === 'motion' && !staying.has(meaning.body)
        }
        const own = new Partition(buildProgram(choice, found))
        const split = all.split(free).map((group) => all.partOf(group))
        const built = own.split().map((group) => own.partOf(group))
        expect(split.map(({ key, program }) => ({ key, program }))).toEqual(
          built.map(({ key, program }) => ({ key, program })),
        )
        const still = all.still(free)
        const circles = still.circles.flatMap((c) => all.program.circles[c] ?? [])
        const { program } = own
        const untouched = own.still()
        expect(standingShare(still.rows, circles)).toBe(
          standingShare(
            untouched.rows,
            untouched.circles.flatMap((c) => program.circles[c] ?? []),
          ),
        )
      }
    }
  })

  it('puts every motion in exactly one part, and every limit that one touches', () => {
    const train = holding(example('skid-as-one'), ['gear'])
    const partition = new Partition(buildProgram(train, train.couplings.map(asFound)))
    const groups = partition.split()
    const motions = groups.flatMap((group) => group.motions)
    expect(new Set(motions).size).toBe(motions.length)
    expect(motions).toHaveLength(partition.program.firstMove - 1)
    const parts = groups.map((group) => partition.partOf(group))
    for (const list of ['limits', 'circles', 'displacements'] as const) {
      const taken = parts.flatMap((part) => part[list])
      expect(new Set(taken).size).toBe(taken.length)
    }
  })
})
