import { readFileSync, readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { workedOut } from '../second/sure/covariance'
import { sampled } from '../second/sure/sampled'
import type { Spread } from '../second/sure/spreads'
import type { Train } from '../second/train'
import { plannedSure, type Planned } from './sureAnswer'
import { randomSureTrain } from '../second/randomSure'
import { counted, firstOf } from '../counts'

const trains = counted(1, 100, 2)
const firstSeed = Number(process.env.HOLDFAST_SEED ?? 1)
const draws = 40_000

// points: four standard deviations of the planner's 10,000 draws are 2
const apart = { whole: 0.02, part: 0.025 }

/** The examples of the project, asked how sure they are. */
function examples(): [name: string, train: Train][] {
  const folder = new URL('../../examples/', import.meta.url)
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => {
      const train = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Train
      return [name, { ...train, plan: { ...train.plan, sure: {} } }]
    })
}

const randoms = (count: number): [name: string, train: Train][] =>
  Array.from({ length: count }, (_, i) => [`seed ${firstSeed + i}`, randomSureTrain(firstSeed + i)])

/** How many draws two chances come from. */
interface Draws {
  theirs: number
  ours: number
}

/** Differences of chances, and how many standard deviations of both samplings they are. */
class Differences {
  readonly texts: string[] = []
  readonly deviations: number[] = []
  between = 0
  count = 0

  constructor(private readonly train: string) {}

  compare(what: string, theirs: number | undefined, ours: number, most: number, of: Draws): void {
    this.count += 1
    if (theirs === undefined) {
      this.texts.push(`${this.train}: ${what} is missing, the sampler has ${ours}`)
      return
    }
    if (ours > 0.1 && ours < 0.95) this.between += 1
    const middle = (theirs + ours) / 2
    const deviation = Math.sqrt(middle * (1 - middle) * (1 / of.theirs + 1 / of.ours))
    if (middle > 0.02 && middle < 0.98) this.deviations.push((theirs - ours) / deviation)
    if (!(Math.abs(theirs - ours) <= most))
      this.texts.push(`${this.train}: ${what} is ${theirs}, the sampler has ${ours}`)
  }
}

/** Where two spreads of a check differ by more than a part of them. */
function spreadsApart(theirs: Spread | undefined, ours: Spread, most: number): string[] {
  return (['y', 'z', 'x'] as const).flatMap((way) => {
    const [a, b] = [theirs?.[way], ours[way]]
    if (a === undefined && b === undefined) return []
    if (a !== undefined && b !== undefined && Math.abs(a - b) <= most * b + 1e-9) return []
    return [`${ours.what} ${way}: ${a ?? 'nothing'} against ${b ?? 'nothing'}`]
  })
}

/** Where the spreads of a plan are not those worked out from the contract's page. */
function spreadsWrong(train: Train, { motions, sure }: Planned): string[] {
  return workedOut(train, motions).flatMap(({ coupling, state, u }) => {
    const theirs = sure?.couplings?.find((c) => c.coupling === coupling && c.state === state)
    const told = theirs?.u.find(({ what }) => what === u.what)
    return spreadsApart(told, u, 1e-4).map((text) => `${coupling} in ${state}: ${text}`)
  })
}

/** Compares everything that `sure` says of chances with the sampler. */
function compared(name: string, train: Train, { status, motions, sure }: Planned): Differences {
  const differences = new Differences(name)
  const ours = sampled(train, motions, { draws, seed: 77 })
  if (sure === undefined) {
    differences.texts.push(`${name}: ${status}, but no word of how sure`)
    return differences
  }
  const of = { theirs: sure.draws, ours: draws }
  differences.compare('asFound', sure.asFound.chance, ours.asFound, apart.whole, of)
  if (status === 'impossible') return differences
  for (const text of spreadsWrong(train, { status, motions, sure }))
    differences.texts.push(`${name}: ${text}, worked out`)
  differences.compare('all', sure.all?.chance, ours.all, apart.whole, of)
  differences.compare('reread', sure.reread?.chance, ours.reread, apart.whole, of)
  for (const { coupling, state, chance } of ours.couplings) {
    const theirs = sure.couplings?.find((c) => c.coupling === coupling && c.state === state)
    differences.compare(`${coupling} in ${state}`, theirs?.chance, chance, apart.part, of)
  }
  if (ours.bolts !== undefined)
    differences.compare('bolts', sure.bolts?.chance, ours.bolts, apart.part, of)
  else if (sure.bolts) differences.texts.push(`${name}: bolts though none slides`)
  for (const [what, factor, theirs] of [
    ['half', 0.5, sure.half],
    ['double', 2, sure.double],
  ] as const) {
    const asked = { draws: draws / 2, seed: 78, factor: () => factor }
    const { all } = sampled(train, motions, asked)
    differences.compare(what, theirs, all, apart.part, { ...of, ours: asked.draws })
  }
  return differences
}

test(`the chances of ${trains} random trains and of examples are those of the sampler`, async () => {
  const solver = await glpkSolver()
  const wrong: string[] = []
  const deviations: number[] = []
  const counts: Record<string, number> = { compared: 0, between: 0 }
  for (const [name, train] of [...randoms(trains), ...firstOf(examples(), 1, 7)]) {
    const planned = plannedSure(train, solver)
    const differences = compared(name, train, planned)
    wrong.push(...differences.texts)
    deviations.push(...differences.deviations)
    counts[planned.status] = (counts[planned.status] ?? 0) + 1
    counts.compared = (counts.compared ?? 0) + differences.count
    counts.between = (counts.between ?? 0) + differences.between
  }
  const spread = Math.sqrt(deviations.reduce((sum, d) => sum + d * d, 0) / deviations.length)
  console.log(
    `chances ${JSON.stringify(counts)}; they differ by ${spread.toFixed(2)} standard deviations of the samplings`,
  )
  expect(wrong).toEqual([])
  // a difference that no single chance shows would show in all of them together
  expect(spread).toBeLessThan(1.5)
  expect(counts.between).toBeGreaterThan(trains)
}, 1_800_000)

test('the uncertainty of every check is that of the sampler', async () => {
  const solver = await glpkSolver()
  // four standard deviations of a sampled standard deviation, or the 1 % of the contract
  const [count, samples, most] = [
    counted(1, 20, 2),
    counted(100_000, 1_000_000),
    counted(0.009, 0.01),
  ]
  const wrong: string[] = []
  let seen = 0
  for (let seed = firstSeed; seen < count; seed++) {
    const train = randomSureTrain(seed)
    const { status, motions, sure } = plannedSure(train, solver)
    if (status !== 'planned') continue
    seen += 1
    const ours = sampled(train, motions, { draws: samples, seed })
    for (const { coupling, state, u } of ours.couplings) {
      const same = (of: { coupling: string; state: string }) =>
        of.coupling === coupling && of.state === state
      const theirs = sure?.couplings?.find(same)?.u ?? []
      for (const spread of u) {
        const told = theirs.find(({ what }) => what === spread.what)
        const at = `seed ${seed} ${coupling} in ${state}`
        for (const text of spreadsApart(told, spread, most)) wrong.push(`${at}: ${text}`)
      }
    }
  }
  expect(wrong).toEqual([])
}, 1_800_000)
