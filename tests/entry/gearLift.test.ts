import { describe, expect, it } from 'vitest'
import {
  gearDriveOf,
  gearLiftWhy,
  liftsByEnd,
  shaftsApart,
  withGearLift,
  type GearEntered,
} from '../../src/document/edits/gearLiftEdits'
import { readTrain } from '../../src/document/readTrain'
import type { GrowthPointDocument, TrainDocument } from '../../src/document/schema'
import { gearSaid } from '../../src/language/gearWords'
import { gearLift } from '../../src/mechanics/gearLift'
import { growthOf, lineValueAt } from '../../src/mechanics/growth'

const units = { length: 'in', fine: 'mil', temperature: 'F' } as const

/** A gear whose right shaft lies 20 in toward 9 o'clock of the left one, in a train of two machines. */
const train = (points?: GrowthPointDocument[]): TrainDocument => ({
  format: 'holdfast-train',
  version: 1,
  name: 'gear',
  units,
  clock: { seenFrom: 'left' },
  sides: { three: 'toward the wall', nine: 'toward the door' },
  machines: [
    { id: 'm', name: 'Motor', axis: { z: 20 }, feet: [], anchored: 'dowelled' },
    {
      id: 'g',
      name: 'Gear',
      axis: { left: { z: 20 }, right: { y: -20, z: 20 } },
      feet: [
        { id: '1', x: 10 },
        { id: '2', x: 30 },
      ],
      ...(points && { growth: { hot: points } }),
    },
  ],
  couplings: [
    {
      id: 'c',
      left: { machine: 'm', plane: 0 },
      right: { machine: 'g', plane: 5 },
      tolerance: { offset: 2, angle: 0.5 },
      found: [{ kind: 'line', at: 0, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }],
    },
  ],
  states: [{ id: 'hot', name: 'Hot' }],
})

// 5000 hp at 1800 rpm over a pitch diameter of 20 in: 17 507 lb along the pitch circles
const entered: GearEntered = {
  power: 5000,
  speed: 1800,
  diameter: 20,
  pressureAngle: 20,
  helix: 0,
  massLeft: 400,
  massRight: 1500,
  clearanceLeft: 6,
  clearanceRight: 6,
  filmLeft: 1,
  filmRight: 1,
}
const turning = { drives: 'left', turns: 'clockwise', apart: { y: -20, z: 0 } } as const

function lift(from: 'left' | 'right' = 'left') {
  const asks = gearDriveOf(entered, { ...turning, drives: from }, units)
  if ('lacks' in asks) throw new Error(asks.lacks.join())
  const found = gearLift(asks.drive)
  if (!found) throw new Error('no answer')
  return { drive: asks.drive, found, ends: liftsByEnd(found, from) }
}

/** Rise and side (mil) of both axes at x (in), and the points they come from. */
function grown(document: TrainDocument, x: number) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const gear = read.train.machines[1]
  if (!gear) throw new Error('no gear')
  return (['left', 'right'] as const).map((axis) => {
    const { rise, side } = growthOf(gear, 'hot', axis)
    return [rise, side].map((line) => lineValueAt(line, x * 25.4) / 25.4)
  })
}

describe('the lift of a gear', () => {
  it('is asked for in the units of the document, and says what it lacks', () => {
    const { found, drive } = lift()
    expect(found.tangential / 4.4482216152605).toBeCloseTo(17_507, 0)
    expect(drive.driving.clearance).toBeCloseTo(152.4, 9)
    expect(drive.driven.mass).toBeCloseTo(1500 * 0.45359237, 9)
    expect(gearDriveOf({ ...entered, filmLeft: undefined }, turning, units)).toEqual({
      lacks: ['oil film of the left bearings'],
    })
  })

  it('knows which shaft lies where, and turns round with the one that drives', () => {
    const gear = train().machines[1]
    expect(gear && shaftsApart(gear)).toEqual({ y: -20, z: 0 })
    expect(shaftsApart({ id: 'x', name: 'X', axis: { z: 1 }, feet: [] })).toBeUndefined()
    // the left shaft turns clockwise with the other at its 9 o'clock: its teeth go up there and lift the other
    expect(lift('left').ends.right.mesh.z).toBeGreaterThan(0)
    // the right one drives clockwise, the left one at its 3 o'clock: its teeth go down there
    expect(lift('right').ends.left.mesh.z).toBeLessThan(0)
    expect(lift('right').ends.right.mesh.z).toBeGreaterThan(0)
  })

  it('says which way each shaft goes and why, with hours, sides and units', () => {
    const { drive, found } = lift()
    const said = gearSaid(train(), units, drive.toward, found, {
      driving: 'the left shaft',
      driven: 'the right shaft',
    })
    expect(said.mesh).toBe(
      "the left shaft turns clockwise: its teeth pass the right shaft, which lies at its 9 o'clock, and push it up; they are pushed down themselves, 17500 lb along the pitch circles and 6370 lb apart",
    )
    // 17 507 up less 1 500 of weight, 6 372 toward 9 o'clock: 21.7 degrees from the top
    expect(said.driven).toBe(
      'the right shaft turns counter-clockwise. The teeth push it toward half past 11, and it weighs 1500 lb: together 17200 lb press it toward half past 11 of its bearings, and from the bottom it goes 4.9 mil up and 0.7 mil toward the door',
    )
    expect(said.driving).toContain('1.1 mil up and 0.7 mil toward the wall')
  })

  it('says sideways where shafts lie one above the other, the way in which the teeth really go', () => {
    const above = { y: 0, z: 20 }
    const said = (pressureAngle: number) => {
      const turning = { drives: 'left' as const, turns: 'clockwise' as const, apart: above }
      const drive = gearDriveOf({ ...entered, pressureAngle }, turning, units)
      if (!('drive' in drive)) throw new Error('no drive')
      const lifted = gearLift(drive.drive)
      if (!lifted) throw new Error('no lift')
      const names = { driving: 'the lower', driven: 'the upper' }
      return gearSaid(train(), units, drive.drive.toward, lifted, names).mesh
    }
    // clockwise, the teeth at the top go toward 3 o'clock
    for (const angle of [0, 20])
      expect(said(angle)).toContain(
        "and push it toward 3 o'clock; they are pushed toward 9 o'clock themselves",
      )
  })

  it('gives no answer where sizes leave what a number can hold', () => {
    const { drive } = lift()
    expect(gearLift({ ...drive, power: 1e308, speed: 1e-5 })).toBeUndefined()
  })

  it('becomes a point of each axis where nothing was entered, with what it was worked out from', () => {
    const why = gearLiftWhy(entered, turning, units)
    const next = withGearLift(train(), 1, 'hot', lift().ends, why)
    expect(next.machines[1]?.growth?.['hot']).toEqual([
      { at: 20, axis: 'left', source: 'given', rise: 1.12, side: 0.67, why },
      { at: 20, axis: 'right', source: 'given', rise: 4.86, side: -0.74, why },
    ])
    expect(why).toBe(
      'gear lift: 5000 hp, 1800 rpm, pitch diameter 20 in, pressure angle 20 °, helix 0 °, left shaft drives, clockwise, mass 400 and 1500 lb, clearance 6 and 6 mil, film 1 and 1 mil',
    )
    expect(next.machines[0]).toEqual(train().machines[0])
  })

  it('adds to what grows there, along the whole line, and leaves what does not count', () => {
    const heat = { height: 18, expansion: 5.9, from: 70, to: 140 }
    const points: GrowthPointDocument[] = [
      { at: 10, heat, why: 'cast iron' },
      { at: 30, range: { rise: [6, 10] } },
      { at: 30, axis: 'right', side: 2 },
      { at: 10, rise: 99, use: false },
    ]
    const { ends } = lift()
    const [before, after] = [
      train(points),
      withGearLift(train(points), 1, 'hot', ends, 'gear'),
    ].map((document) => [0, 40].map((x) => grown(document, x)))
    for (const [i] of [0, 40].entries())
      for (const [k, axis] of (['left', 'right'] as const).entries()) {
        const [rise = NaN, side = NaN] = before?.[i]?.[k] ?? []
        const [risen, moved] = after?.[i]?.[k] ?? []
        expect(risen).toBeCloseTo(rise + ends[axis].rise / 25.4, 2)
        expect(moved).toBeCloseTo(side + ends[axis].side / 25.4, 2)
      }
    const kept = withGearLift(train(points), 1, 'hot', ends, 'gear').machines[1]?.growth?.['hot']
    expect(kept?.at(-1)).toEqual({ at: 10, rise: 99, use: false })
    expect(kept?.[0]).toMatchObject({ axis: 'left', heat, why: 'cast iron; gear' })
  })
})
