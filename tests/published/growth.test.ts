import { describe, expect, it } from 'vitest'
import { lineAt, moves, near, plan } from './bench'
import { caseOf, casesOf } from './cases'
import { pair, turn } from './pair'

const hot = [{ id: 'hot', name: 'hot' }]
const units = { length: 'in', fine: 'mil', temperature: 'F' }
const inLine = [{ kind: 'line', at: 0, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }]

describe('growth', () => {
  const heated = casesOf('growth').filter(({ input }) => Object.hasOwn(input as object, 'height'))

  it('has every heated case', () => {
    expect(heated.length).toBe(7)
  })

  it.each(heated)(
    '$id: height, coefficient and temperature rise',
    ({ input, expected, tolerance }) => {
      const { height, rise, expansion } = input as Record<'height' | 'rise' | 'expansion', number>
      // in line cold, the machine must be set low by what it will grow
      const heat = { height, expansion, from: 70, to: 70 + rise }
      const answer = plan(
        pair({
          feet: [20, 40],
          plane: 0,
          units,
          found: inLine,
          states: hot,
          growth: { hot: [{ at: 20, heat }] },
        }),
      )
      const { growth } = expected as { growth: number }
      // the plan may use the tolerance of the pair: 0.00001 mil and, 40 in out, 0.0004
      near(moves(answer).shim, [-growth, -growth], tolerance + 0.0005)
    },
  )

  interface V5 {
    A: number
    B: number
    C: number
    R: number
    F: number
    expansion: number
    from: number
    feet: { height: number; to: number }[]
  }
  interface Expected {
    growth: number[]
    cold: number[]
    net: number[]
    rim: number
    face: number
  }
  const v5 = caseOf<{ input: V5; expected: Expected }>('growth', 'V5')
  const { A, B, C, R, F, expansion, from, feet } = v5.input
  // As in V8: + R / 2 and + F / A are where the moved machine stands, the rim's stem on the fixed
  // shaft, the face's on the back of the moved one. -2 and -7 are then low, growth adds to them, and
  // what remains is taken off. The book calls the sum of 1 once removed and once added.
  const found = [
    { kind: 'rim', rides: 'left', at: 0, readings: turn(0, R / 2, R, R / 2) },
    { kind: 'face', rides: 'right', face: 'back', diameter: A, readings: turn(0, F / 2, F, F / 2) },
  ]
  const grown = (growth: readonly Record<string, unknown>[]) =>
    plan(pair({ feet: [B, C], plane: 0, units, found, states: hot, growth: { hot: growth } }))

  it('V5: rim and face cold, each end heated by itself', () => {
    const answer = grown(
      feet.map(({ height, to }, i) => ({
        at: i === 0 ? B : C,
        heat: { height, expansion, from, to },
      })),
    )
    const line = answer.asFound[0]
    near([lineAt(line, B).z, lineAt(line, C).z], v5.expected.cold, 1e-6)
    const left = moves(answer).shim.map((shim) => -shim)
    const rises = left.map((value, i) => value - (v5.expected.cold[i] ?? 0))
    near(rises, v5.expected.growth, 0.05)
    // printed from a growth of 8.3 rounded to 8
    near(left, v5.expected.net, v5.tolerance)
  })

  it('V5: with the growth as rounded in print, rim +2 and face 0 remain', () => {
    const answer = grown([
      { at: B, rise: 3 },
      { at: C, rise: 8 },
    ])
    const [inboard = 0, outboard = 0] = moves(answer).shim.map((shim) => -shim)
    near([inboard, outboard], v5.expected.net, 0.005)
    const slope = (outboard - inboard) / (C - B)
    near(2 * (inboard - slope * B), v5.expected.rim, 0.02)
    near(slope * A, v5.expected.face, 0.02)
  })

  it('V6: 6 high cold and 2 of growth are 8 to take out', () => {
    const { input, expected } = caseOf<{
      input: { coldOB: number; growthOB: number }
      expected: { OB: number }
    }>('growth', 'V6')
    // the inboard feet stand right and do not grow
    const answer = plan(
      pair({
        feet: [10, 30],
        plane: 0,
        found: [
          { kind: 'line', at: 10, offset: { y: 0, z: 0 }, slope: { y: 0, z: input.coldOB / 20 } },
        ],
        states: hot,
        growth: {
          hot: [
            { at: 10, rise: 0 },
            { at: 30, rise: input.growthOB },
          ],
        },
      }),
    )
    near(moves(answer).shim, [0, -expected.OB], 0.005)
  })
})
