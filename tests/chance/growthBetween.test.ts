import { describe, expect, it } from 'vitest'
import { assumedOf } from '../../src/engine/chance/assumed'
import { notEnteredOf } from '../../src/engine/plan/notEntered'
import { growthOf, lineValueAt } from '../../src/mechanics/growth'
import { intervalEffects } from '../../src/mechanics/uncertainty/intervals'
import { growthErrors } from '../../src/mechanics/uncertainty/growthErrors'
import { growthDoubtAt } from '../../src/mechanics/uncertainty/growthPoints'
import { close, pair, planOf, trainOf, type Json } from '../engine/pair'

const exact = [{ at: 0, rise: 0, side: 0, u: 0 }]
const part = { id: 'part', name: 'Part load', load: 40 }
const between = { from: 'idle', to: 'full', by: 'load' }

/** The right machine grows; "part" lies a quarter of the way from "idle" (20 %) to "full" (100 %). */
function trainWith(growth: Json, states: Json = { ...part, between }) {
  return pair({
    left: { growth: { idle: exact, full: exact } },
    right: { growth },
    rest: {
      units: { length: 'mm', fine: 'um', temperature: 'C' },
      states: [
        { id: 'idle', name: 'Idle', load: 20, temperature: 10 },
        states,
        { id: 'full', name: 'Full load', load: 100, temperature: 50 },
      ],
    },
  })
}
const known = {
  idle: [{ at: 2000, rise: 40, side: 0, u: 5 }],
  full: [
    { at: 0, rise: 100, side: 0, u: 0 },
    { at: 1000, rise: 200, side: 0, u: 0 },
  ],
}

describe('a state between two others', () => {
  it('grows by the line between theirs, whatever places they are given at', () => {
    const [, pump] = trainOf(trainWith(known)).machines
    if (!pump) throw new Error('no pump')
    const { rise } = growthOf(pump, 'part', 'left')
    // 0.75 of a level 40, and 0.25 of 100 at 0 rising 0.1 a mm
    expect(lineValueAt(rise, 0)).toEqual(close(0.75 * 40 + 0.25 * 100, 9))
    expect(lineValueAt(rise, 3000)).toEqual(close(0.75 * 40 + 0.25 * 400, 9))
    expect(rise.slope).toEqual(close(0.025, 9))
  })

  it('lies by its temperature where that tells', () => {
    const warm = { ...part, temperature: 40, between: { ...between, by: 'temperature' } }
    const [, pump] = trainOf(trainWith(known, warm)).machines
    expect(pump && lineValueAt(growthOf(pump, 'part', 'left').rise, 0)).toEqual(
      close(0.25 * 40 + 0.75 * 100, 9),
    )
  })

  it('is planned for as if its points were given', () => {
    const loose = { tolerance: 1000 }
    const plan = (growth: Json, states: Json) => {
      const { bodies, couplings } = planOf(trainWith(growth, { ...states, ...loose }))
      return { bodies, couplings }
    }
    const typed = {
      part: [
        { at: 0, rise: 55, side: 0 },
        { at: 1000, rise: 80, side: 0 },
      ],
    }
    expect(plan(known, { ...part, between })).toEqual(plan({ ...known, ...typed }, part))
  })

  it('gives way to growth of its own, unless none of that counts', () => {
    const rise = (use: boolean) => {
      const [, pump] = trainOf(trainWith({ ...known, part: [{ at: 0, rise: 7, use }] })).machines
      return pump && lineValueAt(growthOf(pump, 'part', 'left').rise, 0)
    }
    expect(rise(true)).toBe(7)
    expect(rise(false)).toEqual(close(55, 9))
  })

  it('errs as both of its states do, each by what it counts there', () => {
    const unsure = {
      idle: [{ at: 0, rise: 40, side: 0, u: 5 }],
      full: [{ at: 0, rise: 100, side: 0, u: 10 }],
    }
    const train = trainOf(trainWith(unsure))
    // four fifths alike: 0.75 * 5 + 0.25 * 10 = 6.25; one fifth apart: 3.75 and 2.5
    const u = Math.sqrt(0.8 * 6.25 ** 2 + 0.2 * (3.75 ** 2 + 2.5 ** 2))
    expect(growthDoubtAt(train, 1, 'part', 'left', 'rise', 500)).toEqual(close(u, 9))
    const effect = (state: number) =>
      growthErrors(train).map(
        ({ effects }) => effects.find((one) => one.state === state)?.by.misalignment.z ?? 0,
      )
    const [idle, middle, full] = [0, 1, 2].map(effect)
    const cov = (a: number[] = [], b: number[] = []) =>
      a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
    expect(cov(middle, middle)).toEqual(close(u * u, 9))
    expect(cov(full, full)).toEqual(close(100, 9))
    // with full load: 0.8 * 10 * 6.25 of what is shared, 0.2 * 10 * 2.5 of its own
    expect(cov(middle, full)).toEqual(close(0.8 * 62.5 + 0.2 * 25, 9))
    expect(cov(middle, idle)).toEqual(close(0.8 * 5 * 6.25 + 0.2 * 5 * 3.75, 9))
  })

  it('keeps intervals of both states, each by what it counts there', () => {
    const train = trainOf(
      trainWith({ ...known, full: [{ at: 0, range: { rise: [60, 140] }, side: 0 }] }),
    )
    const widths = intervalEffects(train).map(({ state, by }) => [state, by.misalignment.z])
    expect(widths).toEqual([
      [1, close(10, 9)],
      [2, close(40, 9)],
    ])
  })

  it('errs by nothing of a state that is shut down, and by what is not entered in another', () => {
    const train = trainOf(
      pair({
        left: { growth: { full: exact } },
        rest: {
          states: [
            { id: 'idle', name: 'Idle', load: 20 },
            { ...part, between },
            { id: 'full', name: 'Full load', load: 100 },
          ],
        },
      }),
    )
    // "full" is not shut down, since somebody gave a u there; at the ends of its feet 20 each, at one of them all of it
    expect(growthDoubtAt(train, 1, 'part', 'left', 'rise', 1000)).toEqual(close(0.25 * 20, 9))
    expect(growthDoubtAt(train, 1, 'idle', 'left', 'rise', 1000)).toBe(0)
  })

  it('is told wherever what was not entered is told', () => {
    const train = trainOf(trainWith(known))
    const line =
      'on a straight line from "Idle" (20 % load) to "Full load" (100 % load), at 40 % load'
    expect(notEnteredOf(train)).toContainEqual({
      where: 'states[1].between',
      what: 'growth of every machine in "Part load"',
      instead: `taken ${line}`,
    })
    expect(assumedOf(train, [])).toContainEqual({
      where: 'states[1].between',
      kind: 'growth in Part load',
      of: '',
      value: `taken ${line}; that it grows so is not counted as unsure`,
    })
  })
})
