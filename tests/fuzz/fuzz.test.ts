import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { Random } from '../second/random'
import { bases } from './bases'
import { judged } from './judged'
import { mutatedText } from './mutated'

const long = process.env.HOLDFAST_LONG === '1'
const count = Number(process.env.HOLDFAST_FUZZ ?? (long ? 100000 : 2000))
/** So many documents are planned with every stage, one in so many. */
const wholeOf = long ? 10 : 100
const start = Number(process.env.HOLDFAST_SEED ?? 1)

/**
 * Damaged, foreign and absurd documents: every one is refused with reasons, or checked and planned; nothing is
 * thrown, no number is none, nothing told steers a terminal, and none takes more calls of the solver than its budget.
 * A seed that fails can be run alone: `mutatedText(text, new Random(seed))`.
 */
test('documents that once escaped do so no more', async () => {
  const solver = await glpkSolver()
  const texts = bases(false)
  // growth beyond all numbers in a refusal; a circle of next to nothing in what a line is unsure by
  for (const seed of [500_262, 503_786, 507_219]) {
    const text = mutatedText(texts[seed % texts.length] ?? '', new Random(seed))
    expect(judged(text, solver, false).faults, `seed ${seed}`).toEqual([])
  }
})

test(`${count} mutated documents escape nowhere`, { timeout: 24 * 3_600_000 }, async () => {
  const solver = await glpkSolver()
  const texts = bases(long)
  const faults: string[] = []
  const statuses = new Map<string, number>()
  for (let seed = start; seed < start + count; seed++) {
    const text = mutatedText(texts[seed % texts.length] ?? '', new Random(seed))
    const { status, faults: found } = judged(text, solver, seed % wholeOf === 0)
    statuses.set(status, (statuses.get(status) ?? 0) + 1)
    faults.push(...found.map((fault) => `seed ${seed}, ${fault}`))
    if (faults.length > 20) break
  }
  expect(faults).toEqual([])
  // the mutator reaches every kind of answer: it does not just make files that are refused
  for (const status of ['refused', 'planned', 'impossible'])
    expect((statuses.get(status) ?? 0) / count, status).toBeGreaterThan(0.03)
  expect(statuses.has('in-tolerance')).toBe(true)
  console.log(`mutated documents ${JSON.stringify(Object.fromEntries(statuses))}`)
})
