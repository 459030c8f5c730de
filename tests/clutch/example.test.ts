import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { glpkSolver } from '../../src/solvers/glpk'
import { planTrain } from '../planned'

const solver = await glpkSolver()
const example = JSON.parse(readFileSync('examples/clutch.json', 'utf8')) as TrainDocument

function planOf(document: TrainDocument) {
  const answer = planTrain(document, solver, { reasons: false, prices: false })
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  return answer
}

/** Height and side (um) at a flex plane, where a straight line is given by a value at a place (mm) and its slope (mrad). */
const at = (plane: number, place: number, value: number, slope: number) =>
  value + slope * (plane - place)

test('its shares as found are those worked out by hand from its lines and its growth', () => {
  const [clutch, fixed] = planOf(example).asFound
  // Right against left, cold: 95 um high and 0.03 mrad up at x 2175, 85 um to 9 o'clock and 0.02 mrad to 3 o'clock. Hot the
  // expander rises 330 um at x 1500 and 390 at 300, the motor 65 at 2800 and 70 at 4100. Left flex plane x 1900, 550 mm apart.
  const up =
    at(1900, 2175, 95, 0.03) + at(1900, 2800, 65, 5 / 1300) - at(1900, 1500, 330, -60 / 1200)
  const side = at(1900, 2175, -85, 0.02) - 15
  // 0.4 mrad at each flex plane; readings are rounded to 5 um
  expect(clutch?.share['together']).toBeCloseTo(Math.hypot(up, side) / 550 / 0.4, 1.5)
  expect(Object.keys(clutch?.share ?? {})).toEqual(['together'])
  // the same at the other coupling, right flex plane x 4800, 350 mm apart, with the motor alone
  const risen =
    at(4800, 4625, 120, 0.05) + at(4800, 5200, 120, -20 / 1700) - at(4800, 2800, 75, 5 / 1300)
  const aside = at(4800, 4625, 75, -0.03)
  expect(fixed?.share['motor-alone']).toBeCloseTo(Math.hypot(risen, aside) / 350 / 0.4, 1.5)
})

test('judged in both states it has no plan: what is right hot is too far off while the expander stands', () => {
  expect(planOf(example).status).toBe('planned')
  const engaged = example.couplings.map(({ disengaged: _, ...coupling }) => coupling)
  const answer = planOf({ ...example, couplings: engaged })
  expect(answer.status).toBe('impossible')
  // At its left flex plane the two states lie as far apart as expander and motor grow between them. The motor can go to
  // where both are half of that out, 550 mm from the other plane, and nothing is better for both.
  const apart = Math.hypot(
    at(1900, 1500, 330, -60 / 1200) - at(1900, 2800, 65, 5 / 1300) + at(1900, 2800, 75, 5 / 1300),
    15,
  )
  expect(answer.floor).toBeCloseTo(apart / 2 / 550 / 0.4, 6)
})
