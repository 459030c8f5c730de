import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { asFirst as asFirstOfSecond, compare, type FirstAnswer } from '../second/disagreements'
import { Undetermined } from '../second/model'
import { randomTrain } from '../second/randomTrain'
import { solveSecond, type SecondAnswer } from '../second/solve'
import { terms, type Term } from '../second/terms'
import type { Train } from '../second/train'
import { asFirst, planned } from './firstAnswer'
import { isWhole } from '../counts'

const mostSeeds = 600

/** The second answer without one term; undefined where the readings then hold nothing. */
async function without(train: Train, term: Term): Promise<SecondAnswer | undefined> {
  try {
    return await solveSecond(train, { leaveOut: term })
  } catch (error) {
    if (error instanceof Undetermined) return undefined
    throw error
  }
}

test.runIf(isWhole)(
  'leaving any one term out of the second builder makes it disagree',
  async () => {
    const solver = await glpkSolver()
    const firsts = new Map<number, FirstAnswer>()
    const wholes = new Map<number, SecondAnswer>()

    /** How the planner disagrees with the builder without the term; the whole one must agree. */
    async function shownOn(seed: number, term: Term): Promise<string | undefined> {
      const train = randomTrain(seed)
      const whole = wholes.get(seed) ?? (await solveSecond(train))
      wholes.set(seed, whole)
      const less = await without(train, term)
      // the planner is slower than the second builder: it is asked only where the term matters
      if (!less || compare(asFirstOfSecond(whole), less).disagreements.length === 0)
        return undefined
      const first = firsts.get(seed) ?? asFirst(planned(train, solver))
      firsts.set(seed, first)
      if (compare(first, whole).disagreements.length > 0) return undefined
      return compare(first, less).disagreements[0]
    }

    const shown: string[] = []
    const unnoticed: string[] = []
    for (const term of terms) {
      let [seed, seen]: [number, string | undefined] = [0, undefined]
      while (seen === undefined && seed < mostSeeds) {
        seed += 1
        seen = await shownOn(seed, term)
      }
      if (seen === undefined) unnoticed.push(term)
      else shown.push(`  ${term.padEnd(34)} train ${String(seed).padStart(3)}: ${seen}`)
    }
    console.log(`leaving out one term disagrees on\n${shown.join('\n')}`)
    expect(unnoticed).toEqual([])
  },
  600_000,
)
