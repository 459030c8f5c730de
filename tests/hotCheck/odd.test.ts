import { expect, it } from 'vitest'
import { withNumbers } from '../../src/document/numbers'
import { readTrain } from '../../src/document/readTrain'
import { hotCheckAnswers } from '../../src/engine/fieldwork/hotCheck/hotChecks'
import { hotChecksJson } from '../../src/json/hotCheckJson'
import { everyField } from '../entry/everyField'
import { Random } from '../second/random'

const edges = [0, 1e-9, 1e-6, 1, 3, 12, 1e3, 1e5, 1e6, -1, -50, -1e5]

/** Every number that is not finite, or not one, where one belongs. */
function odd(node: unknown, path = ''): string[] {
  if (typeof node === 'number') return Number.isFinite(node) ? [] : [`${path}: ${node}`]
  if (typeof node !== 'object' || node === null) return []
  return Object.entries(node).flatMap(([key, value]) => odd(value, `${path}.${key}`))
}

it('answers every hot check that is read, with numbers: at the edges of times, places and uncertainties', () => {
  const runs = process.env.HOLDFAST_LONG === '1' ? 5000 : 150
  const random = new Random(5)
  const counts = { told: 0, open: 0, refused: 0 }
  for (let run = 0; run < runs; run++) {
    const document = withNumbers(everyField(), ({ path, value }) =>
      path[0] === 'hotChecks' && random.next() < 0.06
        ? (edges[Math.floor(random.next() * edges.length)] ?? value)
        : value,
    )
    const read = readTrain(document)
    if (!read.ok) {
      counts.refused++
      continue
    }
    const answers = hotCheckAnswers(read)
    const [answer] = answers
    expect(answers).toHaveLength(1)
    expect(
      odd(hotChecksJson(answers, read.train.units)),
      JSON.stringify(document.hotChecks),
    ).toEqual([])
    expect(answer?.sentences.join(' ')).not.toMatch(/NaN|Infinity|undefined/)
    counts[answer?.trim.when === 'open' ? 'open' : 'told']++
  }
  expect(counts.told).toBeGreaterThan(runs / 10)
  expect(counts.refused).toBeGreaterThan(0)
})
