import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import type { Coupling, ReadingSet, Train } from '../second/train'
import { randomSureTrain } from '../second/randomSure'
import { plannedSure } from './sureAnswer'
import { isWhole } from '../counts'

const seeds = Array.from({ length: 3 }, (_, i) => 301 + i)

/** The uncertainties that a set leaves out and has a use for, by the contract's table. */
function leftOut(set: ReadingSet): string[] {
  if (set.use === false) return []
  if (set.kind === 'line') {
    const { offset = {}, slope = {} } = set
    const gives = (pair: { y?: number | undefined; z?: number | undefined }) =>
      pair.y !== undefined || pair.z !== undefined
    return [
      ...(set.u === undefined && gives(offset) ? ['u'] : []),
      ...(set.uSlope === undefined && gives(slope) ? ['uSlope'] : []),
    ]
  }
  const place = set.kind === 'rim' ? 'uAt' : 'uDiameter'
  const fields = ['u', place, ...(set.kind === 'gap' ? [] : ['uSag'])]
  return fields.filter((field) => !(field in set))
}

const ofCoupling = (c: Coupling, i: number): string[] => [
  ...c.found.flatMap((set, k) =>
    leftOut(set).map((field) => `couplings[${i}].found[${k}].${field}`),
  ),
  ...(c.axial && c.axial.u === undefined ? [`couplings[${i}].axial.u`] : []),
]

/** What is assumed of the work: only where some is done. */
const ofWork = ({ plan }: Train): string[] =>
  (['shim', 'slide', 'foot'] as const)
    .filter((what) => plan?.sure?.[what] === undefined)
    .map((what) => `plan.sure.${what}`)

test.runIf(isWhole)(
  'every uncertainty of readings and work that nobody entered is told, and no other',
  async () => {
    const solver = await glpkSolver()
    const wrong: string[] = []
    let told = 0
    for (const seed of seeds) {
      const train = randomSureTrain(seed)
      const { status, sure } = plannedSure(train, solver)
      const places = (sure?.assumed ?? []).map(({ where }) => where)
      const readings = train.couplings.flatMap(ofCoupling)
      const work = status === 'planned' ? ofWork(train) : []
      told += readings.length
      for (const where of readings)
        if (!places.includes(where)) wrong.push(`seed ${seed}: ${where} is not told`)
      // a default of the work is used only where something does that work: it need not be told
      for (const where of places)
        if (/^(couplings|plan)/.test(where) && ![...readings, ...work].includes(where))
          wrong.push(`seed ${seed}, ${status}: ${where} is told and not used`)
    }
    expect(wrong).toEqual([])
    expect(told).toBeGreaterThan(20)
  },
)
