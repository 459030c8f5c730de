import { describe, expect, it } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { atChance } from '../../src/engine/atChance'
import { PlanRun } from '../../src/engine/plan/planRun'
import { sureHolds } from '../../src/engine/sureHolds'
import type { RankedHold } from '../../src/engine/studies/holds/holdRows'
import { holdsJson } from '../../src/json/holdsJson'
import { holdsText } from '../../src/text/holdsText'
import { glpkSolver } from '../../src/solvers/glpk'
import type { Train } from '../../src/mechanics/train'
import { exampleFile, holding, read } from './choice'

const solver = await glpkSolver()

function asking(name: string, chance: number): Train {
  const file = exampleFile(name) as TrainDocument
  return read({ ...file, plan: { ...file.plan, sure: { chance, draws: 2000 } } })
}

const ids = ({ held }: RankedHold) => held.join(' ')

describe('holds of a train that asks for a chance', () => {
  const train = asking('piped-compressor', 0.6)
  const { rows } = sureHolds(train, solver, { prices: false })
  const planned = rows.filter(({ cost }) => cost !== undefined)

  it('plan each choice at the share at which a file with that choice is planned', () => {
    expect(planned.length).toBeGreaterThan(3)
    for (const row of planned.filter(({ current }) => !current).slice(0, 1)) {
      const at = atChance(holding(train, row.held), solver)
      expect(at.wanted?.reached, ids(row)).toBe(true)
      expect(row.wanted?.share, ids(row)).toBeCloseTo(at.wanted?.share ?? NaN, 9)
      const plan = new PlanRun(at.train, solver).plan()
      if (plan.status !== 'planned') throw new Error(`${ids(row)} is ${plan.status}`)
      expect(row.cost, ids(row)).toBeCloseTo(plan.cost, 3)
    }
  })

  it('reach it with each choice that says so, and cost more than at the share asked for', () => {
    const shares = new Set(planned.map(({ wanted }) => wanted?.share))
    expect(shares.size).toBeGreaterThan(1)
    const { rows: plain } = sureHolds({ ...train, plan: { ...train.plan, sure: sureless } }, solver)
    for (const row of planned) {
      expect(row.sure?.all?.chance).toBeGreaterThanOrEqual(0.6)
      const before = plain.find((one) => ids(one) === ids(row))
      expect(row.cost).toBeGreaterThanOrEqual((before?.cost ?? Infinity) - 1e-3)
    }
  })

  it('are told with their shares', () => {
    const json = holdsJson({ complete: true, rows }, train) as { sure: { wanted: object } }[]
    expect(json[0]?.sure.wanted).toMatchObject({ chance: 0.6, reached: true, asked: 0.7 })
    const text = holdsText(train, { complete: true, rows }).replace(/\s+/g, ' ')
    expect(text).toContain(
      'within: the largest tolerance used at which a choice is found to be 60 % sure',
    )
  })

  it('stand last, the likeliest first, where none reaches it', () => {
    const train = asking('bolt-bound-gearbox', 0.9)
    const { rows } = sureHolds(train, solver, { prices: false })
    const known = rows.filter(({ cost }) => cost !== undefined)
    expect(known.length).toBeGreaterThan(1)
    const chances = known.map(({ wanted, sure }) => {
      expect(wanted?.reached).toBe(false)
      expect(wanted?.all).toBe(sure?.all?.chance)
      return wanted?.all ?? NaN
    })
    expect(chances).toEqual([...chances].sort((a, b) => b - a))
    expect(holdsText(train, { complete: true, rows }).replace(/\s+/g, ' ')).toContain(
      'none reaches 90 %, each stands at its best',
    )
  })
})

const sureless = { draws: 2000, seed: 1 }
