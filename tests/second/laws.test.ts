import { expect, test } from 'vitest'
import { counted } from '../counts'
import { asFirst, compare } from './disagreements'
import { converted } from './metric'
import { randomTrain } from './randomTrain'
import { solveSecond } from './solve'
import { fineFactor, lengthFactor, type Train } from './train'
import { rewritten, same, turned } from './pointsOfView'

const seeds = Array.from({ length: counted(20, 40) }, (_, i) => 5000 + i)

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
  const kinds = new Set<string>()
  for (const seed of seeds) {
    const train = randomTrain(seed)
    const before = await solveSecond(train)
    const after = asFirst(await solveSecond(change(train)))
    const cost = (after.cost ?? NaN) / scale(train)
    expect(compare({ ...after, cost }, before).disagreements, `seed ${seed}`).toEqual([])
    kinds.add(before.status)
  }
  expect(kinds.size).toBe(3)
})

test('holding one more body is never cheaper and never lowers the floor', async () => {
  let dearer = 0
  for (const seed of seeds) {
    const train = randomTrain(seed)
    const before = await solveSecond(train)
    const body = train.machines.find((m) => !m.held && m.anchored === undefined)
    if (!body) continue
    body.held = true
    const after = await solveSecond(train)
    expect(after.floor).toBeGreaterThanOrEqual(before.floor * (1 - 1e-6) - 1e-9)
    if (before.status === 'planned' && after.status === 'planned') {
      expect(after.cost).toBeGreaterThanOrEqual(before.cost * (1 - 1e-5) - 1e-9)
      if (after.cost > before.cost * 1.01) dearer += 1
    }
  }
  expect(dearer).toBeGreaterThan(0)
})
