import { describe, expect, it } from 'vitest'
import { at, close, given, oneRow, pair, planOf, type Json, type Pair } from './pair'

/**
 * B on one row of two feet, so that it only rises and slides. Its line is read to 10 um each way; two shims of 10 um err
 * by 10 / root 2 together, a slide by 20 um: the offset is known to root (100 + 50) up and to root (100 + 400) sideways.
 */
const guarded = (plan: Json, found: [y: number, z: number], more: Pair = {}) =>
  planOf(
    pair({
      ...more,
      right: { feet: oneRow, ...more.right },
      found: [{ ...given(...found), u: 10 }],
      rest: { ...more.rest, plan },
    }),
  )

const rise = (answer: ReturnType<typeof planOf>) => at(answer.feet, 0).shim

describe('a guard, by hand', () => {
  it('box: 2 standard uncertainties of root 150 stay free of the limit, at every share', () => {
    const room = 2 * Math.sqrt(150)
    const whole = guarded({ guard: 2 }, [0, -300])
    expect(rise(whole)).toBeCloseTo(300 - (100 - room), 3)
    expect(whole.cost).toBeCloseTo(2 * (300 - (100 - room)), 3)
    // the room does not shrink with the share
    expect(rise(guarded({ guard: 2, share: 0.7 }, [0, -300]))).toBeCloseTo(300 - (70 - room), 3)
    expect(whole.guard).toBe(2)
    expect(whole.proof?.gap).toBeCloseTo(0, 2)
  })

  it('box: sideways the slide counts, and each way has its own room', () => {
    const answer = guarded({ guard: 1 }, [-300, -300])
    expect(rise(answer)).toBeCloseTo(200 + Math.sqrt(150), 3)
    expect(at(answer.feet, 0).side).toBeCloseTo(200 + Math.sqrt(500), 3)
  })

  it('round: the ellipse may touch the circle off the way that the value lies', () => {
    // slides to 40: half axes a^2 = 4 * 1700 sideways, b^2 = 4 * 150 up; the value d low stays.
    // (a cos t)^2 + (d + b sin t)^2 is largest at sin t = b d / (a^2 - b^2): a^2 + d^2 (1 + b^2 / (a^2 - b^2)) = 100^2
    const d = Math.sqrt((10_000 - 6800) / (1 + 600 / 6200))
    const round = { tolerance: { offset: 100, shape: 'round' } }
    const answer = guarded({ guard: 2, sure: { slide: 40 } }, [0, -300], { coupling: round })
    expect(d).toBeCloseTo(54.015, 3)
    expect(rise(answer)).toBeCloseTo(300 - d, 3)
    // along the value alone it would have been let to 100 - 2 root 150
    expect(rise(answer)).toBeGreaterThan(300 - (100 - 2 * Math.sqrt(150)) + 20)
  })

  it('floor: the share at which the room alone fits, above what the coupling itself then uses', () => {
    const answer = guarded({ guard: 2, share: 0.9 }, [0, -300])
    expect(answer.floor).toBeCloseTo((2 * Math.sqrt(500)) / 100, 6)
    expect(answer.worstShare).toBeCloseTo((90 - 2 * Math.sqrt(150)) / 100, 5)
  })

  it('standing still is enough only where the guarded checks are met', () => {
    const room = Math.sqrt(150)
    expect(guarded({ guard: 1 }, [0, 100 - room - 0.01]).status).toBe('in-tolerance')
    const over = guarded({ guard: 1 }, [0, 100 - room + 0.5])
    expect(over.status).toBe('planned')
    expect(rise(over)).toBeCloseTo(-0.5, 4)
    expect(over.standingShare).toBeCloseTo((100 - room + 0.5) / 100, 9)
  })

  it('the gap between the shaft ends: 0.1 mm unsure, along the train alone', () => {
    const axial = { found: 3.5, want: 3, tolerance: 0.4, u: 0.1 }
    const answer = guarded({ guard: 1.5 }, [0, 0], {
      right: { free: { axial: true } },
      coupling: { axial },
    })
    // 500 um too wide, 400 - 150 allowed
    expect(at(answer.feet, 0).axial).toBeCloseTo(-250, 3)
  })

  it('a body that is held brings no errors of work', () => {
    const left = { anchored: undefined, held: true, feet: oneRow.map((f) => ({ ...f, x: -f.x })) }
    const still = guarded({ guard: 1 }, [0, -300], { left })
    expect(rise(still)).toBeCloseTo(0, 9)
    expect(still.cost).toBeCloseTo(2 * (200 + Math.sqrt(150)), 3)
    const free = guarded({ guard: 1 }, [0, -300], { left: { ...left, held: false } })
    // the shims of A err by as much again
    expect(free.cost).toBeCloseTo(2 * (200 + Math.sqrt(200)), 3)
  })
})

describe('intervals of growth, by hand', () => {
  const states = [{ id: 'hot', name: 'hot' }]
  const growing = (plan: Json, point: Json, more: Pair = {}) =>
    guarded(plan, [0, -300], {
      ...more,
      right: { growth: { hot: [{ at: 1000, ...point }] } },
      rest: { states },
    })

  it('with worst, both ends are in: from 20 down to 40 up, 300 low', () => {
    const answer = growing({ worst: true }, { range: { rise: [-20, 40] } })
    // the low end is the worse one
    expect(rise(answer)).toBeCloseTo(300 - 100 + 20, 3)
    expect(answer.worst).toBe(true)
    expect(rise(growing({}, { range: { rise: [-20, 40] } }))).toBeCloseTo(300 - 100 - 10, 3)
  })

  it('with a guard as well, an interval counts once: by its width and not by its u', () => {
    // the motor's own growth is not entered: 20 um
    const room = 2 * Math.sqrt(150 + 400)
    const answer = growing({ worst: true, guard: 2 }, { range: { rise: [-20, 40] } })
    expect(rise(answer)).toBeCloseTo(300 - 100 + 20 + room, 3)
    // without worst it is a value of 10 with u 30 / root 3
    const middle = growing({ guard: 2 }, { range: { rise: [-20, 40] } })
    expect(rise(middle)).toBeCloseTo(300 - 100 - 10 + 2 * Math.sqrt(150 + 400 + 300), 3)
  })

  it('round: a rise and a side make a rectangle, whose corner must be in', () => {
    const coupling = { tolerance: { offset: 100, shape: 'round' } }
    const point = { range: { rise: [-20, 20], side: [-60, 60] } }
    const answer = growing({ worst: true }, point, { coupling })
    // the far corner lies at (60, d + 20)
    expect(rise(answer)).toBeCloseTo(300 - (Math.sqrt(100 ** 2 - 60 ** 2) - 20), 3)
  })

  it('a cold setting that is used stands in place of growth: its intervals change nothing', () => {
    const coupling = {
      setting: { offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 }, use: true, why: 'shown' },
    }
    const answer = growing({ worst: true }, { range: { rise: [-20, 40] } }, { coupling })
    expect(rise(answer)).toBeCloseTo(200, 3)
  })
})

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
    })
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
      'Whatever is fixed, Motor to Pump in cold cannot come under 111 % of tolerance; 70 % was asked for: 5 standard uncertainties come to 112 µm of offset, and 70 % of its limit is 70 µm: nothing is left for the machines, wherever they stand; only smaller uncertainties, a smaller guard or a wider tolerance can help.',
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
