import { describe, expect, it } from 'vitest'
import { catenary, hanging, rotorEnd, slopeOfGap, type Rotor } from '../../src/mechanics/rotorSag'
import { Random } from '../second/random'

const rotor: Rotor = {
  span: 4000,
  overhang: 0,
  mass: 8000,
  diameter: 500,
  modulus: 206,
  half: 0,
}
const end = (one: Rotor) => {
  const answer = rotorEnd(one)
  if (!answer) throw new Error('no answer')
  return answer
}

/** Second moment and weight by other means: N, mm. */
const stiff = ({ diameter, modulus }: Rotor) => modulus * 1e3 * (Math.PI / 4) * (diameter / 2) ** 4

/**
 * The same beam by adding up its curvature in small steps: bending moment from the loads on one side, slope and place from
 * that, and a straight line taken off that makes both bearings nought. Nothing of the closed formulas is in it.
 */
function integrated(one: Rotor): { rise: number; slope: number } {
  const { span, overhang, mass, half } = one
  const g = 9.80665
  const length = span + overhang
  const w = (mass * g) / length
  // from moments about the far bearing
  const near = ((w * length * length) / 2 + half * g * length) / span
  const far = w * length + half * g - near
  const moment = (x: number) => far * x - (w * x * x) / 2 + (x > span ? near * (x - span) : 0)
  const steps = 40_000
  const h = length / steps
  let [slope, place] = [0, 0]
  const places: number[] = [0]
  for (let i = 0; i < steps; i++) {
    const middle = slope + (moment((i + 0.25) * h) / stiff(one)) * (h / 2)
    place += middle * h
    slope += (moment((i + 0.5) * h) / stiff(one)) * h
    places.push(place)
  }
  const i = Math.round(span / h)
  const turn = -(places[i] ?? NaN) / (i * h)
  return { rise: (place + turn * length) * 1000, slope: (slope + turn) * 1000 }
}

describe('the end of a rotor', () => {
  it('with no overhang leaves its bearing at w L^3 / 24 EI (Timoshenko; from memory), by hand', () => {
    // w = 8000 * 9.80665 / 4000 = 19.6133 N/mm; EI = 206e3 * 3.06796e9 = 6.31999e14 N mm2
    // 19.6133 * 6.4e10 / 24 / 6.31999e14 = 8.2757e-5: 0.0828 mrad
    expect(end(rotor).slope).toBeCloseTo(0.082757, 5)
    expect(end(rotor).rise).toBe(0)
  })

  it('a weight at the end of an overhang hangs it by P a^2 (L + a) / 3 EI (the same source)', () => {
    const one = { ...rotor, mass: 0, overhang: 600, half: 900 }
    const by = (900 * 9.80665 * 600 ** 2 * 4600) / 3 / stiff(one)
    expect(end(one).rise).toBeCloseTo(-by * 1000, 6)
  })

  it('agrees with its curvature added up in small steps', () => {
    const random = new Random(77)
    for (let i = 0; i < 10; i++) {
      const one: Rotor = {
        span: random.between(800, 7000),
        overhang: random.between(0, 1200),
        mass: random.between(100, 60_000),
        diameter: random.between(100, 900),
        modulus: random.between(190, 215),
        half: random.between(0, 2000),
      }
      const [mine, other] = [end(one), integrated(one)]
      const size = Math.max(1, Math.abs(other.rise), Math.abs(other.slope))
      expect(Math.abs(mine.rise - other.rise) / size).toBeLessThan(2e-3)
      expect(Math.abs(mine.slope - other.slope) / size).toBeLessThan(2e-3)
    }
  })

  it('two alike, bearings in one line: rims level, faces open at the top by twice the slope', () => {
    const one = end(rotor)
    const read = hanging(one, one)
    expect(read.offset).toBe(0)
    expect(read.slope).toBeCloseTo(-2 * 0.082757, 5)
    // over 800 mm: 0.13 mm
    expect(read.slope * 800).toBeCloseTo(-132.41, 1)
    // the ends meet where the bearings of the right one rise by as much
    expect(catenary(one, one).slope).toBeCloseTo(-read.slope, 12)
  })

  it('a gap of 0.10 mm over 500 mm is 0.2 mrad; nothing is told of a rotor without length', () => {
    expect(slopeOfGap(100, 500)).toBe(0.2)
    expect(rotorEnd({ ...rotor, span: 0 })).toBeUndefined()
    expect(rotorEnd({ ...rotor, diameter: 0 })).toBeUndefined()
    expect(rotorEnd({ ...rotor, mass: -1 })).toBeUndefined()
  })
})
