import { describe, expect, it } from 'vitest'
import { withCatenaryAim } from '../../src/document/edits/catenaryEdits'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { gapAndOffsetSaid, rotorSaid } from '../../src/language/catenaryWords'
import { slopeOfGap } from '../../src/mechanics/rotorSag'
import { PlanningRun } from '../../src/engine/planningRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { planText } from '../../src/text/planText'
import { twoMachines } from '../second/pairs'

const solver = await glpkSolver()

/** A gap set and a rim set of shafts that are found in line and parallel; faces of 400 mm. */
const found = [
  {
    kind: 'rim' as const,
    rides: 'right' as const,
    at: 100,
    sag: 0,
    readings: [12, 3, 6, 9].map((h): [number, number] => [h, 0]),
  },
  {
    kind: 'gap' as const,
    diameter: 400,
    readings: [12, 3, 6, 9].map((h): [number, number] => [h, 5000]),
  },
]
const inLine = (more: object = {}): TrainDocument =>
  twoMachines(
    { offset: 2, angle: 0.01 },
    found,
    {},
    {},
    {
      left: { machine: 'A', plane: 100 },
      right: { machine: 'B', plane: 100 },
      ...more,
    },
  )

const run = (document: TrainDocument): PlanningRun => {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return new PlanningRun(read, solver)
}

describe('gap and offset wanted of a rigid coupling', () => {
  it('what is planned shows them: the feelers at the bottom, the dial half of its run, on the right side', () => {
    const line = { offset: 40, slope: slopeOfGap(60, 400) }
    const plan = run(withCatenaryAim(inLine(), 0, line, 'the maker')).plan()
    if (plan.status !== 'planned') throw new Error(plan.status)
    const [rim, gap] = plan.expected
    const shown = (set: typeof rim, hour: number) =>
      (set && 'readings' in set ? set.readings.find(([h]) => h === hour)?.[1] : undefined) ?? NaN
    // open by 60 um more at the bottom, within what angle and share leave: 0.01 mrad over 400 mm
    expect(Math.abs(shown(gap, 6) - shown(gap, 12) - 60)).toBeLessThanOrEqual(4.001)
    // the right rim 40 um high: its dial shows 40 more pressed at the top, so -80 at the bottom
    expect(Math.abs(shown(rim, 6) - shown(rim, 12) + 80)).toBeLessThanOrEqual(4.001)
  })

  it('keeps what was wanted sideways, tells why, and stands in every state', () => {
    const states = [
      { id: 'cold', name: 'cold' },
      { id: 'hot', name: 'hot' },
    ]
    const before = { ...inLine({ aim: { hot: { offset: { y: 5 } } } }), states }
    const after = withCatenaryAim(before, 0, { offset: -20, slope: -0.05 }, 'by weight')
    const aim = after.couplings[0]?.aim
    expect(aim?.['hot']).toEqual({
      offset: { y: 5, z: -20 },
      slope: { z: -0.05 },
      why: 'by weight',
    })
    expect(aim?.['cold']).toEqual({ offset: { z: -20 }, slope: { z: -0.05 }, why: 'by weight' })
    const asked = run(after)
    expect(planText(asked.train, asked.plan()).replace(/\s+/g, ' ')).toContain('(by weight)')
  })

  it('run-out is a record: it is told, one over its limit is found, and no plan changes by it', () => {
    const runOut = { left: { rim: 60 }, right: { face: 10 }, limit: 50, basis: 'site' }
    const [with_, without] = [run(inLine({ runOut })), run(inLine())]
    const [plan, other] = [with_.plan(), without.plan()]
    expect(plan.findings.map(({ where }) => where)).toContain('couplings[0].runOut')
    expect({ ...plan, findings: [] }).toEqual({ ...other, findings: [] })
    const text = planText(with_.train, plan).replace(/\s+/g, ' ')
    expect(text).toContain('60 µm at the rim of the half of the motor')
    expect(text).toContain('at most 50 µm (site)')
  })

  it('says which way faces stand open, and how an end hangs', () => {
    const units = { length: 'mm', fine: 'um', temperature: 'C' } as const
    expect(gapAndOffsetSaid({ offset: 40, slope: 0.15 }, 400, units)).toBe(
      'the right one 40 µm above the left one, faces open by 60 µm more at the bottom than opposite',
    )
    expect(gapAndOffsetSaid({ offset: 0, slope: -0.15 }, 400, units)).toContain(
      '60 µm more at the top',
    )
    expect(rotorSaid('the left rotor', { rise: -12, slope: -0.2 }, units)).toBe(
      'the end of the left rotor lies 12 µm below the line through its bearings, falling 0.20 mrad toward the coupling',
    )
  })
})
