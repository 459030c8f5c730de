import { describe, expect, it } from 'vitest'
import {
  angleAtSpeed,
  keepsOff,
  runsIn,
  slidingSpeed,
  toothAngle,
  toothMeshes,
  withoutSides,
} from '../../src/mechanics/misalignment/gearTeeth'
import type { GearCoupling, ToothSide } from '../../src/mechanics/gearCoupling'
import type { Coupling, Train } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf } from '../engine/pair'

const near = (...values: number[]) => values.map((value) => close(value, 12))

/** A pair whose coupling has gear teeth, or none. */
const train = trainOf(
  pair({ found: [given(0, 0)], coupling: { tolerance: { flex: 1 } }, rest: { states: [] } }),
)
const geared = (...gears: (Partial<GearCoupling> | undefined)[]): Train => ({
  ...train,
  couplings: gears.map((gear): Coupling => {
    const { gear: _, ...coupling } = at(train.couplings, 0)
    return gear ? { ...coupling, gear: { sides: [], ...gear } } : coupling
  }),
})
const side: ToothSide = { state: 'hot', place: 'left plane', way: 'z', sign: -1 }

describe('meshes of teeth', () => {
  it('stand at both planes, their angles by the span alone', () => {
    expect(toothMeshes({ p: 1000, q: 1200 })).toEqual([
      { place: 'left plane', offset: 1 / 200, slope: 0.5, lever: 200 },
      { place: 'right plane', offset: -1 / 200, slope: 0.5, lever: 200 },
    ])
  })

  it('are one at a coupling that bends at one place: its slope', () => {
    expect(toothMeshes({ p: 70, q: 70 })).toEqual([
      { place: 'angle', offset: 0, slope: 1, lever: 1000 },
    ])
  })

  it('turn by the offset at the other plane over the span', () => {
    const [left, right] = toothMeshes({ p: 0, q: 200 })
    if (!left || !right) throw new Error('no meshes')
    // 30 and -20 at the middle with 0.2 and -0.1 mrad: (50, -30) at 200 mm, (10, -10) at 0
    const d = { y: 30, sy: 0.2, z: -20, sz: -0.1 }
    const angles = [left, right].map((mesh) => toothAngle(mesh, d))
    expect(angles.map(({ y, z }) => [y, z])).toEqual([near(0.25, -0.15), near(-0.05, 0.05)])
  })
})

it('an angle slides as fast as its speed says, there and back', () => {
  // pi * 200 mm * 50 turns a second * 0.001
  expect(slidingSpeed(1, 200, 3000)).toBeCloseTo(31.41592653589793, 12)
  expect(angleAtSpeed(31.41592653589793, 200, 3000)).toBeCloseTo(1, 12)
})

it('teeth run in the states that were named, in all where none were, and nowhere without teeth', () => {
  const of = (gear?: Partial<GearCoupling>) => at(geared(gear).couplings, 0)
  expect([runsIn(of({ states: ['hot'] }), 'hot'), runsIn(of({ states: ['hot'] }), 'cold')]).toEqual(
    [true, false],
  )
  expect(runsIn(of({}), 'cold')).toBe(true)
  expect(runsIn(of(), 'cold')).toBe(false)
})

it('a train is kept off dead straight where any of its gears is', () => {
  expect(keepsOff(geared(undefined, { least: 0.3 }))).toBe(true)
  expect(keepsOff(geared(undefined, {}))).toBe(false)
})

describe('a train without the sides that were chosen', () => {
  it('has none at its gears, and all else as it was', () => {
    const was = geared({ sides: [side] }, undefined, { sides: [] })
    const { couplings } = withoutSides(was)
    expect(couplings.map(({ gear }) => gear?.sides)).toEqual([[], undefined, []])
    expect(couplings.map(({ id }) => id)).toEqual(was.couplings.map(({ id }) => id))
    expect(couplings[1]).toBe(was.couplings[1])
    expect(at(was.couplings, 0).gear?.sides).toEqual([side])
  })

  it('is itself where none were', () => {
    const was = geared({ sides: [] }, undefined, {})
    expect(withoutSides(was)).toBe(was)
  })
})
