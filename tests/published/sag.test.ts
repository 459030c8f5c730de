import { describe, expect, it } from 'vitest'
import { lineAt, near, plan } from './bench'
import { caseOf } from './cases'
import { pair, turn } from './pair'

/**
 * The offset that one corrected rim sweep shows, the stem on the right shaft. One plane leaves the
 * slope open; it is set to 0. North, right and 3 o'clock are one side here.
 */
function offsetOf(readings: unknown, sag: number, units?: { length: string; fine: string }) {
  const answer = plan(
    pair({
      feet: [10, 30],
      plane: 0,
      ...(units && { units }),
      found: [
        { kind: 'rim', rides: 'right', at: 0, sag, readings },
        { kind: 'line', at: 0, slope: { y: 0, z: 0 } },
      ],
    }),
  )
  return lineAt(answer.asFound[0], 0)
}

/** What the sweep would have read without sag, zero at the top: right, bottom, left. */
const withoutSag = ({ y, z }: { y: number; z: number }) => [y - z, -2 * z, -y - z]

const upAndDown = (bottom: number) => turn(0, bottom / 2, bottom, bottom / 2)

describe('sag', () => {
  it('V4: the print takes its test reading as the sag itself', () => {
    const { input, expected, tolerance } = caseOf<{
      input: { bottom: number; sagTest: number }
      expected: { corrected: number }
    }>('sag', 'V4')
    const sag = -input.sagTest
    near(withoutSag(offsetOf(upAndDown(input.bottom), sag))[1], expected.corrected, tolerance)
    // a bar that reads -4 at the bottom sags by 2: then 164
    near(withoutSag(offsetOf(upAndDown(input.bottom), sag / 2))[1], 164, tolerance)
  })

  interface Turn {
    T: number
    R: number
    B: number
    L: number
  }
  interface Corrected {
    R: number
    B: number
    L: number
    offset: number
  }

  it('V11: sag given per side', () => {
    const { input, expected, tolerance } = caseOf<{
      input: Turn & { sag: number }
      expected: Corrected
    }>('sag', 'V11')
    const offset = offsetOf(turn(input.T, input.R, input.B, input.L), input.sag)
    near(withoutSag(offset), [expected.R, expected.B, expected.L], tolerance)
    near(Math.abs(offset.z), expected.offset, tolerance)
  })

  it.each(['V12a', 'V12b'])('%s: sag given as the total reading at the bottom', (id) => {
    const { input, expected, tolerance } = caseOf<{
      input: Turn & { sagTotal: number }
      expected: Corrected
    }>('sag', id)
    // printed in hundredths of a millimetre
    const fine = (value: number) => value / 100
    const offset = offsetOf(
      turn(fine(input.T), fine(input.R), fine(input.B), fine(input.L)),
      fine(-input.sagTotal / 2),
      { length: 'mm', fine: 'mm' },
    )
    near(
      withoutSag(offset).map((value) => value * 100),
      [expected.R, expected.B, expected.L],
      tolerance,
    )
    near(Math.abs(offset.z) * 100, expected.offset, tolerance)
  })

  it('V13: -25 under a total sag of 5 is -20, the bracket 10 low', () => {
    const { input, expected, tolerance } = caseOf<{
      input: { bottom: number; sagTotal: number }
      expected: { corrected: number; offset: number }
    }>('sag', 'V13')
    const offset = offsetOf(upAndDown(input.bottom), input.sagTotal / 2)
    near(withoutSag(offset)[1], expected.corrected, tolerance)
    // the shaft that the stem rides is high, the one with the bracket low
    near(offset.z, expected.offset, tolerance)
  })

  it('V13b: -25 under a total sag of 4 is -21, not the printed -20', () => {
    const { input, expected, printed, tolerance } = caseOf<{
      input: { bottom: number; sagTotal: number }
      expected: { corrected: number }
    }>('sag', 'V13b')
    const bottom = withoutSag(offsetOf(upAndDown(input.bottom), input.sagTotal / 2))[1] ?? 0
    near(bottom, expected.corrected, tolerance)
    expect(Math.abs(bottom - Number(printed?.['corrected']))).toBeGreaterThan(0.9)
  })
})
