import { expect, it } from 'vitest'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { at, close, pair, trainOf } from './pair'

/**
 * Planes at 0 and 200 mm, the middle at 100, axes 400 mm over the feet. The left machine's reference stands at -1500,
 * the right one's at 1500; the right one stands 250 mm over a skid whose reference is at 1000.
 */
const train = trainOf(
  pair({
    left: {
      anchored: undefined,
      held: true,
      feet: [-2000, -1000].map((x) => ({ id: `${x}`, x })),
    },
    right: { base: 250 },
    rest: {
      skids: [
        {
          id: 'S',
          name: 'Bedplate',
          carries: ['B'],
          feet: [500, 1500].map((x) => ({ id: `${x}`, x })),
        },
      ],
    },
  }),
)
const [left, right, skid] = [0, 1, 2]

const moved = (body: number, motion: Partial<Motion>) => {
  const motions: Motion[] = train.bodies.map(() => noMotion)
  motions[body] = { ...noMotion, ...motion }
  const { misalignment, gap } = at(couplingMotions(train, motions), 0)
  return [misalignment.y, misalignment.sy, misalignment.z, misalignment.sz, gap]
}
const near = (...values: number[]) => values.map((value) => close(value, 9))
const whole = { tx: 5, ty: 20, tz: 10, sy: 0.2, sz: 0.1, roll: 0.3 }

it('what the right machine does counts as it is, its gap at its own plane', () => {
  // arm 100 - 1500: y 20 - 0.2 * 1400 - 0.3 * 400; z 10 - 0.1 * 1400; gap 5 - 0.1 * 400
  expect(moved(right, whole)).toEqual(near(-380, 0.2, -130, 0.1, -35))
})

it('what the left machine does counts turned over', () => {
  // arm 100 + 1500: y 20 + 0.2 * 1600 - 0.3 * 400; z 10 + 0.1 * 1600; gap 5 - 0.1 * 400
  expect(moved(left, whole)).toEqual(near(-220, -0.2, -170, -0.1, 35))
})

it('what the skid does goes along with the machine it carries', () => {
  // arm 100 - 1000, 250 + 400 up: y 20 - 0.2 * 900 - 0.3 * 650; z 10 - 0.1 * 900; gap 5 - 0.1 * 650
  expect(moved(skid, whole)).toEqual(near(-355, 0.2, -80, 0.1, -60))
})

it('both move alike as one: nothing is changed', () => {
  const motions = [left, right].map(() => ({ ...whole, sy: 0, sz: 0 }))
  const { misalignment, gap } = at(couplingMotions(train, motions), 0)
  expect([misalignment.y, misalignment.sy, misalignment.z, misalignment.sz, gap]).toEqual(
    near(0, 0, 0, 0, 0),
  )
})

it('a body that no motion is given of stands', () => {
  const { misalignment, gap } = at(couplingMotions(train, []), 0)
  expect([misalignment, gap]).toEqual([{ y: 0, z: 0, sy: 0, sz: 0 }, 0])
})

it('a coupling that joins no machines is told by its name', () => {
  const lost = { ...train, couplings: train.couplings.map((one) => ({ ...one, right: 9 })) }
  expect(() => couplingMotions(lost, [])).toThrow(new RangeError('coupling c joins no machines'))
})
