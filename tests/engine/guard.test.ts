import { describe, expect, it } from 'vitest'
import { guarded, rise } from './guarded'
import { at, oneRow, type Json, type Pair } from './pair'

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
