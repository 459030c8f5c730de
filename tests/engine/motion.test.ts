import { describe, expect, it } from 'vitest'
import { carriers, displaced, noMotion, type Motion } from '../../src/mechanics/motion'
import { carried, claimedFootMove } from '../../src/engine/proof/moved'
import { close, at, pair, trainOf } from './pair'

const names = ['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const

/** B on a skid whose feet stand at 500 and 1500; B's feet plane 250 mm above the skid's. */
const train = trainOf(
  pair({
    right: { base: 250 },
    rest: {
      skids: [
        {
          id: 'S',
          name: 'Bedplate',
          carries: ['B'],
          feet: [
            { id: '1', x: 500 },
            { id: '2', x: 1500 },
          ],
        },
      ],
    },
  }),
)
const [machine, skid] = [1, 2]
/** Reference points: B's at x = 1500, the skid's at 1000; this point is 600 and 1100 mm from them. */
const point = { x: 2100, y: 300, z: 400 }

const still = (): Motion[] => train.bodies.map(() => noMotion)

function moved(body: number, motion: Partial<Motion>): { builder: number[]; proof: number[] } {
  const motions = still()
  motions[body] = { ...noMotion, ...motion }
  const parts = carriers(train, machine, point)
  const builder = (['dx', 'dy', 'dz'] as const).map((way) =>
    parts.reduce((sum, part) => sum + displaced(part.carry[way], at(motions, part.body)), 0),
  )
  return { builder, proof: [...carried(train, motions, machine, point)] }
}

describe('a point moved by its body', () => {
  // um from mrad times mm; dx = tx - sy y - sz z, dy = ty + sy (x - x0) - roll z,
  // dz = tz + sz (x - x0) + roll y
  const own: Record<(typeof names)[number], number[]> = {
    tx: [1, 0, 0],
    ty: [0, 1, 0],
    tz: [0, 0, 1],
    sy: [-300, 600, 0],
    sz: [-400, 0, 600],
    roll: [0, -400, 300],
  }
  it.each(names)('%s by one', (name) => {
    const { builder, proof } = moved(machine, { [name]: 1 })
    expect(builder).toEqual(own[name].map((v) => close(v, 9)))
    expect(proof).toEqual(own[name].map((v) => close(v, 9)))
  })

  // the skid sees the point 1100 mm from its reference and 250 + 400 mm up
  const below: Record<(typeof names)[number], number[]> = {
    tx: [1, 0, 0],
    ty: [0, 1, 0],
    tz: [0, 0, 1],
    sy: [-300, 1100, 0],
    sz: [-650, 0, 1100],
    roll: [0, -650, 300],
  }
  it.each(names)('%s of its skid by one', (name) => {
    const { builder, proof } = moved(skid, { [name]: 1 })
    expect(builder).toEqual(below[name].map((v) => close(v, 9)))
    expect(proof).toEqual(below[name].map((v) => close(v, 9)))
  })

  it('by both at once is their sum', () => {
    const motions = still()
    motions[machine] = { tx: 1, ty: 2, tz: 3, sy: 0.1, sz: 0.2, roll: 0.3 }
    motions[skid] = { tx: 10, ty: 20, tz: 30, sy: 0.4, sz: 0.5, roll: 0.6 }
    // dx: 1 - 30 - 80 + 10 - 120 - 325; dy: 2 + 60 - 120 + 20 + 440 - 390;
    // dz: 3 + 120 + 90 + 30 + 550 + 180
    expect([...carried(train, motions, machine, point)]).toEqual(
      [-544, 12, 973].map((v) => close(v, 9)),
    )
  })

  it('at a foot is by the body’s own motion, in the plane of its feet', () => {
    // foot at 2000, -300: dx = 1 + 0.1 * 300; dy = 2 + 0.1 * 500; dz = 3 + 0.2 * 500 - 0.3 * 300
    const motion = { tx: 1, ty: 2, tz: 3, sy: 0.1, sz: 0.2, roll: 0.3 }
    expect([...claimedFootMove(at(train.bodies, machine), motion, 3)]).toEqual(
      [31, 52, 13].map((v) => close(v, 9)),
    )
  })

  it('turns about the mean x of its feet', () => {
    const lopsided = trainOf(
      pair({ right: { feet: [0, 0, 300, 1500].map((x, i) => ({ id: `${i}`, x, y: i })) } }),
    )
    expect(at(lopsided.bodies, 1).x0).toBe(450)
    expect(at(lopsided.bodies, 1).rows.map(({ x, feet }) => [x, feet])).toEqual([
      [0, [0, 1]],
      [300, [2]],
      [1500, [3]],
    ])
  })

  it('is carried by its body alone where that stands on no skid', () => {
    // the skid itself, its reference at 1000: the point is 1100 mm along, 300 aside and 400 up
    expect(carriers(train, skid, point)).toEqual([
      {
        body: skid,
        carry: {
          dx: { tx: 1, sy: -300, sz: -400 },
          dy: { ty: 1, sy: 1100, roll: -400 },
          dz: { tz: 1, sz: 1100, roll: 300 },
        },
      },
    ])
  })

  it('of a body that is not there is told as such', () => {
    expect(() => carriers(train, 9, point)).toThrow(new RangeError('no body 9'))
  })
})
