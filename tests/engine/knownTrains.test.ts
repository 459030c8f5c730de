import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { PlanningRun } from '../../src/engine/planningRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { KnownTrains } from '../../src/worker/knownTrains'

const solver = await glpkSolver()

/** An example with another share of tolerance, read anew. */
function read(share: number) {
  const document = JSON.parse(readFileSync('examples/pump-and-motor.json', 'utf8')) as {
    plan: { share: number }
  }
  document.plan.share = share
  const train = readTrain(document)
  if (!train.ok) throw new Error('refused')
  return train
}

it('a train that is asked for again has the run it had, and the ones asked for longest ago are let go', () => {
  const trains = new KnownTrains((train, ready) => ({ run: new PlanningRun(train, ready) }))
  const run = (share: number) => trains.of(read(share), solver).run
  const first = run(0.7)
  expect(run(0.7)).toBe(first)
  expect(run(0.8)).not.toBe(first)
  expect(run(0.7).plan()).toBe(first.plan())
  // four are kept: the first was asked for last, so the second goes before it
  const second = run(0.8)
  expect(run(0.7)).toBe(first)
  for (const share of [0.5, 0.6, 0.9]) run(share)
  expect(run(0.7)).toBe(first)
  expect(run(0.8)).not.toBe(second)
})
