import { expect, it } from 'vitest'
import { counted } from '../counts'
import { Random } from '../second/random'
import { couplingIds, idOf, meaningOf, randomLine, type Cause } from './jobs'

// A machine at an end of the train has one coupling: what reads wrong there is that coupling's bracket or the machine,
// and no other coupling tells which. It may stand accused beside the bracket, never in its place.

const start = Number(process.env['HOLDFAST_SEED'] ?? 1)
const jobs = counted(60, 2000, 250)

it(`a machine at an end is never accused by two couplings, on ${jobs} random layouts of 2 to 6 machines`, () => {
  const counts = { told: 0, accused: 0, alone: 0 }
  const wrong: string[] = []
  for (let seed = start; seed < start + jobs; seed++) {
    const random = new Random(seed)
    const count = 2 + Math.floor(random.between(0, 5))
    const train = randomLine(random, count)
    const left = random.chance(0.5)
    const [end, coupling] = left ? [0, 0] : [count - 1, count - 2]
    const by = (random.chance(0.5) ? 1 : -1) * random.between(60, 150)
    const cause: Cause = random.chance(0.5)
      ? { sag: { coupling, by } }
      : { bumped: { body: idOf(end), by: 3 * by } }
    const { kind, words, causes } = meaningOf(random, cause, train, train)
    if (/both (its |the )?couplings|couplings (of|on both)|two couplings/i.test(words))
      wrong.push(`seed ${seed}: ${words}`)
    if (!cause.sag || kind !== 'causes') continue
    counts.told += 1
    const named = causes.filter(({ body }) => body === idOf(end))
    const bracket = causes.some(
      (one) => one.kind === 'bracket' && one.coupling === couplingIds[coupling],
    )
    if (named.length > 0) counts.accused += 1
    if (named.length > 0 && !bracket) counts.alone += 1
  }
  console.log(counts)
  expect(wrong).toEqual([])
  expect(counts.told).toBeGreaterThan(jobs / 5)
  // 19 of 20 by the odds that are kept
  expect(counts.alone).toBeLessThanOrEqual(Math.max(2, 0.08 * counts.told))
}, 3_600_000)
