import { describe, expect, it } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { ChanceStudy } from '../../src/engine/chance/chanceStudy'
import { sureOfPlan } from '../../src/engine/chance/sureAnswer'
import { asFound } from '../../src/mechanics/readings/asFound'
import { anchoredPair, readPair } from './anchoredPair'

/** Two machines that stay, one coupling read as a line: one state, shut down, 20,000 draws. */
function pair(change: (document: TrainDocument) => void): ReturnType<typeof sureOfPlan> {
  const document: TrainDocument = {
    ...anchoredPair(
      {
        tolerance: { offset: 50 },
        found: [{ kind: 'line', at: 1000, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 }, u: 20 }],
      },
      [1000, 1000],
      1200,
    ),
    plan: { sure: { draws: 20_000 } },
  }
  change(document)
  const { train } = readPair(document)
  return sureOfPlan(new ChanceStudy(train, train.couplings.map(asFound)))
}

/** Four standard errors of a fraction of 20,000 draws. */
const errors = (p: number) => 4 * Math.sqrt((p * (1 - p)) / 20_000)
const expectNear = (told: number, p: number) => {
  expect(Math.abs(told - p)).toBeLessThan(errors(p))
}
const line = (document: TrainDocument) => {
  const [set] = document.couplings[0]?.found ?? []
  if (set?.kind !== 'line') throw new Error('no line')
  return set
}

describe('a coupling alone, by formulas of the normal distribution (JCGM 106, table values of Phi)', () => {
  it('box: sideways and up are in or out by themselves', () => {
    // 50 = 2.5 u: Phi(2.5) - Phi(-2.5) = 0.98758, squared
    expectNear(pair(() => undefined).asFound.chance, 0.98758 ** 2)
    // 30 up: from -80 to 20, which is -4 u to 1 u: 0.84134 - 0.00003
    const off = pair((document) => {
      line(document).offset = { y: 0, z: 30 }
    })
    expectNear(off.asFound.chance, 0.98758 * 0.84131)
  })

  it('round: the length of an error with two equal parts (Rayleigh)', () => {
    const round = pair((document) => {
      Object.assign(document.couplings[0]?.tolerance ?? {}, { offset: 30, shape: 'round' })
    })
    expectNear(round.asFound.chance, 1 - Math.exp(-(1.5 ** 2) / 2))
  })

  it('on its limit: one half of the draws', () => {
    const half = pair((document) => {
      line(document).offset = { y: 0, z: 250 }
      Object.assign(document.couplings[0]?.tolerance ?? {}, { offset: 250 })
    })
    expectNear(half.asFound.chance, 0.5)
  })

  it('the gap between the shaft ends is one of the checks', () => {
    // 0.3 mm of room either way at u 0.2 mm: Phi(1.5) - Phi(-1.5) = 0.86639
    const gap = pair((document) => {
      Object.assign(document.couplings[0] ?? {}, {
        tolerance: { offset: 500 },
        axial: { found: 200, want: 200, tolerance: 0.3, u: 0.2 },
      })
    })
    expectNear(gap.asFound.chance, 0.86639)
  })

  it('a factor of the state widens the limit', () => {
    const wide = pair((document) => {
      document.states = [{ id: 'cold', name: 'cold', tolerance: 0.5 }]
    })
    // 25 = 1.25 u: 2 x 0.89435 - 1 = 0.78870
    expectNear(wide.asFound.chance, 0.7887 ** 2)
  })

  it('growth that nobody entered counts only in a state that is not the shut-down position', () => {
    const states = [{ id: 'hot', name: 'hot' }]
    const still = pair((document) => {
      document.states = states
    })
    expectNear(still.asFound.chance, 0.98758 ** 2)
    const hot = pair((document) => {
      document.states = states
      Object.assign(document.machines[0] ?? {}, {
        growth: { hot: [{ at: 0, rise: 0, u: 0, side: 0 }] },
      })
    })
    // b grows by nobody's figure: 20 um at each of its rows, at 1200 and 2000, of which four fifths of the variance is
    // one error: at the coupling, 200 mm before the first row, sqrt(0.8) x 20 all along, and sqrt(0.2) x 20 times
    // 1.25 and -0.25; with 20 um of the line
    const u = Math.hypot(20, 20 * Math.sqrt(0.8 + 0.2 * (1.25 ** 2 + 0.25 ** 2)))
    const within = 2 * phi(50 / u) - 1
    expectNear(hot.asFound.chance, within ** 2)
  })
})

/** Standard normal distribution (Abramowitz and Stegun 26.2.17, to 7.5e-8; coefficients from memory, checked on 2.5). */
function phi(x: number): number {
  const t = 1 / (1 + 0.2316419 * x)
  const [a, b, c, d, e] = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429]
  const tail = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
  return 1 - tail * t * (a + t * (b + t * (c + t * (d + t * e))))
}

it('the table of the normal distribution that is used here holds', () => {
  expect(phi(2.5)).toBeCloseTo(0.99379, 5)
  expect(phi(1)).toBeCloseTo(0.84134, 5)
})
