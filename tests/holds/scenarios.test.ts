import { describe, expect, it } from 'vitest'
import { holdsOf, type RankedHold } from '../../src/engine/studies/holds/holdRows'
import { glpkSolver } from '../../src/solvers/glpk'
import { examples } from '../examples/expected'
import { example } from './choice'

const solver = await glpkSolver()

/** Printed floors and these agree within this (they were worked out with 16-sided circles). */
const printed = 0.02

function list(name: string) {
  const holds = holdsOf(example(name), solver, { prices: false })
  const row = (held: readonly string[]): RankedHold => {
    const found = holds.rows.find((one) => one.held.join(' ') === held.join(' '))
    if (!found) throw new Error(`no row for ${held.join(' ')}`)
    return found
  }
  return { ...holds, row }
}

describe.each(examples.filter(({ holds }) => holds.length > 0))(
  'every choice of $file in one go',
  ({ file, held, holds: wanted }) => {
    const { complete, rows, row } = list(file)

    it('is complete, and each choice stands in it once', () => {
      expect(complete).toBe(true)
      const loose = example(file).bodies.filter(({ anchored }) => anchored === undefined)
      expect(rows).toHaveLength(2 ** loose.length)
      expect(new Set(rows.map((one) => one.held.join(' '))).size).toBe(rows.length)
    })

    it.each(wanted)('holding $held has the printed floor and status', (hold) => {
      const { floor, status } = row(hold.held)
      expect(Math.abs((floor ?? NaN) - hold.floor)).toBeLessThanOrEqual(
        // two floors are printed a whole polygon too high: 3.74 and 3.93, 5.57, 2.76, 2.58
        hold.floor > 1 ? hold.floor * (1 - Math.cos(Math.PI / 16)) + 0.01 : printed,
      )
      expect(status).toBe(hold.floor <= 0.7 ? 'planned' : 'impossible')
    })

    it('has the plan that was argued for first', () => {
      const [best] = rows
      const own = row(held)
      expect(own.current).toBe(true)
      expect([own.held, own.sameAs]).toContainEqual(best?.held)
      expect(own.costWithEffort).toBeCloseTo(best?.costWithEffort ?? NaN, 3)
      expect(own.disturbed).toEqual(best?.disturbed)
    })

    it('never has a lower floor or cost where more is held', () => {
      for (const more of rows)
        for (const less of rows) {
          if (!less.held.every((id) => more.held.includes(id))) continue
          expect(more.floor).toBeGreaterThanOrEqual((less.floor ?? NaN) * (1 - 1e-6))
          if (less.status === 'impossible') expect(more.status).toBe('impossible')
          if (more.cost !== undefined)
            expect(more.cost).toBeGreaterThanOrEqual((less.cost ?? NaN) * (1 - 2e-6))
        }
    })

    it('says of every choice but the first why it loses', () => {
      for (const [i, one] of rows.entries())
        if (i === 0) expect(one.why).toBe('')
        else expect(one.why).toMatch(/^(costs|has more fixed|has the same plan|with .* fixed)/)
    })
  },
)

describe('the naive choice', () => {
  it('holding the gear of bolt-bound-gearbox is refused: the low stage has no room to come to it', () => {
    const { why, status } = list('bolt-bound-gearbox').row(['gear'])
    expect(status).toBe('impossible')
    expect(why).toMatch(/low stage to gear \(turndown\) comes to 372 % of its tolerance at best/)
    expect(why).toMatch(
      /the low-stage compressor lacks \d+ µm of room at outlet flange and at its bolts/,
    )
  })

  it('holding the fluid drive of base-bound-motor is refused: the motor has no shim to come down on', () => {
    const { row } = list('base-bound-motor')
    for (const held of [['fluid-drive'], ['fluid-drive', 'gear', 'pump']]) {
      expect(row(held).status).toBe('impossible')
      expect(row(held).floor).toBeGreaterThan(2.5)
    }
    expect(row(['fluid-drive']).why).toMatch(
      /motor to fluid drive .* comes to 2[45]\d % of its tolerance at best: the spare motor lacks \d+ µm of shim to take out/,
    )
  })

  it('moving only the gear of piped-compressor is refused, whatever room it has', () => {
    const { why } = list('piped-compressor').row(['motor', 'compressor'])
    expect(why).toMatch(
      /comes to 83 % of its tolerance at best: the machines that are free cannot serve all/,
    )
  })
})

it('nothing is moved in leave-it-alone, whatever is held', () => {
  const { rows } = list('leave-it-alone')
  for (const row of rows) {
    expect(row.status).toBe('in-tolerance')
    expect([row.cost, row.costWithEffort, row.disturbed]).toEqual([0, 0, []])
    expect(row.total).toEqual({ shim: 0, side: 0, axial: 0 })
    expect(row.worstShare).toBeCloseTo(0.61, 2)
  }
  // equal in cost: the lowest floor, then the most held
  expect(rows[0]?.floor).toBeCloseTo(Math.min(...rows.map(({ floor }) => floor ?? NaN)), 6)
})
