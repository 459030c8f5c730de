import { expect, it } from 'vitest'
import type { AnswerJson } from '../../src/json/answerJson'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import { statesOf, type ReadingSet, type Train } from '../second/train'
import {
  differences,
  fineOf,
  near,
  original,
  patience,
  plan,
  relative,
  seeds,
  small,
  Tally,
} from './bench'
import { grownOnLine } from './commonLine'

it(
  'a line common to all axes of all machines changes nothing',
  () => {
    const tally = new Tally()
    for (const seed of seeds(20, 24)) {
      const { train, answer } = original(seed)
      if (!train.states) continue
      const random = new Random(seed)
      const lines = Object.fromEntries(
        statesOf(train)
          .filter(() => random.chance(0.7))
          .map(({ id }) => [
            id,
            {
              rise: random.about(300),
              side: random.about(300),
              riseSlope: random.about(0.2),
              sideSlope: random.about(0.2),
              axial: random.about(500),
            },
          ]),
      )
      const after = plan(grownOnLine(train, lines))
      const fine = { before: fineOf(train), after: 1 }
      expect(differences(answer, after, fine), `seed ${seed}`).toEqual([])
      if (Object.keys(lines).length > 0) tally.add(after.status)
    }
    for (const status of ['planned', 'in-tolerance', 'impossible'])
      expect(tally.of(status), status).toBeGreaterThan(0)
  },
  patience,
)

it('a line on one machine alone does change something', () => {
  const line = { rise: 300, side: -200, riseSlope: 0.1, sideSlope: 0.2, axial: 0 }
  // where a cold setting is used at the first machine its growth does not count
  const counts = ({ states, couplings }: Train) => states && couplings[0]?.setting?.use !== true
  const changed = seeds(20, 24)
    .filter((seed) => counts(original(seed).train))
    .slice(0, 10)
    .filter((seed) => {
      const { train, answer } = original(seed)
      const state = train.states?.[0]?.id ?? ''
      const grown = grownOnLine(train, { [state]: line })
      const one = grownOnLine(train, {
        [state]: { rise: 0, side: 0, riseSlope: 0, sideSlope: 0, axial: 0 },
      })
      const machines = grown.machines.map((machine, i) =>
        i === 0 ? machine : (one.machines[i] ?? machine),
      )
      const fine = { before: fineOf(train), after: 1 }
      return differences(answer, plan({ ...grown, machines }), fine).length > 0
    })
  expect(changed.length).toBe(10)
})

it(
  'twice the weights cost twice as much, for the same floor and share',
  () => {
    let dear = 0
    for (const seed of seeds(20, 24)) {
      const { train, answer } = original(seed)
      const { shim = 1, side = 1, axial = 1 } = train.plan?.weights ?? {}
      const weights = { shim: 2 * shim, side: 2 * side, axial: 2 * axial }
      const after = plan({ ...train, plan: { ...train.plan, weights } })
      const fine = { before: 2 * fineOf(train), after: fineOf(train) }
      expect(differences(answer, after, fine), `seed ${seed}`).toEqual([])
      if ((after.cost ?? 0) > 0) dear++
    }
    expect(dear).toBeGreaterThan(4)
  },
  patience,
)

it(
  'the same file gives the same JSON byte for byte, whatever the solver did before',
  async () => {
    const [used, fresh] = [await glpkSolver(), await glpkSolver()]
    const some = (status: string) =>
      seeds(20, 24)
        .filter((seed) => original(seed).answer.status === status)
        .slice(0, status === 'impossible' ? 2 : 4)
    const chosen = ['planned', 'in-tolerance', 'impossible'].map(some)
    expect(chosen.map((list) => list.length > 1)).toEqual([true, true, true])
    const answers = chosen
      .flat()
      .map((seed) => [seed, JSON.stringify(planTrain(randomTrain(seed), used))] as const)
    for (const [seed, answer] of answers.reverse())
      expect(JSON.stringify(planTrain(randomTrain(seed), fresh)), `seed ${seed}`).toBe(answer)
  },
  patience,
)

it(
  'a planned train reads as expected afterwards: it needs no move and keeps the promised share',
  () => {
    let planned = 0
    let measured = 0
    for (const seed of seeds(20, 24)) {
      const { train, answer } = original(seed)
      if (answer.status === 'impossible') continue
      const after = plan(carriedOut(train, answer))
      expect(after.status, `seed ${seed}`).toBe('in-tolerance')
      expect(after.cost).toBe(0)
      const [kept, promised] = [after.worstShare ?? NaN, answer.worstShare ?? NaN]
      expect(near(kept, promised, small.share, relative), `seed ${seed}`).toBe(true)
      for (const { residual, coupling } of after.asFound) {
        expect(residual, `seed ${seed}, ${coupling}`).toBeLessThan(1e-6)
        measured++
      }
      if (answer.status === 'planned') planned++
    }
    expect(planned).toBeGreaterThan(5)
    expect(measured).toBeGreaterThan(planned)
  },
  patience,
)

/** The train as the plan promises it: readings as expected, gaps as they will be, machines not moved again. */
function carriedOut(train: Train, answer: AnswerJson): Train {
  return {
    ...train,
    couplings: train.couplings.map((coupling) => ({
      ...coupling,
      axial: coupling.axial && {
        ...coupling.axial,
        found: coupling.axial.found + gapOpened(answer, coupling.id),
      },
      found: coupling.found.map((set, i): ReadingSet => {
        const shown = answer.expected?.find((e) => e.coupling === coupling.id && e.set === i)
        if (!shown) throw new Error(`nothing expected of set ${i} of ${coupling.id}`)
        if ('readings' in shown)
          return set.kind === 'line' ? set : { ...set, readings: shown.readings }
        // only what the set gave is read again
        const { offset, slope } = shown
        return set.kind === 'line'
          ? { ...set, ...(set.offset && { offset }), ...(set.slope && { slope }) }
          : set
      }),
    })),
  }
}

/** How much the moves open the gap of a coupling (document lengths), from its checks in any state. */
function gapOpened(answer: AnswerJson, coupling: string): number {
  const row = answer.couplings?.find((c) => c.coupling === coupling)
  const gap = (checks: NonNullable<typeof row>['checks'] | undefined) =>
    checks?.find(({ what }) => what === 'gap')?.x ?? NaN
  return gap(row?.checks) - gap(row?.asFound.checks)
}
