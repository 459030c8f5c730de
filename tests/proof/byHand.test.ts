import { describe, expect, it } from 'vitest'
import { sharesAfter } from '../../src/engine/proof/couplingsMet'
import { limitExcesses } from '../../src/engine/proof/limitsKept'
import { carried, type ClaimedMotion } from '../../src/engine/proof/moved'
import { moveRow, type Move } from '../../src/engine/proof/moves'
import type { Train } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf, type Json } from '../engine/pair'

const near = (...values: number[]) => values.map((value) => close(value, 9))
const still: ClaimedMotion = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }

/**
 * Planes at 0 and 200 mm, axes 400 mm over the feet, the right machine's reference at 1500. The right end of the left
 * machine goes 30 um toward 3 and 5 along, the left end of the right one 90 up and 25 along, all alike over x.
 */
const train = (coupling: Json): Train =>
  trainOf(
    pair({
      left: { growth: { hot: [{ at: 0, side: 30, axial: 5 }] } },
      right: { growth: { hot: [{ at: 0, rise: 90, axial: 25 }] } },
      found: [given(0, 0)],
      coupling: { tolerance: { offset: 1e4 }, ...coupling },
      rest: { states: [{ id: 'hot', name: 'Hot', tolerance: 2 }] },
    }),
  )
const line = { y: 40, sy: 0.5, z: 10, sz: 0.25 }
const shareOf = (read: Train, motion: Partial<ClaimedMotion> = {}) =>
  at(sharesAfter(read, [line], [still, { ...still, ...motion }]), 0).share

describe('what the proof finds a coupling to use', () => {
  it('of an offset: line, growth and moves at the middle, less the aim', () => {
    // sideways 40 - 30 + 300 - 20 = 290 of twice 100
    const aim = { hot: { offset: { y: 20 } } }
    expect(shareOf(train({ tolerance: { offset: 100 }, aim }), { ty: 300 })).toBeCloseTo(1.45, 9)
  })

  it('of an angle: slopes of line, moves and aim, each as it is', () => {
    // sideways 0.5 + 0.2 - 0.4 of twice 1; up and down 0.25
    const aim = { hot: { slope: { y: 0.4 } } }
    expect(shareOf(train({ tolerance: { angle: 1 }, aim }), { sy: 0.2 })).toBeCloseTo(0.15, 9)
  })

  it('of an angle that is larger up and down', () => {
    // 0.25 + 0.75 - 0.1 of twice 1
    const aim = { hot: { slope: { z: 0.1 } } }
    expect(shareOf(train({ tolerance: { angle: 1 }, aim }), { sz: 0.75 })).toBeCloseTo(0.45, 9)
  })

  it('of two planes: what lies at the other one, over the span, wherever along the train', () => {
    const read = train({ tolerance: { flex: 1 } })
    const far = read.couplings.map((one) => ({ ...one, p: 1000, q: 1200, mid: 1100 }))
    // up 10 + 0.25 * 100 + 90 at the right plane: 125 over 200; sideways 40 + 50 - 30 = 60; of twice 1
    expect(shareOf({ ...read, couplings: far })).toBeCloseTo(125 / 200 / 2, 9)
    // 160 more sideways: 220; an aim of 0.4 mrad takes 40 of it off
    expect(shareOf({ ...read, couplings: far }, { ty: 160 })).toBeCloseTo(220 / 200 / 2, 9)
    const aim = new Map([['hot', { y: 0, z: 0, sy: 0.4, sz: 0 }]])
    const aimed = far.map((one) => ({ ...one, aim }))
    expect(shareOf({ ...read, couplings: aimed }, { ty: 160 })).toBeCloseTo(180 / 200 / 2, 9)
    // pitched by -0.5 mrad about 1500 the left plane lies higher: 10 - 25 + 90 + 0.5 * 500, over the span at the right one
    expect(shareOf({ ...read, couplings: far }, { sz: -0.5 })).toBeCloseTo(325 / 200 / 2, 9)
  })

  it('of the gap: found, grown and moved, right less left, against what is wanted', () => {
    const axial = { found: 250.5, want: 250, tolerance: 1 }
    // 0.5 mm, 20 um of growth, 300 along and 0.1 mrad of pitch over 400 mm the other way: 0.78 of twice 1
    const share = shareOf(train({ axial }), { tx: 300, sz: 0.1, tz: 140 })
    expect(share).toBeCloseTo(0.39, 9)
  })

  it('asks for a line of every coupling', () => {
    expect(() => sharesAfter(train({}), [], [still, still])).toThrow(
      new RangeError('no line for coupling c'),
    )
  })
})

describe('limits as the proof finds them', () => {
  const foot = { id: '1', x: 1000, y: 300, hole: { clearance: 1000, x: 100, y: -200 } }
  const read = trainOf(pair({ right: { feet: [foot, { id: '2', x: 2000, y: 300 }] } }))
  const hole = (motion: Partial<ClaimedMotion>) =>
    limitExcesses(read, [still, { ...still, ...motion }])
      .filter((one) => one.is === 'foot' && one.limit === 'hole')
      .map(({ by }) => by)

  it('the centre of a hole goes along with its foot, along and aside', () => {
    const { x, y } = at(at(read.bodies, 1).feet, 0).hole ?? { x: NaN, y: NaN }
    const [along, aside] = [x, y]
    expect(hole({ tx: 300, ty: -500 })).toEqual(near(Math.hypot(along + 300, aside - 500) - 500))
  })

  it('ask for a motion of every body', () => {
    expect(() => limitExcesses(read, [still])).toThrow(new RangeError('no motion for B'))
    const point = { x: 0, y: 0, z: 0 }
    expect(() => carried(read, [still], 1, point)).toThrow(new RangeError('no motion for body 1'))
    const skids = [{ id: 'S', name: 'Bedplate', carries: ['B'], feet: [{ id: '1', x: 0 }] }]
    const riding = trainOf(pair({ right: { base: 250 }, rest: { skids } }))
    expect(() => carried(riding, [still, still], 1, point)).toThrow(
      new RangeError('no motion for the skid of B'),
    )
  })
})

describe('moves that are paid for', () => {
  const weights = { shim: 2, side: 3, axial: 5 }
  const found = trainOf(pair({ right: { free: { axial: true } }, rest: { plan: { weights } } }))
  const read = { ...found, bodies: found.bodies.map((body) => ({ ...body, weight: 4 })) }
  /** What a move is made of (none, or mm), in the order of the motions, and what it costs. */
  const row = (move: Move) => {
    const paid = moveRow(read, move)
    const parts = [...(paid?.side.terms.values() ?? [])].map((part) => part.near())
    return paid && [parts.filter((part) => part !== 0), paid.cost.near()]
  }

  it('are a shim by rise and pitch, a slide by slide and yaw, and the way along, each by the weights of move and body', () => {
    // feet at 1000 and 2000, the reference at 1500
    expect(row({ is: 'shim', body: 1, index: 0 })).toEqual([[1, -500], 8])
    expect(row({ is: 'slide', body: 1, index: 1 })).toEqual([[1, 500], 12])
    expect(row({ is: 'axial', body: 1, index: 0 })).toEqual([[1], 20])
  })

  it('are none of a body, a foot, a row or another way along that is not there', () => {
    expect(row({ is: 'shim', body: 9, index: 0 })).toBeUndefined()
    expect(row({ is: 'shim', body: 1, index: 9 })).toBeUndefined()
    expect(row({ is: 'slide', body: 1, index: 9 })).toBeUndefined()
    expect(row({ is: 'axial', body: 1, index: 1 })).toBeUndefined()
  })
})
