import { describe, expect, it } from 'vitest'
import { asFound } from '../../src/mechanics/readings/asFound'
import { setSeen } from '../../src/engine/fieldwork/ready/setSeen'
import { signWords } from '../../src/engine/fieldwork/ready/signs'
import { at, given, pair, trainOf, type Json } from '../engine/pair'

const sides = { three: 'the pipe rack', nine: 'toward the road' }
const words = (found: Json[], more: Json = {}) => {
  const train = trainOf(
    pair({ found, rest: { sides, units: { length: 'mm', fine: 'mm' } }, ...more }),
  )
  const coupling = at(train.couplings, 0)
  return signWords(train, coupling, asFound(coupling).line)
}
/** The line at mid-span, x = 100 between planes at 0 and 200; in mm. */
const line = (y: number, z: number, sy = 0, sz = 0) => given(y, z, sy, sz)
const onePlane = { coupling: { right: { machine: 'B', plane: 0 }, tolerance: { offset: 1 } } }

describe('what the readings mean', () => {
  it('is said at both planes, which machine is higher and to which side', () => {
    // 0.25 up at mid-span, 0.5 mrad over 100 mm each way: 0.20 and 0.30
    expect(words([line(-0.1, 0.25, 0, 0.5)]).says).toBe(
      'At the left plane the pump is 0.20 mm HIGHER than the motor, and 0.10 mm toward the road; at the right plane the pump is 0.30 mm HIGHER than the motor, and 0.10 mm toward the road.',
    )
    expect(words([line(0.1, -0.25)]).says).toContain(
      'the pump is 0.25 mm LOWER than the motor, and 0.10 mm toward the pipe rack',
    )
    expect(words([line(0.002, 0.001)]).says).toContain(
      'the pump is as high as the motor, and in line with it sideways',
    )
  })

  it('is said with the slope where there is one plane', () => {
    const says = words([{ ...line(0, 0.3, 0.4, -0.2), at: 0 }], onePlane).says
    expect(says).toBe(
      'At the coupling the pump is 0.30 mm HIGHER than the motor, and in line with it sideways; going right the pump FALLS 0.20 mrad and runs 0.40 mrad toward the pipe rack.',
    )
  })

  it('is drawn as two shafts, the left one level and the right one where it lies', () => {
    const { picture } = words([line(-0.1, 0.25, 0, 0.5)])
    expect(picture).toMatchObject({ higher: 'right', toward: 'nine' })
    expect(picture.rise.left.map(({ x, value }) => [x, value])).toEqual([
      [-200, 0],
      [0, 0],
    ])
    const [near, far] = picture.rise.right
    expect([near.x, far.x]).toEqual([200, 400])
    expect(near.value).toBeCloseTo(300, 6)
    expect(far.value).toBeCloseTo(400, 6)
    expect(words([line(0, -0.3)]).picture).toMatchObject({ higher: 'left', toward: 'neither' })
  })

  it('changes with the signs of the readings, so that a confirmation of others does not hold', () => {
    const rim = (value: number) => ({
      kind: 'rim',
      rides: 'right',
      at: 200,
      sag: 0,
      readings: [
        [12, 0],
        [3, value / 2],
        [6, value],
        [9, value / 2],
      ],
    })
    const both = (value: number) => [rim(value), { ...rim(value), at: 0 }]
    // a stem on the right shaft is pushed in where that shaft is: + at the bottom says low
    expect(words(both(0.6)).says).toContain('0.30 mm LOWER')
    expect(words(both(-0.6)).says).toContain('0.30 mm HIGHER')
  })
})

describe('what one set says by itself', () => {
  it('agrees with the line wherever the set alone can tell: 200 random lines through every kind', () => {
    let told = 0
    for (let seed = 1; seed <= 200; seed++) {
      const r = (k: number) => ((seed * 7919 * k) % 401) - 200
      const d = { y: r(1), z: r(3), sy: r(5) / 500, sz: r(7) / 500 }
      const diameter = 300
      const sag = 25
      // readings by the contract's table, u.y = sin and u.z = cos of 30 degrees an hour
      const sweep = (of: (u: { y: number; z: number }) => number, bracket: number) =>
        [12, 2.5, 6, 9].map((hour): [number, number] => {
          const u = { y: Math.sin((hour * Math.PI) / 6), z: Math.cos((hour * Math.PI) / 6) }
          return [hour, 40 + of(u) + bracket * u.z]
        })
      const dAt = (x: number) => ({ y: d.y + d.sy * (x - 100), z: d.z + d.sz * (x - 100) })
      const dot = (a: { y: number; z: number }, u: { y: number; z: number }) =>
        a.y * u.y + a.z * u.z
      const s = { y: d.sy, z: d.sz }
      const [p, q] = [dAt(0), dAt(200)]
      const found: Json[] = [
        { kind: 'rim', rides: 'right', at: 30, sag, readings: sweep((u) => dot(dAt(30), u), sag) },
        { kind: 'rim', rides: 'left', at: 30, sag, readings: sweep((u) => -dot(dAt(30), u), sag) },
        {
          kind: 'face',
          rides: 'right',
          diameter,
          sag,
          readings: sweep((u) => 150 * dot(s, u), sag),
        },
        {
          kind: 'face',
          rides: 'left',
          face: 'back',
          diameter,
          sag: 0,
          readings: sweep((u) => -150 * dot(s, u), 0),
        },
        { kind: 'gap', diameter, readings: sweep((u) => -150 * dot(s, u), 0) },
        {
          kind: 'spool',
          end: 'left',
          diameter,
          sag: 0,
          readings: sweep((u) => (150 * dot(q, u)) / 200, 0),
        },
        {
          kind: 'spool',
          end: 'right',
          diameter,
          sag: 0,
          readings: sweep((u) => (-150 * dot(p, u)) / 200, 0),
        },
      ]
      const coupling = at(trainOf(pair({ found })).couplings, 0)
      coupling.found.forEach((set) => {
        const seen = at(setSeen(set, coupling), 0)
        const expected = seen.kind === 'place' ? dAt(seen.x) : { sy: d.sy, sz: d.sz }
        for (const [key, value] of Object.entries(expected))
          expect(seen[key as keyof typeof seen], `seed ${seed}, ${set.kind}`).toBeCloseTo(value, 8)
        told++
      })
    }
    expect(told).toBe(1400)
  })

  it('is said with the faces: they stand open at the bottom where the right shaft rises', () => {
    const gap = {
      kind: 'gap',
      diameter: 200,
      readings: [
        [12, 3],
        [3, 3.05],
        [6, 3.1],
        [9, 3.05],
      ],
    }
    const [, own] = words([line(0, 0), gap]).sets
    expect(own?.says).toMatch(
      /^Set 2, gap between the faces.*: the gap is 0.10 mm wider at the BOTTOM; going right the pump RISES 0.50 mrad\.$/,
    )
    const aside = {
      ...gap,
      readings: [
        [12, 3],
        [3, 3.1],
        [6, 3],
        [9, 2.9],
      ],
    }
    // wider toward 3: the right shaft runs toward 9
    expect(words([line(0, 0), aside]).sets[1]?.says).toContain(
      '0.20 mm wider toward the pipe rack; going right the pump runs 1.00 mrad toward the road',
    )
  })

  it('says only what the set fixes, and nothing of a set that is not used', () => {
    const rim = (readings: Json[] | number[][]) => ({
      kind: 'rim',
      rides: 'right',
      at: 200,
      sag: 0,
      readings,
    })
    const says = (readings: number[][]) => words([line(0, 0), rim(readings)]).sets[1]?.says ?? ''
    expect(
      says([
        [12, 0],
        [6, 0.4],
      ]),
    ).toMatch(/: there the pump is 0.20 mm LOWER than the motor\.$/)
    expect(
      says([
        [3, 0],
        [9, 0.4],
      ]),
    ).toMatch(/the pump is 0.20 mm toward the road against the motor\.$/)
    expect(
      says([
        [12, 0],
        [3, 0.4],
      ]),
    ).toMatch(/says nothing by itself\.$/)
    expect(
      words([
        line(0, 0),
        {
          ...rim([
            [12, 0],
            [6, 0.4],
          ]),
          use: false,
        },
      ]).sets,
    ).toHaveLength(1)
  })
})
