import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spread } from '../../src/scene/spread'
import { xScale } from '../../src/scene/xScale'
import { yScale } from '../../src/scene/yScale'
import { draw, drawExample, exampleFiles, pair } from './trains'

const settings = { width: 1000, left: 50, right: 60, most: 10 }

describe('the x scale', () => {
  it.each(exampleFiles)('%s: fits the page, with one px per mm everywhere', async (file) => {
    const { train } = await drawExample(file)
    const scale = xScale(train, settings)
    expect(scale.breaks).toEqual([])
    const xs = train.machines.flatMap(({ feet }) => feet.map(({ x }) => x))
    for (const x of xs) {
      expect(scale.at(x)).toBeGreaterThanOrEqual(50)
      expect(scale.at(x)).toBeLessThanOrEqual(940)
      expect(scale.at(x) - scale.at(xs[0] ?? 0)).toBeCloseTo((x - (xs[0] ?? 0)) * scale.perMm, 6)
    }
  })

  it('is broken in a long spacer, which is stated, and keeps its px per mm elsewhere', async () => {
    const far = pair({})
    const pump = far.machines[1]
    const coupling = far.couplings[0]
    if (!pump || !coupling) throw new Error('no pair')
    coupling.right.plane += 20_000
    pump.feet.forEach((foot) => (foot.x += 20_000))
    coupling.found = [{ kind: 'line', at: 11_300, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }]
    const { train } = await draw(far)
    const scale = xScale(train, settings)
    expect(scale.breaks).toHaveLength(1)
    const cut = scale.breaks[0]
    // usual distance between feet 1000 mm: the spacer keeps two of them, 1000 on either side
    expect(cut).toMatchObject({ from: 2200, to: 20_400 })
    expect((cut?.right ?? 0) - (cut?.left ?? 0)).toBeCloseTo(16, 6)
    expect(scale.at(1000) - scale.at(0)).toBeCloseTo(1000 * scale.perMm, 6)
    expect(scale.at(22_600) - scale.at(21_600)).toBeCloseTo(1000 * scale.perMm, 6)
    expect(scale.at(2800 + 20_000)).toBeLessThanOrEqual(940 + 1e-6)
  })

  it('draws a short train no larger than asked, in the middle', async () => {
    const { train } = await draw(pair({}))
    const scale = xScale(train, { ...settings, most: 0.1 })
    expect(scale.perMm).toBe(0.1)
    // casings reach 200 mm past the outermost feet
    expect((scale.at(-200) + scale.at(2800)) / 2).toBeCloseTo((50 + 940) / 2, 6)
  })
})

describe('the y scale', () => {
  it('exaggerates by a round number and fits', async () => {
    const { train } = await draw(pair({}))
    const y = yScale(train, [-130, 410], 160, 0.3, 1)
    // 136 px for 540 um at 0.3 px per mm would be 839.5 times
    expect(y.ratio).toBe(800)
    expect(y.at(410)).toBeGreaterThan(0)
    expect(y.at(-130)).toBeLessThan(160)
    expect(y.at(0) - y.at(100)).toBeCloseTo((100 / 1000) * 0.3 * 800, 9)
    expect(yScale(train, [-130, 410], 160, 0.3, -1).at(100)).toBeGreaterThan(
      yScale(train, [-130, 410], 160, 0.3, -1).at(0),
    )
  })

  it('puts its digits so far apart that they never touch', async () => {
    const { train } = await draw(pair({}))
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1e6, noNaN: true }), (high) => {
        const { ticks } = yScale(train, [0, high], 160, 0.1, 1)
        expect(ticks.length).toBeGreaterThan(0)
        ticks.slice(1).forEach((tick, i) => {
          expect(Math.abs(tick.y - (ticks[i]?.y ?? 0))).toBeGreaterThan(14)
        })
      }),
      { seed: 1 },
    )
  })
})

describe('spread', () => {
  it('leaves cards where they want to be when there is room', () => {
    const cards = [
      { want: 100, width: 50 },
      { want: 300, width: 80 },
    ]
    expect(spread(cards, 10, 0, 500)).toEqual([75, 260])
  })

  it('shares a conflict between neighbours and keeps to the page', () => {
    const same = [
      { want: 200, width: 100 },
      { want: 200, width: 100 },
    ]
    // 210 px together about 200
    expect(spread(same, 10, 0, 500)).toEqual([95, 205])
    expect(spread(same, 10, 0, 300)).toEqual([90, 200])
    expect(spread(same, 10, 120, 500)).toEqual([120, 230])
  })

  it('never lets two cards overlap, nor leave the page while they fit', () => {
    const card = fc.record({
      want: fc.double({ min: -200, max: 1200, noNaN: true }),
      width: fc.double({ min: 20, max: 90, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(card, { minLength: 1, maxLength: 10 }), (some) => {
        const cards = [...some].sort((a, b) => a.want - b.want)
        const lefts = spread(cards, 8, 0, 1000)
        lefts.forEach((left, i) => {
          const before = i === 0 ? 0 : (lefts[i - 1] ?? 0) + (cards[i - 1]?.width ?? 0) + 8
          expect(left).toBeGreaterThanOrEqual(before - 1e-6)
          expect(left + (cards[i]?.width ?? 0)).toBeLessThanOrEqual(1000 + 1e-6)
        })
      }),
      { seed: 1 },
    )
  })
})
