import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { kept } from '../kept/kept'
import { randomTrain } from '../second/randomTrain'
import type { Train } from '../second/train'
import { fineOf, plan, worth } from '../laws/bench'
import { relaxed } from './relaxed'

const long = process.env.HOLDFAST_LONG === '1'
const example = (file: string) =>
  JSON.parse(readFileSync(new URL(`../../examples/${file}.json`, import.meta.url), 'utf8')) as Train

const trains: [name: string, train: Train][] = [
  ...['bolt-bound-gearbox', 'piped-compressor', 'base-bound-motor', 'pump-and-motor'].map(
    (file): [string, Train] => [file, example(file)],
  ),
  // of a row that is at its minimum one foot gives alone, and both together more
  ['one foot of a row', kept('one-foot-of-a-row-gives')],
  ...Array.from({ length: long ? 400 : 20 }, (_, i): [string, Train] => [
    `random train ${8010 + i}`,
    randomTrain(8010 + i),
  ]),
]

/** Relaxation tried where a price holds without end (fine units at most; smaller in larger units). */
const endless = 1

it(
  'a price is what half of its room saves, when the train is planned again with that much more',
  () => {
    const tried = new Map<string, number>()
    for (const [name, train] of trains) {
      const answer = plan(train, { prices: true })
      const cost = (answer.cost ?? 0) * fineOf(train)
      const binding = answer.binding ?? []
      for (const limit of binding) {
        const room = (limit.upTo ?? 2 * endless) / 2
        const promised = limit.price * room * fineOf(train)
        // costs agree to 2e-5: a smaller saving could not be told
        if (promised < 2e-3 * cost) continue
        const other = relaxed(train, limit, room)
        if (!other) continue
        const saved = cost - worth(other).cost
        const words = `${name}: ${limit.limit}, ${limit.where}, ${limit.price} per ${limit.unit}`
        expect(saved, words).toBeGreaterThan(0.98 * promised)
        // a tolerance stands for both planes, all states and both ways, and may save more than one of them
        if (limit.part.coupling === undefined) expect(saved, words).toBeLessThan(1.02 * promised)
        tried.set(limit.limit, (tried.get(limit.limit) ?? 0) + 1)
      }
    }
    for (const kind of ['minimum pack', 'maximum pack', 'hole', 'restraint', 'offset', 'angle'])
      expect(tried.get(kind) ?? 0, kind).toBeGreaterThan(0)
  },
  long ? 1_800_000 : 600_000,
)
