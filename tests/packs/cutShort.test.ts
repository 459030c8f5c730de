import { answerJson } from '../../src/json/answerJson'
import { describe, expect, it } from 'vitest'
import type { RoundedAnswer } from '../../src/engine/rounding/answer'
import { roundedAnswer } from '../../src/engine/rounding/roundedAnswer'
import { mustPlan, planRead } from '../planned'
import { asFound } from '../../src/mechanics/readings/asFound'
import type { Solver } from '../../src/engine/lp/solver'
import { motionsFrom } from '../../src/engine/fieldwork/steps/pose'
import { solver, trainOf } from '../engine/pair'
import { contractFaults } from './contract'
import type { Shimmed } from './shimmed'
import { isWhole } from '../counts'
import { kept } from '../kept/kept'

/** A solver that has run out of time after so many programs, and how many it was asked. */
function ending(after: number): { solver: Solver; asked: () => number } {
  let asked = 0
  return {
    asked: () => asked,
    solver: {
      name: solver.name,
      solve: (program, seconds, warm) =>
        ++asked > after
          ? { kind: 'stopped', why: 'out of time' }
          : solver.solve(program, seconds, warm),
    },
  }
}

/** Trains whose roundings take some search. */
const searched = ['rounding-search-1', 'rounding-search-2']
/** So many places along the search to end it at. */
const places = 14

describe('a search that is ended before its end', () => {
  for (const name of searched)
    it(`gives what it has, with a bound that holds, or says that nothing was found: ${name}`, () => {
      const file = kept(name) as Shimmed
      const train = trainOf(file)
      const answer = mustPlan(planRead(train, solver, { prices: false }))
      const motions = motionsFrom(train, answer.bodies)
      const found = train.couplings.map(asFound)
      const rounded = (by: Solver): RoundedAnswer => {
        const { share } = train.plan
        const plan = roundedAnswer(train, found, answer, motions, share, by)
        if (!plan) throw new Error('not rounded')
        return plan
      }
      const whole = ending(Infinity)
      const best = rounded(whole.solver)
      if (best.status !== 'rounded') throw new Error(best.status)
      const { cost } = best
      expect(best.gap).toBeLessThan(1e-5 * cost)
      const seen: Record<string, number> = {}
      const count = (what: string) => {
        seen[what] = (seen[what] ?? 0) + 1
      }
      for (let place = 0; place < places; place++) {
        // more of them near the start, where the search has less
        const after = Math.floor(whole.asked() * (place / places) ** 2)
        const cut = rounded(ending(after).solver)
        const at = `${after} of ${whole.asked()}`
        if (cut.status === 'no rounding') {
          count('nothing')
          expect(cut.why[0], at).toMatch(/were found that keep every limit/)
          expect(cut.why[1], at).toContain('until the work allowed was used up')
          continue
        }
        const { cost: had, bound, gap } = cut
        expect(cut.status, at).toBe('rounded')
        expect(had, at).toBeGreaterThan(cost * (1 - 1e-5))
        expect(bound, at).toBeGreaterThanOrEqual(0)
        expect(bound, at).toBeLessThan(cost * (1 + 1e-5))
        expect(gap, at).toBeCloseTo(had - bound, 6)
        const open = gap > 1e-4 * had && gap > 1
        count(open ? 'open' : 'proven')
        if (bound === 0) count('no bound')
        expect(cut.sentence.includes('The search was ended'), `${at} ${cut.sentence}`).toBe(open)
        expect(cut.sentence, at).not.toMatch(/Infinity|NaN/)
      }
      expect(seen).toMatchObject({
        nothing: expect.any(Number) as number,
        open: expect.any(Number) as number,
        'no bound': expect.any(Number) as number,
        proven: expect.any(Number) as number,
      })
    })

  it.runIf(isWhole)(
    'is begun again from a dive where it found nothing: seven machines on 19 stands',
    () => {
      const file = kept('rounding-of-19-stands') as Shimmed
      const train = trainOf(file)
      const answer = mustPlan(planRead(train, solver, { prices: false, packs: true }))
      const { rounded } = answer
      if (rounded?.status !== 'rounded') throw new Error(`is ${rounded?.status ?? 'not rounded'}`)
      expect(contractFaults(file, answerJson(answer, train))).toEqual([])
      const { cost, bound } = rounded
      expect(bound).toBeLessThan(cost)
      expect(bound).toBeGreaterThan(0.9 * cost)
      expect(rounded.sentence).toContain('The search was ended')
    },
  )
})
