import { describe, expect, it } from 'vitest'
import { hasMoves } from '../../src/engine/plan/moves'
import { lineValueAt } from '../../src/mechanics/growth'
import { draw, drawExample, example, exampleFiles, pair } from './trains'

describe('lines of the shafts', () => {
  it('count from the held machine, the next one from it by the misalignment', async () => {
    const { figures } = await draw(pair({ z: 30, sz: 0.1, y: -20 }))
    expect(figures.zero).toBe('zero: axis of the motor as found')
    const [left, right] = figures.lines
    if (!left || !right) throw new Error('lines missing')
    expect([left.from, left.to, right.from, right.to]).toEqual([0, 1200, 1400, 2600])
    expect(lineValueAt(left.found.rise, 777)).toBe(0)
    expect(lineValueAt(right.found.rise, 1400)).toBeCloseTo(30 + 10, 9)
    expect(lineValueAt(right.found.rise, 2600)).toBeCloseTo(30 + 130, 9)
    expect(lineValueAt(right.found.side, 2600)).toBeCloseTo(-20, 9)
  })

  it('count from the right machine when that is the one held', async () => {
    const { figures } = await draw(
      pair({ z: 30, sz: 0.1 }, { left: { held: false }, right: { held: true } }),
    )
    expect(figures.zero).toBe('zero: axis of the pump as found')
    // seen from the pump the motor lies 30 lower at mid-span, falling 0.1 mrad
    expect(
      lineValueAt(figures.lines[0]?.found.rise ?? { x: 0, value: 0, slope: 0 }, 1300),
    ).toBeCloseTo(-30, 9)
    expect(figures.lines[0]?.found.rise.slope).toBeCloseTo(-0.1, 9)
  })

  it('count from the line through the outermost feet when nothing is held', async () => {
    const { figures } = await draw(pair({ z: 26 }, { left: { held: false } }))
    expect(figures.zero).toBe('zero: line through the axis over the outermost feet, as found')
    const [left, right] = figures.lines
    if (!left || !right) throw new Error('lines missing')
    expect(lineValueAt(left.found.rise, 0)).toBeCloseTo(0, 9)
    expect(lineValueAt(right.found.rise, 2600)).toBeCloseTo(0, 9)
    // 26 over 2600 mm is 0.01 mrad: at 1000 the left axis lies 10 below that line
    expect(lineValueAt(left.found.rise, 1000)).toBeCloseTo(-10, 9)
    expect(figures.drift).toEqual([])
  })

  it('pass a held machine that a free skid carries over for one that stays', async () => {
    const { figures } = await draw(example('skid-as-one.json'))
    expect(figures.zero).toBe('zero: axis of the power turbine as found')
  })

  it('carry growth of each axis of a gearbox on its own side of the middle', async () => {
    const { figures, train } = await draw(example('bolt-bound-gearbox.json'))
    const gear = train.machines.findIndex(({ role }) => role === 'gearbox')
    const [left, right] = figures.lines.filter(({ machine }) => machine === gear)
    expect([left?.axis, right?.axis]).toEqual(['left', 'right'])
    expect(left?.to).toBe(right?.from)
    // one case: as found both axes are on one line, hot they are not
    expect(left?.found).toEqual(right?.found)
    const summer = train.states.findIndex(({ id }) => id.includes('summer'))
    const none = { x: 0, value: 0, slope: 0 }
    const middle = left?.to ?? 0
    const [driven, driving] = [left, right].map((piece) =>
      lineValueAt(piece?.states[summer]?.rise ?? none, middle),
    )
    // the file has the left axis rise 300 to 310 um in summer, the right one 460 to 470
    expect((driving ?? 0) - (driven ?? 0)).toBeCloseTo(160, 6)
  })

  it.each(exampleFiles)('%s: planned lines agree with the shares of the answer', async (file) => {
    const { figures, train, answer } = await drawExample(file)
    if (!hasMoves(answer)) throw new Error('no plan')
    // every gate is open and the planned line passes it, but for the last digits
    expect(figures.gates.length).toBeGreaterThan(0)
    for (const gate of figures.gates) {
      expect(gate.passes).toBeGreaterThanOrEqual(gate.low.value - 1e-2)
      expect(gate.passes).toBeLessThanOrEqual(gate.high.value + 1e-2)
    }
    // a coupling at its share has a line on a post of one of its gates
    const tight = answer.couplings.filter(({ share }) => share > train.plan.share - 1e-5)
    for (const { coupling } of tight) {
      const own = figures.gates.filter(({ coupling: c }) => train.couplings[c]?.id === coupling)
      const nearest = Math.min(
        ...own.map(({ passes, low, high }) => Math.min(passes - low.value, high.value - passes)),
      )
      expect(nearest).toBeLessThan(2)
    }
  })
})

describe('drift', () => {
  it('is nothing at the zero and adds what the readings leave unsure along x', async () => {
    // line set: u 10 um for the offset, 0.05 mrad for the slope, both at mid-span
    const { figures } = await draw(pair({ z: 30 }))
    const [left, right] = figures.drift
    expect(left?.points.every(({ rise, side }) => rise === 0 && side === 0)).toBe(true)
    const end = right?.points.at(-1)
    expect(end?.x).toBe(2600)
    expect(end?.rise).toBeCloseTo(Math.hypot(10, 0.05 * 1300), 6)
    expect(end?.side).toBeCloseTo(Math.hypot(10, 0.05 * 1300), 6)
  })
})
