import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { compare } from '../second/disagreements'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import { asFirst, judged, planned } from './firstAnswer'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 2000 : 40
const firstSeed = Number(process.env.HOLDFAST_SEED ?? 1)

/** Limits that must bind in at least 3 % of the trains, so that agreeing on them means something. */
const mustBind = [
  'pack min',
  'pack max',
  'lift',
  'hole',
  'reserve',
  'tilt',
  'restraint axial',
  'restraint side',
  'restraint rise',
  'keyed foot',
  'axial gap',
  'flex',
  'offset',
  'angle',
  'round',
  'box',
]

function count(counts: Map<string, number>, what: string): void {
  counts.set(what, (counts.get(what) ?? 0) + 1)
}

function table(counts: Map<string, number>): string {
  const rows = [...counts].sort(([a], [b]) => a.localeCompare(b))
  return rows.map(([what, n]) => `  ${what.padEnd(18)} ${String(n).padStart(5)}`).join('\n')
}

test(
  `the planner and the second builder agree on ${trains} random trains at least`,
  async () => {
    const solver = await glpkSolver()
    const statuses = new Map<string, number>()
    const binding = new Map<string, number>()
    const disagreements: string[] = []
    // few trains need not have every limit bind: more are asked until each has
    const few = () => !long && mustBind.some((kind) => !binding.has(kind))
    let seed = firstSeed
    for (; seed < firstSeed + trains || few(); seed++) {
      const train = randomTrain(seed)
      const second = await solveSecond(train)
      const first = planned(train, solver)
      let comparison = compare(asFirst(first), second)
      if (comparison.disagreements.length > 0 && second.hasCircles) {
        comparison = compare(asFirst(first), second, await solveSecond(train, { loose: true }))
        if (comparison.disagreements.length === 0) count(statuses, 'within a circle')
      }
      const all = [...comparison.disagreements, ...judged(train, first)]
      for (const text of all) disagreements.push(`seed ${seed}: ${text}`)
      if (comparison.borderline) count(statuses, 'borderline')
      if (comparison.sameBand) count(statuses, 'same band')
      if (second.hasCircles) count(statuses, 'with circles')
      count(statuses, second.status)
      for (const kind of second.binding) count(binding, kind)
    }
    console.log(`${seed - firstSeed} trains\n${table(statuses)}\nwhat binds\n${table(binding)}`)
    expect(disagreements).toEqual([])
    const least = trains * (long ? 0.03 : 0.01)
    for (const kind of mustBind) {
      expect(binding.get(kind) ?? 0, `${kind} binds too seldom`).toBeGreaterThanOrEqual(least)
    }
    for (const status of ['planned', 'in-tolerance', 'impossible']) {
      expect(statuses.get(status) ?? 0, `${status} comes too seldom`).toBeGreaterThan(trains / 20)
    }
    // what the comparison has to excuse must stay rare
    for (const excuse of ['borderline', 'within a circle'])
      expect(statuses.get(excuse) ?? 0, excuse).toBeLessThanOrEqual(Math.max(4, trains / 100))
  },
  long ? 1_800_000 : 600_000,
)
