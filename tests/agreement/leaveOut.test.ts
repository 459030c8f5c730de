import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { compare, type FirstAnswer } from '../second/disagreements'
import { Undetermined } from '../second/model'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import { terms, type Term } from '../second/terms'
import { asFirst, planned } from './firstAnswer'

const mostSeeds = 600
const answers = new Map<number, FirstAnswer>()

/** What the comparison says of one train when the second builder leaves a term out. */
async function without(term: Term, seed: number, first: FirstAnswer): Promise<string[]> {
  try {
    return compare(first, await solveSecond(randomTrain(seed), term)).disagreements
  } catch (error) {
    // readings that do not hold the four numbers without the term say nothing about it
    if (error instanceof Undetermined) return []
    throw error
  }
}

test('leaving any one term out of the second builder makes it disagree', async () => {
  const solver = await glpkSolver()
  const shown: string[] = []
  const unnoticed: string[] = []
  for (const term of terms) {
    let [seed, seen]: [number, string[]] = [0, []]
    while (seen.length === 0 && seed < mostSeeds) {
      seed += 1
      const train = randomTrain(seed)
      const first = answers.get(seed) ?? asFirst(planned(train, solver))
      answers.set(seed, first)
      // only a train on which the whole contract agrees can blame the missing term
      const whole = compare(first, await solveSecond(train))
      if (whole.disagreements.length === 0) seen = await without(term, seed, first)
    }
    if (seen.length === 0) unnoticed.push(term)
    else shown.push(`  ${term.padEnd(34)} train ${String(seed).padStart(3)}: ${seen[0] ?? ''}`)
  }
  console.log(`leaving out one term disagrees on\n${shown.join('\n')}`)
  expect(unnoticed).toEqual([])
}, 600_000)
