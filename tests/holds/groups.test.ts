import { expect, it } from 'vitest'
import { holdsOf } from '../../src/engine/studies/holds/holdRows'
import { holdGroups } from '../../src/text/holdGroups'
import { holdList } from '../../src/text/holdList'
import { glpkSolver } from '../../src/solvers/glpk'
import { example } from './choice'
import { firstOf } from '../counts'

const solver = await glpkSolver()

it('what is held now stands for all choices with its plan: the bedplate alone moves, and that is one row', () => {
  const train = example('skid-as-one')
  const { rows, complete } = holdsOf(train, solver, { prices: false })
  const [first] = holdList(train, { rows, complete }).shown
  expect(first?.current).toBe(true)
  expect(first?.held).toEqual(['turbine', 'gear', 'low-stage', 'high-stage'])
  expect(first?.why).toBe('')
  expect(first?.same).toHaveLength(3)
})

it('among others the choice that holds most stands for its plan, and no choice is lost', () => {
  for (const name of firstOf(
    ['bolt-bound-gearbox', 'leave-it-alone', 'skid-as-one', 'five-in-a-line'],
    2,
  )) {
    const { rows } = holdsOf(example(name), solver, { prices: false })
    const groups = holdGroups(rows)
    const plans = rows.filter(({ cost }) => cost !== undefined)
    expect(groups.flatMap(({ face, others }) => [face, ...others])).toHaveLength(plans.length)
    for (const { face, others, lead } of groups) {
      for (const { cost = NaN } of others)
        expect(Math.abs(cost - (face.cost ?? NaN))).toBeLessThanOrEqual(1e-6 * (face.cost ?? NaN))
      expect(plans.indexOf(lead)).toBe(
        Math.min(...[face, ...others].map((row) => plans.indexOf(row))),
      )
      if (!face.current)
        for (const other of others) expect(other.held.length).toBeLessThanOrEqual(face.held.length)
    }
  }
})
