import { expect, it } from 'vitest'
import { randomTrain } from '../second/randomTrain'
import type { Train } from '../second/train'
import { counted } from '../counts'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'

const solver = await glpkSolver()

/** The train without the growth points that do not count; their machines and states stay. */
const bare = (train: Train): Train => ({
  ...train,
  machines: train.machines.map((machine) => {
    const growth = Object.entries(machine.growth ?? {}).flatMap(([state, points]) => {
      const counted = points.filter(({ use }) => use !== false)
      return counted.length > 0 ? [[state, counted] as const] : []
    })
    return { ...machine, growth: Object.fromEntries(growth) }
  }),
})

/** Everything that is answered, but for what is said of the points that do not count. */
const answerOf = (train: Train): string => {
  const answer = planTrain({ ...train, plan: { ...train.plan, sure: { draws: 400 } } }, solver)
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  return JSON.stringify({ ...answer, findings: [] })
}

it('growth points that do not count change no answer, byte for byte', () => {
  const seeds = Array.from({ length: 60 }, (_, i) => 7000 + i)
  const having = seeds
    .map(randomTrain)
    .filter((train) => JSON.stringify(train) !== JSON.stringify(bare(train)))
    // the smallest first: chances along the trade-off of a long train take their time
    .sort((a, b) => JSON.stringify(a).length - JSON.stringify(b).length)
  expect(having.length).toBeGreaterThan(5)
  for (const train of having.slice(0, counted(2, 8)))
    expect(answerOf(train), train.name).toBe(answerOf(bare(train)))
})
