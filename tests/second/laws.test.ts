import { expect, test } from 'vitest'
import { counted } from '../counts'
import { asFirst, compare } from './disagreements'
import { converted } from './metric'
import { randomTrain } from './randomTrain'
import { solveSecond, type SecondAnswer } from './solve'
import { fineFactor, lengthFactor, type Train } from './train'
import { rewritten, same, turned } from './pointsOfView'

/** The answers to so many random trains, and to more until each of the three has been given. */
const answers = new Map<number, SecondAnswer>()
const statuses = new Set<string>()
for (let seed = 5000; answers.size < counted(20, 40) || statuses.size < 3; seed++) {
  const answer = await solveSecond(randomTrain(seed))
  answers.set(seed, answer)
  statuses.add(answer.status)
}

/** A cost (um) that the solver leaves where every weight is nought. */
const nothing = 1e-6

/** The same train shifted along x (mm or in). */
const shifted = (train: Train, by: number): Train => rewritten(train, { ...same, x: (v) => v + by })

/** The same train in inches and mils. */
function inInches(train: Train): Train {
  const length = lengthFactor(train) / 25.4
  const fine = fineFactor(train) / 25.4
  const scaled = converted(train, { length: (v) => v * length, fine: (v) => v * fine })
  return { ...scaled, units: { ...train.units, length: 'in', fine: 'mil' } }
}

test.each([
  ['turned half round', turned, () => 1],
  ['shifted along the train', (t: Train) => shifted(t, 1234.5), () => 1],
  ['in inches and mils', inInches, (t: Train) => fineFactor(t) / 25.4],
] as const)('a train %s has the same answer', async (_, change, scale) => {
  for (const [seed, before] of answers) {
    const train = randomTrain(seed)
    const after = asFirst(await solveSecond(change(train)))
    const cost = (after.cost ?? NaN) / scale(train)
    expect(compare({ ...after, cost }, before).disagreements, `seed ${seed}`).toEqual([])
  }
})

test('holding one more body is never cheaper and never lowers the floor', async () => {
  let dearer = 0
  for (const [seed, before] of answers) {
    const train = randomTrain(seed)
    const body = train.machines.find((m) => !m.held && m.anchored === undefined)
    if (!body) continue
    body.held = true
    const after = await solveSecond(train)
    expect(after.floor).toBeGreaterThanOrEqual(before.floor * (1 - 1e-6) - 1e-9)
    if (before.status === 'planned' && after.status === 'planned') {
      expect(after.cost).toBeGreaterThanOrEqual(before.cost * (1 - 1e-5) - nothing)
      if (after.cost > before.cost * 1.01) dearer += 1
    }
  }
  expect(dearer).toBeGreaterThan(0)
})
