import { expect, test } from 'vitest'
import { conflictsOf, contradictionOf } from '../../src/engine/infeasible/conflict/conflict'
import { applyRemedy } from '../../src/engine/infeasible/remedies/change'
import { PlanRun } from '../../src/engine/plan/planRun'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { floorReason } from '../../src/engine/infeasible/floor/floorReason'
import { choiceNow } from '../../src/engine/studies/holds/choice'
import { membersJson } from '../../src/json/reasonsJson'
import type { TrainDocument } from '../../src/document/schema'
import { asFound } from '../../src/mechanics/readings/asFound'
import { glpkSolver } from '../../src/solvers/glpk'
import { farMore, loosened } from '../conflict/moreEntered'
import { planOf, reasonsOf } from '../remedies/bench'
import type { Train } from '../second/train'
import { guardedTrain, readOf, withIntervals } from './guardedTrains'

const solver = await glpkSolver()
const long = process.env.HOLDFAST_LONG === '1'
const patience = 1_200_000

/** A train with a guard, some with intervals that a plan must hold for; many are impossible only by that. */
function kept(seed: number): TrainDocument {
  const guard = 0.5 + (seed % 3) * 0.5
  const document = guardedTrain(seed, { times: 3, plan: { guard } })
  if (seed % 3 !== 0 || withIntervals(document, seed, 4).length === 0) return document
  return { ...document, plan: { ...document.plan, worst: true } }
}

const bare = (document: TrainDocument): TrainDocument => ({
  ...document,
  plan: { ...document.plan, guard: 0, worst: false },
})

/** Of what is far more than needed, in the fine unit of a file: no file takes over a metre. */
const far = { um: 0.02, mm: 1e-3, mil: 1e-2 } as const

/** The worst share that any move reaches, what is kept free counted. */
function floorOf(document: unknown): number {
  const { floor } = new PlanRun(readOf(document as TrainDocument), solver).solved()
  return floor ?? NaN
}

test(
  'what one limit alone must give is enough with the guard, and no less is',
  () => {
    const trains = long ? 100 : 5
    const wrong: string[] = []
    const counts = { trains: 0, byGuard: 0, enough: 0, never: 0, nothingLeft: 0 }
    for (let seed = 300; counts.trains < trains; seed++) {
      const document = kept(seed)
      const train = readOf(document)
      const found = train.couplings.map(asFound)
      const [first] = conflictsOf(contradictionOf(train, found, solver), solver, 1)
      if (!first) continue
      counts.trains += 1
      const { share } = train.plan
      if (floorOf(bare(document)) <= share) counts.byGuard += 1
      if (first.sentence.includes('nothing is left')) counts.nothingLeft += 1
      for (const member of membersJson(first.members, train.units)) {
        // a pack of less than nothing is refused
        if (member.limit === 'held' || member.limit === 'minimum pack') continue
        const by = (one: typeof member, times: number) =>
          floorOf(loosened(document as unknown as Train, one, times))
        if (member.alone === null) {
          counts.never += 1
          if (
            member.sentence.includes('would not be enough') &&
            !(by(farMore(member), far[train.units.fine]) > share)
          )
            wrong.push(`seed ${seed}: ${member.sentence} and with far more it is`)
          continue
        }
        counts.enough += 1
        const [whole, less] = [by(member, 1), by(member, 0.98)]
        if (!(whole <= share * (1 + 2e-5)))
          wrong.push(
            `seed ${seed}: ${member.where} with ${member.alone} more: ${whole} of ${share}`,
          )
        if (!member.limit.endsWith('key') && !(less > share))
          wrong.push(`seed ${seed}: ${member.where} needs less than ${member.alone}`)
      }
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
    expect(counts.byGuard).toBeGreaterThan(trains / 6)
    expect(counts.nothingLeft).toBeGreaterThan(0)
    expect(counts.enough).toBeGreaterThan(trains / 4)
  },
  patience,
)

test(
  'every remedy that is said to work has the plan that it says, with the guard',
  () => {
    const trains = long ? 60 : 2
    const wrong: string[] = []
    const counts = { trains: 0, helped: 0, remedies: 0, shares: 0, holds: 0, guards: 0 }
    // until a guard is among what is proposed
    for (let seed = 300; counts.trains < trains || counts.guards === 0; seed++) {
      const document = kept(seed)
      if (planOf(document).status !== 'impossible') continue
      counts.trains += 1
      const answer = reasonsOf(document)
      const working = answer.remedies.filter(({ solves }) => solves)
      if (working.length > 0) counts.helped += 1
      for (const remedy of working) {
        counts.remedies += 1
        if (remedy.kind === 'share') counts.shares += 1
        if (remedy.kind === 'hold') counts.holds += 1
        const after = planOf(applyRemedy(answer.document, remedy))
        if (after.status !== 'planned' && after.status !== 'in-tolerance')
          wrong.push(`seed ${seed}, ${remedy.kind}: ${after.status}`)
        else if (Math.abs((after.cost ?? NaN) - (remedy.cost ?? NaN)) > 1e-6)
          wrong.push(`seed ${seed}, ${remedy.kind}: ${after.cost} for ${remedy.cost}`)
        const guard = document.plan?.guard ?? NaN
        if (remedy.kind !== 'guard') {
          if (after.guard !== guard) wrong.push(`seed ${seed}: ${after.guard}`)
          continue
        }
        counts.guards += 1
        const more = { ...document, plan: { ...document.plan, guard: (after.guard ?? 0) + 0.1 } }
        if (more.plan.guard < guard && planOf(more).status !== 'impossible')
          wrong.push(`seed ${seed}: ${remedy.sentence} and ${more.plan.guard} would do`)
      }
    }
    console.log(JSON.stringify(counts))
    expect(wrong).toEqual([])
    expect(counts.helped).toBeGreaterThan(trains / 3)
    expect(counts.guards).toBeGreaterThan(0)
  },
  patience,
)

test(
  'why the floor is where it is: the floor of the plan, and by what is kept free where that alone is as much',
  () => {
    const trains = long ? 100 : 5
    const wrong: string[] = []
    const kinds: Record<string, number> = {}
    for (let seed = 300; seed < 300 + trains; seed++) {
      const document = kept(seed)
      const train = readOf(document)
      const holds = new HoldSolver(train, solver)
      const now = choiceNow(train)
      const reason = floorReason(holds.setting(now), holds.free(now))
      const floor = floorOf(document)
      if (!reason) {
        wrong.push(`seed ${seed}: no reason`)
        continue
      }
      kinds[reason.kind] = (kinds[reason.kind] ?? 0) + 1
      if (!(Math.abs(reason.floor - floor) <= 1e-5 * floor + 1e-6))
        wrong.push(`seed ${seed}: ${reason.floor} for ${floor}`)
      if (reason.kind === 'none') continue
      const says = reason.sentence.includes('standard uncertaint')
      if (!says) wrong.push(`seed ${seed}: ${reason.sentence}`)
      // perfectly aligned, its couplings would need no less
      if (reason.kind === 'kept' && !reason.sentence.includes('nothing is left'))
        wrong.push(`seed ${seed}: ${reason.sentence}`)
    }
    console.log(JSON.stringify(kinds))
    expect(wrong).toEqual([])
    expect(kinds.kept ?? 0).toBeGreaterThan(0)
    expect(Object.keys(kinds).length).toBeGreaterThan(2)
  },
  patience,
)
