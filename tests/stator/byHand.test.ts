import { describe, expect, it } from 'vitest'
import { centringLine, gapAround, acrossAt } from '../../src/mechanics/airGap'
import { statorsOf } from '../../src/engine/plan/statorAnswer'
import { noMotion } from '../../src/mechanics/motion'
import { readTrain } from '../../src/document/readTrain'
import type { AirGap } from '../../src/mechanics/stator'
import pedestals from '../../examples/pedestals.json'

const still = { y: 0, z: 0 }
const gap = (at: number, top: number, three: number, bottom: number, nine: number): AirGap => ({
  ...{ id: `at ${at}`, at, top, three, bottom, nine },
})

describe('an air gap around', () => {
  it('that is wider above and toward 3 has its bore high and toward 3', () => {
    // mean (8080 + 7990 + 7920 + 8010)/4 = 8000; up (8080 - 7920)/2 = 80; toward 3 (7990 - 8010)/2 = -10
    const { mean, off, outOfRound, part } = gapAround(gap(0, 8080, 7990, 7920, 8010), still, still)
    expect({ mean, off, outOfRound }).toEqual({ mean: 8000, off: { y: -10, z: 80 }, outOfRound: 0 })
    expect(part).toBeCloseTo(80 / 8000, 12)
  })

  it('loses above what the rotor comes up', () => {
    // the rotor 100 up: the stator goes -100 against it
    const { off } = gapAround(gap(0, 8080, 8000, 7920, 8000), still, { y: 0, z: -100 })
    expect(off).toEqual({ y: 0, z: -20 })
  })

  it('that is oval keeps that whatever moves', () => {
    // above and below 60 more together than the sides: each of the four is 15 off the mean
    const oval = gapAround(gap(0, 8030, 8000, 8030, 8000), still, still)
    expect(oval.outOfRound).toBe(15)
    expect(oval.part).toBeCloseTo(15 / 8015, 12)
  })

  it('is counted from where the bore is to stand', () => {
    const { off } = gapAround(gap(0, 7900, 8000, 8100, 8000), { y: 0, z: -100 }, still)
    expect(off).toEqual({ y: 0, z: 0 })
  })
})

describe('what centres a stator', () => {
  it('is the line through what its gaps are off by', () => {
    const stator = {
      gaps: [gap(1000, 8040, 8000, 7960, 8000), gap(3000, 7980, 8010, 8020, 7990)],
      ...{ feet: [], aim: still, limit: 0.1 },
    }
    // 40 high at 1000, 20 low and 10 toward 3 at 3000: down by 40 there, up by 20 and back by 10 here
    const line = centringLine(stator)
    expect(acrossAt(line, 1000)).toEqual({ y: 0, z: -40 })
    expect(acrossAt(line, 3000)).toEqual({ y: -10, z: 20 })
    expect(acrossAt(line, 2000)).toEqual({ y: -5, z: -10 })
  })

  it('of the example follows its rotor, worked out by hand', () => {
    const read = readTrain(pedestals)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const { train } = read
    const generator = train.bodies.findIndex(({ id }) => id === 'generator')
    // pedestal A (x 5000) up 800, B (x 8000) stays, seen from x0 = 6500: tz 400, slope -800/3000 mrad
    const motions = train.bodies.map((_, b) =>
      b === generator ? { ...noMotion, tz: 400, sz: -800 / 3000 } : noMotion,
    )
    const [answer] = statorsOf(train, motions)
    expect(answer?.within).toBe(false)
    const [drive, exciter] = answer?.gaps ?? []
    // the rotor comes up by 560 at 5900 and 240 at 7100; the bore stood 80 and 110 high
    expect(drive?.planned.z).toBeCloseTo(80 - 560, 9)
    expect(exciter?.planned.z).toBeCloseTo(110 - 240, 9)
    expect(drive?.planned.part).toBeCloseTo(480 / 8000, 12)
    // up 480 at 5900 and 130 at 7100: 538.3 at 5700 and 71.7 at 7300, in steps of 50
    // toward 3 it stood -70 and +20: +70 and -20 there, +85 at 5700 and -35 at 7300
    expect(answer?.feet.map(({ foot, shim }) => [foot, shim])).toEqual([
      ['S1 yard', 550],
      ['S1 canal', 550],
      ['S2 yard', 50],
      ['S2 canal', 50],
    ])
    expect(answer?.feet[0]?.side).toBeCloseTo(85, 9)
    expect(answer?.feet[2]?.side).toBeCloseTo(-35, 9)
    // the line through the shims has 487.5 at 5900 and 112.5 at 7100: 7.5 over and 17.5 under
    expect(drive?.centred?.z).toBeCloseTo(7.5, 9)
    expect(exciter?.centred?.z).toBeCloseTo(-17.5, 9)
  })

  it('is nothing where the gaps count no more, and where none was measured', () => {
    const [turbine, gear, generator] = structuredClone(pedestals.machines)
    for (const stator of [
      { ...generator?.stator, use: false },
      { feet: [{ id: 'S1', x: 5700 }] },
    ]) {
      const read = readTrain({ ...pedestals, machines: [turbine, gear, { ...generator, stator }] })
      if (!read.ok) throw new Error(JSON.stringify(read.refused))
      expect(
        statorsOf(
          read.train,
          read.train.bodies.map(() => noMotion),
        ),
      ).toEqual([])
    }
  })
})
