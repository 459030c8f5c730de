import { describe, expect, it } from 'vitest'
import { closure } from '../../src/mechanics/readings/closure'
import { readTrain } from '../../src/document/readTrain'
import { near, plan } from './bench'
import { caseOf } from './cases'
import { pair, turn } from './pair'
import { rawSweeps, train } from './three'

/** Closure of each reading set of a train file, in its own fine unit (mil). */
function closures(document: unknown): (number | undefined)[] {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train.couplings.flatMap(({ found }) =>
    found.map((set) => {
      const value = closure(set)
      return value === undefined ? undefined : value / 25.4
    }),
  )
}

describe('validity of sweeps', () => {
  interface Dial {
    T: number
    E: number
    B: number
    W: number
  }
  interface Input {
    motor: Dial
    pump: Dial
  }
  interface Expected {
    closure: number[]
    zeroedAtE: { motor: Dial; pump: Pick<Dial, 'E' | 'W'> }
  }
  const v14 = caseOf<{ input: Input; expected: Expected }>('validity', 'V14')
  // East is put at 3 o'clock. One dial rides the motor (left), one the pump (right); the figure's
  // distances play no part in the closure, nor in what a new zero does.
  const sets = (motor: Dial, pump: Dial) => [
    { kind: 'rim', rides: 'left', at: 0, readings: turn(motor.T, motor.E, motor.B, motor.W) },
    { kind: 'rim', rides: 'right', at: 10, readings: turn(pump.T, pump.E, pump.B, pump.W) },
  ]
  const train14 = (motor: Dial, pump: Dial) =>
    pair({ feet: [20, 40], plane: 5, found: sets(motor, pump) })

  it('V14: top and bottom make east and west', () => {
    near(closures(train14(v14.input.motor, v14.input.pump)), v14.expected.closure, 1e-9)
  })

  it('V14: a dial zeroed in the east reads the same line', () => {
    const zeroed = (dial: Dial): Dial => ({
      T: dial.T - dial.E,
      E: 0,
      B: dial.B - dial.E,
      W: dial.W - dial.E,
    })
    const motor = zeroed(v14.input.motor)
    const pump = zeroed(v14.input.pump)
    expect(motor).toEqual(v14.expected.zeroedAtE.motor)
    expect({ E: pump.E, W: pump.W }).toEqual(v14.expected.zeroedAtE.pump)
    const before = plan(train14(v14.input.motor, v14.input.pump)).asFound[0]
    const after = plan(train14(motor, pump)).asFound[0]
    near(
      [after?.offset.y, after?.offset.z, after?.slope.y, after?.slope.z],
      [before?.offset.y, before?.offset.z, before?.slope.y, before?.slope.z],
      1e-9,
    )
    expect(Math.abs(before?.offset.z ?? 0)).toBeGreaterThan(1)
  })

  it('V15: sums that differ by a mil, the rounding of four readings', () => {
    const { input, expected, tolerance } = caseOf<{
      input: { topAndBottom: [number, number]; sides: [number, number] }
      expected: { closure: number[]; within: number }
    }>('validity', 'V15')
    const [bottomS, bottomA] = input.topAndBottom
    const [sidesS, sidesA] = input.sides
    const found = closures(
      pair({
        feet: [16, 40],
        plane: 0,
        found: [
          { kind: 'rim', rides: 'left', at: 0, readings: turn(0, sidesS / 2, bottomS, sidesS / 2) },
          {
            kind: 'rim',
            rides: 'right',
            at: 6,
            readings: turn(0, sidesA / 2, bottomA, sidesA / 2),
          },
        ],
      }),
    )
    near(found, expected.closure, tolerance)
    for (const value of found)
      expect(Math.abs(value ?? 9)).toBeLessThanOrEqual(expected.within + 1e-9)
  })

  it('T3: all four sweeps close', () => {
    const { expected, tolerance } = caseOf<{ input: unknown; expected: { closure: number[] } }>(
      'validity',
      'T3',
    )
    near(closures(train({ found: rawSweeps(), seenFrom: 'left' })), expected.closure, tolerance)
  })

  it('says nothing about a sweep without its four hours', () => {
    const found = [
      { kind: 'rim', rides: 'left', at: 0, readings: turn(0, 1, 2, 1) },
      {
        kind: 'rim',
        rides: 'right',
        at: 6,
        readings: [
          [12, 0],
          [3, 1],
          [6, 2],
        ],
      },
    ]
    expect(closures(pair({ feet: [16, 40], plane: 0, found }))).toEqual([
      expect.closeTo(0, 9),
      undefined,
    ])
  })
})
