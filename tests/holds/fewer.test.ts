import { describe, expect, it } from 'vitest'
import { fewerDisturbed } from '../../src/engine/studies/holds/fewerDisturbed'
import { holdsOf, type RankedHold } from '../../src/engine/studies/holds/holdRows'
import { PlanRun } from '../../src/engine/plan/planRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { fewerText } from '../../src/text/fewerText'
import { toldText } from '../../src/language/amounts'
import { example, holding } from './choice'

const solver = await glpkSolver()

const row = (held: string, cost: number, disturbed: number, more: object = {}): RankedHold => ({
  held: [held],
  disturbed: Array.from({ length: disturbed }, (_, i) => `m${i}`),
  status: 'planned',
  ...{ cost, costWithEffort: cost, floor: 0.5, worstShare: 0.7 },
  total: { shim: cost, side: 0, axial: 0 },
  ...{ current: false, why: '' },
  ...more,
})

describe('fewer machines disturbed than the first choice has', () => {
  it('is the cheapest choice for each number of machines, one machine less first', () => {
    const rows = [
      row('a', 100, 4),
      row('b', 300, 2),
      row('c', 200, 2),
      row('d', 150, 3),
      row('e', 90, 4),
    ]
    expect(fewerDisturbed(rows).map(({ held }) => held[0])).toEqual(['d', 'c'])
  })

  it('leaves out what falls short of the chance asked for, unless the first does', () => {
    const short = { wanted: { share: 0.3, reached: false, all: 0.8 } }
    expect(fewerDisturbed([row('a', 100, 3), row('b', 90, 2, short)])).toEqual([])
    expect(fewerDisturbed([row('a', 100, 3, short), row('b', 90, 2, short)])).toHaveLength(1)
  })

  it('costs what is told where the train is planned with all the others fixed', () => {
    const train = example('five-in-a-line')
    const { rows, complete } = holdsOf(train, solver, { prices: false })
    const [first] = rows
    const [three, ...more] = fewerDisturbed(rows)
    if (!three || first?.cost === undefined) throw new Error('no fewer')
    expect([complete, first.disturbed.length, three.disturbed.length, more]).toEqual([
      true,
      4,
      3,
      [],
    ])
    const others = train.bodies.filter(({ id }) => !three.disturbed.includes(id))
    const alone = new PlanRun(
      holding(
        train,
        others.map(({ id }) => id),
      ),
      solver,
    ).plan()
    expect(alone.status).toBe('planned')
    if (alone.status !== 'planned') return
    expect(alone.cost / three.cost).toBeCloseTo(1, 6)
    const told = fewerText(train, { complete, rows })
    expect(told).toContain(`takes ${toldText(alone.cost, train.units)} of moves`)
    expect(told).toContain(`${toldText(alone.cost - first.cost, train.units)} more than the first`)
  })

  it('is said to be none where every choice was solved, and not that where some were not', () => {
    const train = example('bolt-bound-gearbox')
    const { rows } = holdsOf(train, solver, { prices: false })
    expect(fewerText(train, { complete: true, rows })).toBe(
      'No choice that works disturbs fewer than 3 machines.',
    )
    expect(fewerText(train, { complete: false, rows })).toMatch(/^None of the choices told /)
    expect(fewerText(train, { complete: true, rows: [row('a', 100, 1)] })).toBe('')
  })
})
