import { describe, expect, it } from 'vitest'
import { loadsOf } from '../../src/engine/fieldwork/steps/loads'
import { fourFeet, pair, trainOf, type Json } from '../engine/pair'
import { skidPair } from './skidPair'

function loads(document: Json, body = 1) {
  const known = loadsOf(trainOf(document), body)
  if ('missing' in known) throw new Error(`no mass of ${known.missing.join()}`)
  return known.loads
}

const near = (values: readonly number[]) => values.map((v) => expect.closeTo(v, 9) as number)

describe('loads at the corners', () => {
  it('are a quarter each on four feet, standing and with an end lifted', () => {
    const { corners, jack, over } = loads(pair({ right: { mass: 4000 } }))
    expect(corners).toEqual(near([1000, 1000, 1000, 1000]))
    expect(jack).toBeCloseTo(1000, 9)
    expect(over).toBe(false)
  })

  it('grow by half at the end of three rows as it is lifted, and the jacks are told so', () => {
    // six feet carry 1000 kg each; one end lifted, the middle row hangs free: 6000 / 2 on two jacks
    const feet = [...fourFeet, ...[300, -300].map((y) => ({ id: `m${y}`, x: 1500, y }))]
    const { corners, jack, over, rating, assumed } = loads(
      pair({ right: { mass: 6000, jack: 1200, feet } }),
    )
    expect(corners).toEqual(near([1000, 1000, 1000, 1000, 1000, 1000]))
    expect(jack).toBeCloseTo(1500, 9)
    expect([over, rating]).toEqual([true, 1200])
    expect(assumed).toContain('hang free')
  })

  it('of a skid lean to where its machine stands', () => {
    // skid 2000 kg in its middle at 1500, pump 4000 kg at 1500 too, then one whose feet stand at 750
    const even = loads(skidPair({ mass: 4000 }, { mass: 2000 }), 2)
    expect(even.corners).toEqual(near([1500, 1500, 1500, 1500]))
    const feet = fourFeet.map((foot) => ({ ...foot, x: foot.x - 750 }))
    const lean = loads(skidPair({ mass: 4000, feet }, { mass: 2000 }), 2)
    // centre at (2000 * 1500 + 4000 * 750) / 6000 = 1000 mm: the left end carries 6000 * 1500 / 2000
    expect(lean.corners).toEqual(near([2250, 2250, 750, 750]))
    expect(lean.jack).toBeCloseTo(2250, 9)
  })

  it('are not made up where a mass is missing', () => {
    expect(loadsOf(trainOf(skidPair({}, { mass: 2000 })), 2)).toEqual({ missing: ['Pump'] })
  })

  it('come in pounds in a document in inches', () => {
    const { jack, rating } = loads(
      pair({
        right: { mass: 1000, jack: 2000 },
        rest: { units: { length: 'in', fine: 'mil' } },
      }),
    )
    expect(jack).toBeCloseTo(250 * 0.45359237, 9)
    expect(rating).toBeCloseTo(2000 * 0.45359237, 9)
  })
})
