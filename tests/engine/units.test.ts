import { describe, expect, it } from 'vitest'
import { outward } from '../../src/mechanics/readings/clock'
import { fineText, lengthText, shareText, slopeText } from '../../src/language/amounts'
import { tidy } from '../../src/language/tidy'
import {
  fineSign,
  forceSign,
  kilogramsPer,
  massSign,
  micrometresPer,
  newtonMetresPer,
  newtonsPer,
  powerSign,
  slidingSign,
  slopeSign,
  temperatureSign,
  toFine,
  toLength,
  torqueSign,
  wattsPer,
} from '../../src/mechanics/units'
import { at, pair, planOf, trainOf } from './pair'

const metric = { length: 'mm', fine: 'um', temperature: 'C' } as const
const inches = { length: 'in', fine: 'mil', temperature: 'F' } as const
const millimetres = { length: 'mm', fine: 'mm', temperature: 'C' } as const

describe('units', () => {
  it('are converted once, at the door: 1 in = 25.4 mm and 1 mil = 25.4 um exactly', () => {
    const train = trainOf(
      pair({
        rest: { units: { length: 'in', fine: 'mil' }, plan: { reserve: 2 } },
        right: {
          feet: [
            { id: '1', x: 40, y: -12, pack: { now: 125, min: 50, max: 250 }, lift: 10 },
            { id: '2', x: 80, hole: { clearance: 60, x: 1, y: -2 } },
          ],
          restraints: [{ id: 'n', x: 60, z: 30, rise: [-4, 8] }],
          tilt: 0.3,
        },
      }),
    )
    const body = at(train.machines, 1)
    const [first, second] = [at(body.feet, 0), at(body.feet, 1)]
    expect(first.x).toBeCloseTo(1016, 9) // 40 in
    expect(first.y).toBeCloseTo(-304.8, 9) // 12 in
    expect(first.pack).toEqual({ now: 3175, min: 1270, max: 6350 }) // 125, 50, 250 mil
    expect(first.lift).toBeCloseTo(254, 9) // 10 mil
    expect(second.hole?.clearance).toBeCloseTo(1524, 9) // 60 mil
    expect(second.hole?.y).toBeCloseTo(-50.8, 9)
    expect(at(body.restraints, 0).rise).toEqual([-101.6, 203.2])
    expect(at(body.restraints, 0).z).toBeCloseTo(762, 9)
    expect(body.tilt).toBe(0.3) // mrad is mil/in
    expect(body.axis.left.z).toBeCloseTo(400 * 25.4, 9)
    expect(body.x0).toBeCloseTo(60 * 25.4, 9)
    expect(train.plan.reserve).toBeCloseTo(50.8, 9)
    expect(at(train.couplings, 0).tolerance.offset).toBeCloseTo(2540, 9)
  })

  it('keep slopes as they are, and 1 mm of fine quantity is 1000 um', () => {
    const found = [
      { kind: 'line', at: 100, offset: { y: 0.03, z: -0.02 }, slope: { y: 0.2, z: -0.1 } },
    ]
    const document = pair({
      found,
      rest: { units: { length: 'mm', fine: 'mm' } },
      coupling: { tolerance: { offset: 0.1, angle: 0.5 } },
    })
    const set = at(at(trainOf(document).couplings, 0).found, 0)
    expect(set.kind === 'line' ? set.offset : {}).toEqual({ y: 30, z: -20 })
    expect(set.kind === 'line' ? set.slope : {}).toEqual({ y: 0.2, z: -0.1 })
    expect(at(planOf(document).asFound, 0)).toMatchObject({
      at: 100,
      offset: { y: 0.03, z: -0.02 },
      slope: { y: 0.2, z: -0.1 },
    })
  })

  it('are written as people of the document write them', () => {
    expect(fineText(361.4, metric)).toBe('361 µm')
    expect(fineText(361.4, millimetres)).toBe('0.36 mm')
    expect(fineText(361.4, inches)).toBe('14.2 mil') // 361.4 / 25.4 = 14.228
    expect(fineText(-0.2, metric)).toBe('0 µm')
    expect(fineText(-4, millimetres)).toBe('0.00 mm')
    expect(fineText(-6, millimetres)).toBe('-0.01 mm')
    expect(lengthText(1250, metric)).toBe('1250 mm')
    expect(lengthText(1250, inches)).toBe('49.213 in') // 1250 / 25.4 = 49.2126
    expect(slopeText(0.456, metric)).toBe('0.46 mrad')
    expect(slopeText(-0.001, inches)).toBe('0.00 mil/in')
    expect(shareText(0.704)).toBe('70 %')
    expect(shareText(0.004)).toBe('under 1 %')
    expect(shareText(0)).toBe('0 %')
  })

  it('are tidied in answers: 12 digits, nothing under a billionth, no minus on a zero', () => {
    expect(tidy(0.1 + 0.2)).toBe(0.3)
    expect(tidy(1234.567890123456)).toBe(1234.56789012)
    expect(Object.is(tidy(-1e-10), 0)).toBe(true)
    expect(tidy(2e-9)).toBe(2e-9)
  })
})

describe('clock hours', () => {
  // y = sin, z = cos of 30 degrees an hour
  const half = Math.SQRT1_2
  const long = Math.sqrt(3) / 2
  it.each([
    [12, 0, 1],
    [1, 0.5, long],
    [1.5, half, half],
    [2, long, 0.5],
    [3, 1, 0],
    [4, long, -0.5],
    [4.5, half, -half],
    [6, 0, -1],
    [7.5, -half, -half],
    [9, -1, 0],
    [10, -long, 0.5],
    [11.5, -0.25881904510252074, 0.9659258262890683], // 15 degrees before the top
  ])('%s o’clock points to y %s, z %s', (hour, y, z) => {
    expect(outward(hour).y).toBeCloseTo(y, 12)
    expect(outward(hour).z).toBeCloseTo(z, 12)
  })

  it('are exact at the quarters', () => {
    expect([12, 3, 6, 9].map(outward)).toEqual([
      { y: 0, z: 1 },
      { y: 1, z: 0 },
      { y: 0, z: -1 },
      { y: -1, z: 0 },
    ])
  })
})

describe('units that go with a length unit (exact, NIST SP 811)', () => {
  it('are kg, kN, kW and N·m with mm, and pound, pound-force, horsepower and foot-pound with inches', () => {
    expect([kilogramsPer.mm, newtonsPer.mm, wattsPer.mm, newtonMetresPer.mm]).toEqual([
      1, 1000, 1000, 1,
    ])
    expect(kilogramsPer.in).toBe(0.45359237)
    expect(newtonsPer.in).toBe(4.4482216152605)
    expect(wattsPer.in).toBeCloseTo(745.6998715822702, 9)
    expect(newtonMetresPer.in).toBeCloseTo(1.35581794833, 10)
    expect(micrometresPer).toEqual({ um: 1, mm: 1000, mil: 25.4 })
  })

  it('are told by the signs that people of either read', () => {
    const signs = [massSign, forceSign, powerSign, torqueSign, slidingSign]
    expect(signs.map((sign) => sign.mm)).toEqual(['kg', 'kN', 'kW', 'N·m', 'mm/s'])
    expect(signs.map((sign) => sign.in)).toEqual(['lb', 'lb', 'hp', 'ft·lb', 'in/s'])
    expect([metric, inches].map(temperatureSign)).toEqual(['°C', '°F'])
    expect(fineSign).toEqual({ um: 'µm', mm: 'mm', mil: 'mil' })
  })

  it('come back by their own size, and slopes as mil an inch only where both are', () => {
    expect([toFine(50.8, inches), toFine(50, metric), toFine(50, millimetres)]).toEqual([
      2, 50, 0.05,
    ])
    expect([toLength(50.8, inches), toLength(50, metric)]).toEqual([2, 50])
    const mixed = [
      inches,
      metric,
      { ...metric, length: 'in' as const },
      { ...metric, fine: 'mil' as const },
    ]
    expect(mixed.map(slopeSign)).toEqual(['mil/in', 'mrad', 'mrad', 'mrad'])
  })
})
