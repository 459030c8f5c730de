import { describe, expect, it } from 'vitest'
import { lineAt, moves, near, plan } from './bench'
import { caseOf } from './cases'
import { pair, swing, turn } from './pair'

describe('reverse dials', () => {
  it('brings the right machine on to the held one (common practice, no source)', () => {
    interface Input {
      sag: number
      sweeps: { rides: string; at: number; readings: [number, number][] }[]
      feet: number[]
    }
    const { input, expected, tolerance } = caseOf<{
      input: Input
      expected: { shim: number[]; side: number[] }
    }>('reverseDial', 'reverse-dial')
    const found = input.sweeps.map((sweep) => ({ kind: 'rim', sag: input.sag, ...sweep }))
    const answer = plan(
      pair({ feet: input.feet, heldFeet: [-20, -8], plane: 3, found, tolerance: 0.0001 }),
    )
    expect(answer.status).toBe('planned')
    expect(answer.held).toEqual(['fixed'])
    near(moves(answer, 'moved').shim, expected.shim, tolerance)
    near(moves(answer, 'moved').side, expected.side, tolerance)
  })

  it('V1 and V1h: halves at two planes, up and down and to the north', () => {
    interface Input {
      S: number
      A: number
      D: number
      AtoIB: number
      IBtoOB: number
    }
    interface Feet {
      IB: number
      OB: number
    }
    const rise = caseOf<{ input: Input; expected: Feet }>('reverseDial', 'V1')
    const side = caseOf<{ input: Input; expected: Feet }>('reverseDial', 'V1h')
    const { D, AtoIB, IBtoOB } = rise.input
    // The printed correction (S - A) / D * x - S is the moved line taken off: that line stands S high
    // at the S plane (x = 0) and A high at the A plane (x = D). The stationary shaft's dial stands at
    // the S plane with its stem on the fixed (left) shaft, so bottom - top is + 2 S; the other rides
    // the moved (right) shaft, so it is - 2 A. North is put at 3 o'clock: 9 - 3 follows the same signs.
    const answer = plan(
      pair({
        feet: [D + AtoIB, D + AtoIB + IBtoOB],
        plane: D / 2,
        found: [
          { kind: 'rim', rides: 'left', at: 0, readings: swing(12, 6, 2 * rise.input.S) },
          { kind: 'rim', rides: 'left', at: 0, readings: swing(3, 9, 2 * side.input.S) },
          { kind: 'rim', rides: 'right', at: D, readings: swing(12, 6, -2 * rise.input.A) },
          { kind: 'rim', rides: 'right', at: D, readings: swing(3, 9, -2 * side.input.A) },
        ],
      }),
    )
    near(moves(answer).shim, [rise.expected.IB, rise.expected.OB], rise.tolerance)
    near(moves(answer).side, [side.expected.IB, side.expected.OB], side.tolerance)
    // printed in whole mils: lower 3, raise 7, 36 south (the book also prints -2.7)
    expect(moves(answer).shim.map(Math.round)).toEqual([-3, 7])
    expect(Math.round(moves(answer).side[0] ?? 0)).toBe(-36)
  })

  it('V6: the readings that a wanted line shows', () => {
    const { input, expected, tolerance } = caseOf<{
      input: { S: number; A: number }
      expected: { STIR: number; ATIR: number }
    }>('reverseDial', 'V6')
    // The planes' distance is not printed; any will do. S high where the dial rides the fixed shaft
    // (+ 2 S at the bottom), A high where it rides the moved one (- 2 A).
    const D = 10
    const answer = plan(
      pair({
        feet: [20, 40],
        plane: D / 2,
        states: [{ id: 'run', name: 'run' }],
        aim: {
          run: { offset: { z: (input.S + input.A) / 2 }, slope: { z: (input.A - input.S) / D } },
        },
        found: [
          { kind: 'rim', rides: 'left', at: 0, readings: turn(0, 0, 0, 0) },
          { kind: 'rim', rides: 'right', at: D, readings: turn(0, 0, 0, 0) },
        ],
      }),
    )
    const bottom = answer.expected?.map(
      (set) => ('readings' in set ? set.readings : []).find(([hour]) => hour === 6)?.[1],
    )
    near(bottom, [expected.STIR, expected.ATIR], tolerance)
  })

  it('V15: sag taken off, slope, and the height at the inboard feet', () => {
    const { input, expected, tolerance } = caseOf<{
      input: {
        D: number
        AtoIB: number
        S: number
        A: number
        sagTotal: number
        sidesS: number
        sidesA: number
      }
      expected: { S: number; A: number; slope: number; IB: number }
    }>('reverseDial', 'V15')
    // The sheet writes the A reading with its sign turned over (both as seen from the fixed shaft):
    // a dial that rides the moved shaft and reads +5 at the bottom under 3 of sag cannot give +1.
    // So the raw bottoms are -19 riding left and -5 riding right. Only the sums of the sides are
    // printed; half of each goes to either side.
    const answer = plan(
      pair({
        feet: [input.D + input.AtoIB, 40],
        plane: 0,
        found: [
          {
            kind: 'rim',
            rides: 'left',
            at: 0,
            sag: input.sagTotal / 2,
            readings: turn(0, input.sidesS / 2, input.S, input.sidesS / 2),
          },
          {
            kind: 'rim',
            rides: 'right',
            at: input.D,
            sag: input.sagTotal / 2,
            readings: turn(0, -input.sidesA / 2, -input.A, -input.sidesA / 2),
          },
        ],
      }),
    )
    const line = answer.asFound[0]
    near(lineAt(line, 0).z, expected.S, tolerance)
    near(lineAt(line, input.D).z, expected.A, tolerance)
    near(line?.slope.z, expected.slope, tolerance)
    near(-(moves(answer).shim[0] ?? 0), expected.IB, 0.005)
  })

  it('A1: half a mil per inch on planes 18 in apart is 9 mil at the other plane', () => {
    const { input, expected, tolerance } = caseOf<{
      input: { planes: number; flex: number }
      expected: { offset: number }
    }>('reverseDial', 'A1')
    const base = pair({
      feet: [30, 60],
      plane: 0,
      // on the left shaft's line at the left plane, 9 mil high at the right one
      found: [
        {
          kind: 'line',
          at: 0,
          offset: { y: 0, z: 0 },
          slope: { y: 0, z: expected.offset / input.planes },
        },
      ],
    })
    const answer = plan({
      ...base,
      couplings: base.couplings.map((coupling) => ({
        ...coupling,
        right: { ...coupling.right, plane: input.planes },
        tolerance: { flex: input.flex },
      })),
    })
    near(answer.asFound[0]?.share['cold'], 1, tolerance)
  })
})
