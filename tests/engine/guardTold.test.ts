import { describe, expect, it } from 'vitest'
import { planText } from '../../src/text/planText'
import { guarded } from './guarded'
import { answerOf, at, close, given, oneRow, pair, planOf, trainOf, type Json } from './pair'

describe('what is told of a check with a guard', () => {
  const check = (plan: Json, found: [y: number, z: number]) =>
    at(at(guarded(plan, found).couplings, 0).asFound.checks, 0).verdict

  it('nothing without one', () => {
    const { couplings, guard } = guarded({}, [0, 20])
    expect(check({}, [0, 20])).toBeUndefined()
    expect(guard).toBeUndefined()
    expect(JSON.stringify(couplings)).not.toContain('verdict')
  })

  it('of the full limit, whatever the share: in, out, or not shown', () => {
    const room = 2 * Math.sqrt(150)
    const plan = { guard: 2, share: 0.9 }
    expect(check(plan, [0, 99 - room])).toBe('in')
    expect(check(plan, [0, 101 - room])).toBe('not shown')
    expect(check(plan, [0, 99 + room])).toBe('not shown')
    expect(check(plan, [0, -101 - room])).toBe('out')
    const { couplings } = guarded(plan, [0, -300])
    expect(at(at(couplings, 0).checks, 0)).toEqual({
      what: 'offset',
      y: 0,
      z: close(room - 90, 3),
      limit: 100,
      share: close((90 - room) / 100, 5),
      verdict: 'in',
      // a slide is less sure than a shim: 20 and 10 um beside a mean of two readings of 10
      kept: { y: close(2 * Math.sqrt(500), 5), z: close(room, 5) },
    })
  })
})

it('of the train as found with what is kept free, as in the floor; without a guard nothing', () => {
  const room = 2 * Math.sqrt(150)
  const { standingShare, standingKept, floor } = guarded({ guard: 2 }, [0, -300])
  expect(standingShare).toBeCloseTo(3, 9)
  expect(standingKept).toBeCloseTo((300 + room) / 100, 6)
  // a pump that may be moved anywhere comes to what is kept free sideways, where that is most, and no less
  expect(floor).toBeCloseTo((2 * Math.sqrt(500)) / 100, 5)
  expect(guarded({}, [0, -300]).standingKept).toBeUndefined()
})

describe('the plan as text', () => {
  const document = (z: number, plan: Json) =>
    pair({
      right: { feet: oneRow },
      found: [{ ...given(0, z), u: 10 }],
      rest: { plan },
    })
  const text = (z: number, plan: Json) =>
    planText(trainOf(document(z, plan)), answerOf(document(z, plan))).replace(/\s+/g, ' ')

  it('says what is kept free, that share and guard both reserve, and what each coupling shows', () => {
    const guardedText = text(-300, { guard: 1.6, share: 0.7 })
    expect(guardedText).toContain('Kept free of every limit: 1.6 standard uncertainties.')
    expect(guardedText).toContain(
      '70 % of tolerance is asked for and 1.6 standard uncertainties are kept free of it as well',
    )
    expect(guardedText).toContain('50 of 100 µm offset, pump low; shown to be in')
    expect(guardedText).toContain('300 of 100 µm offset, pump low; shown to be out')
    expect(text(-105, { guard: 1.6 })).toContain('pump low; not shown to be in')
  })

  it('says nothing of it without a guard', () => {
    expect(text(-300, { share: 0.7 })).not.toMatch(/shown to be|kept free|Kept free/)
  })
})

describe('case D1: a tolerance of 2.0 with a guard of 1.645 standard uncertainties', () => {
  // constructed, after the decision rule of JCGM 106:2012, 8.3: in up to 2 - 1.645 u, out from 2 + 1.645 u on
  it.each([
    [1.4, 0.3, 'in'],
    [1.6, 0.3, 'not shown'],
    [2.6, 0.3, 'out'],
    [1.9, 0.05, 'in'],
  ])('%s known to %s is %s', (z, u, verdict) => {
    const answer = planOf(
      pair({
        right: { feet: oneRow },
        coupling: { tolerance: { offset: 2 } },
        found: [{ ...given(0, z), u }],
        rest: {
          units: { length: 'mm', fine: 'mil' },
          plan: { guard: 1.645, sure: { shim: 0, slide: 0 } },
        },
      }),
    )
    expect(at(at(answer.couplings, 0).asFound.checks, 0).verdict).toBe(verdict)
  })
})

describe('a guard that leaves nothing', () => {
  const answer = guarded({ guard: 5, share: 0.7 }, [0, -300])

  it('is impossible, whatever moves', () => {
    expect(answer.status).toBe('impossible')
    expect(answer.floor).toBeCloseTo((5 * Math.sqrt(500)) / 100, 6)
  })

  it('says which check, by how much, and what could help', () => {
    expect(answer.conflictSentence).toBe(
      'Whatever is fixed, Motor to Pump in cold cannot come within the 70 % of tolerance asked for: 5 standard uncertainties come to 112 µm of offset, and 70 % of its limit is 70 µm: nothing is left for the machines, wherever they stand; only smaller uncertainties, a smaller guard or a wider tolerance can help.',
    )
  })

  it('tells two amounts that lie a hair apart in as many digits as that takes, neither rounded up', () => {
    const near = guarded({ guard: 70.02 / Math.sqrt(500), share: 0.7 }, [0, -300])
    expect(near.conflictSentence).toContain(
      'come to 70.02 µm of offset, and 70 % of its limit is 70 µm',
    )
  })

  it('proposes the largest smaller guard in tenths: 3.1 root 500 is 69.3 of 70', () => {
    const guard = answer.remedies?.find(({ kind }) => kind === 'guard')
    expect(guard?.solves).toBe(true)
    expect(guard?.change).toEqual([{ at: 'plan.guard', from: 5, to: 3.1 }])
    expect(guard?.sentence).toContain(
      'Keep 3.1 standard uncertainties free of every limit instead of 5.',
    )
  })

  it('where a machine let go would help, its own errors of work are kept free then too', () => {
    const found: [number, number] = [0, -300]
    // held, the pump has no errors of work: the readings alone, 10 um each way
    const still = guarded({ guard: 1 }, found, { right: { held: true } })
    expect(still.floor).toBeCloseTo(3.1, 6)
    const hold = still.remedies?.find(({ kind }) => kind === 'hold')
    expect(hold?.solves).toBe(true)
    expect(hold?.cost).toBeCloseTo(2 * (200 + Math.sqrt(150)), 3)
    // 4.8 root 500 is more than 100, though 4.8 times the readings' 10 is not
    const less = guarded({ guard: 4.8 }, found, { right: { held: true } })
    const tried = less.remedies?.find(({ kind }) => kind === 'hold')
    expect(tried?.solves).toBe(false)
    expect(tried?.floor).toBeCloseTo((4.8 * Math.sqrt(500)) / 100, 6)
  })
})
