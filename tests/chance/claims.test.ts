import { beforeAll, describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import type { SureAnswer } from '../../src/engine/chance/answer'
import { PlanningRun } from '../../src/engine/planningRun'
import type { Solver } from '../../src/engine/lp/solver'
import { sureSentence } from '../../src/engine/chance/sentence'
import { glpkSolver } from '../../src/solvers/glpk'
import { exampleFile as fileOf } from '../holds/choice'
import { isWhole } from '../counts'

const exampleFile = (name: string) => fileOf(name) as TrainDocument
let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

/** The example without a store of shims, so that the plan itself is what is told. */
function train(name: string, change: (document: TrainDocument) => void = () => undefined) {
  const document = structuredClone(exampleFile(name))
  delete document.plan?.shims
  change(document)
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return new PlanningRun(read, solver)
}
/** Without the plans along the trade-off, which take longer. */
const sureOf = (run: PlanningRun): SureAnswer => run.sureBeside([]).plan
const buyOf = ({ buys = [] }: SureAnswer, what: string, where: string) =>
  buys.find((buy) => buy.what === what && buy.where === where)
/** Enough that the plan itself stays: uncertainties weigh no reading here, since all sets keep one u. */
const motions = (run: PlanningRun) => run.motions()

describe('what would add to the chance, entered and worked out again', () => {
  it('growth that is known exactly', () => {
    const before = train('piped-compressor')
    const told = buyOf(sureOf(before), 'growth', 'gear')
    const after = train('piped-compressor', (document) => {
      for (const points of Object.values(document.machines[1]?.growth ?? {}))
        for (const point of points) point.u = 0
    })
    expect(motions(after)).toEqual(motions(before))
    expect(told?.exact).toBeGreaterThan(sureOf(before).all?.chance ?? 1)
    expect(sureOf(after).all?.chance).toBe(told?.exact)
  })

  it('readings, and a bracket, half as unsure', () => {
    const before = sureOf(train('piped-compressor'))
    const [first] = exampleFile('piped-compressor').couplings
    const readings = train('piped-compressor', (document) => {
      for (const set of document.couplings[0]?.found ?? []) {
        set.u = 5
        if (set.kind === 'rim') set.uAt = 0.5
      }
    })
    expect(sureOf(readings).all?.chance).toBe(buyOf(before, 'readings', first?.id ?? '')?.halved)
    const brackets = train('piped-compressor', (document) => {
      for (const set of document.couplings[0]?.found ?? []) if (set.kind === 'rim') set.uSag = 5
    })
    expect(sureOf(brackets).all?.chance).toBe(buyOf(before, 'brackets', first?.id ?? '')?.halved)
  })

  it('the work and the places of feet, exact: read again and trimmed leaves both out', () => {
    const run = train('piped-compressor')
    const before = sureOf(run)
    const exact = sureOf(
      train('piped-compressor', (document) => {
        document.plan = { ...document.plan, sure: { shim: 0, slide: 0 } }
      }),
    )
    expect(exact.all?.chance).toBe(buyOf(before, 'work', '')?.exact)
    const nothing = sureOf(
      train('piped-compressor', (document) => {
        document.plan = { ...document.plan, sure: { shim: 0, slide: 0, foot: 0 } }
      }),
    )
    expect(nothing.all?.chance).toBe(before.reread?.chance)
    expect(nothing.all?.chance).toBeGreaterThan(before.all?.chance ?? 1)
  })

  it('a closer plan, planned at its share', () => {
    const run = train('piped-compressor')
    const closer = buyOf(run.sure().plan, 'a closer plan', '')
    const best = run.along().reduce((a, b) => (b.all > a.all ? b : a))
    expect(best.all).toBe(closer?.exact)
    const again = train('piped-compressor', (document) => {
      document.plan = { ...document.plan, share: best.share }
    })
    const [plan, closest] = [run.plan(), again.plan()]
    if (plan.status !== 'planned' || closest.status !== 'planned') throw new Error('no plan')
    expect(closest.cost - plan.cost).toBeCloseTo(closer?.cost ?? NaN, 3)
    // plans of one cost may differ, and their chances by a little
    expect(Math.abs((sureOf(again).all?.chance ?? 0) - best.all)).toBeLessThan(0.02)
  })

  it('every uncertainty half as large is told as such', () => {
    const run = train('pump-and-motor')
    const { half, double, all } = sureOf(run)
    expect(half).toBeGreaterThan(all?.chance ?? 1)
    expect(double).toBeLessThan(all?.chance ?? 0)
  })
})

describe('a closer plan beside one that is rounded', () => {
  it.runIf(isWhole)('is told as it is rounded itself, and not where that is over its share', () => {
    const told = { as: 0, not: 0 }
    for (const name of [
      'piped-compressor',
      'bolt-bound-gearbox',
      'five-in-a-line',
      'skid-as-one',
    ]) {
      const document = exampleFile(name)
      const read = readTrain(document)
      if (!read.ok) throw new Error(JSON.stringify(read.refused))
      const run = new PlanningRun(read, solver)
      const { rounded } = run.sure()
      const best = run.along().reduce((a, b) => (b.all > a.all ? b : a))
      if (!rounded || best === run.along()[0]) continue
      const closer = buyOf(rounded, 'a closer plan', '')
      const again = readTrain({ ...document, plan: { ...document.plan, share: best.share } })
      if (!again.ok) throw new Error('refused')
      const there = new PlanningRun(again, solver)
      const [made, now] = [there.rounding(), run.rounding()]
      if (made?.status === 'rounded' && now && now.status !== 'no rounding') {
        told.as++
        expect(closer?.cost).toBeCloseTo(made.cost - now.cost, 6)
        expect(closer?.exact).toBe(there.sureBeside([]).rounded?.all?.chance)
      } else {
        told.not++
        expect(closer).toBeUndefined()
      }
    }
    expect(told.not).toBeGreaterThan(0)
    expect(told.as + told.not).toBeGreaterThan(1)
  })
})

describe('a move that no dial shows', () => {
  it('is no closer plan: it would be counted as done without an error', () => {
    const run = train('leave-it-alone', (document) => {
      document.plan = { ...document.plan, share: 1 }
    })
    const still = sureOf(run).all?.chance ?? 0
    for (const one of run.along()) if (one.cost > 0) expect(one.cost).toBeGreaterThan(0.1)
    expect(still).toBeGreaterThan(0.9)
  })
})

describe('a chance that is asked for', () => {
  const asking = (chance: number, name = 'piped-compressor') =>
    train(name, (document) => {
      document.plan = { ...document.plan, sure: { chance } }
    })

  it('is reached by the cheapest plan along the curve that does', () => {
    const free = train('piped-compressor')
    const now = sureOf(free).all?.chance ?? 0
    const run = asking(now + 0.05)
    const sure = sureOf(run)
    expect(sure.wanted).toMatchObject({ chance: now + 0.05, reached: true, asked: 0.7 })
    expect(sure.all?.chance).toBeGreaterThanOrEqual(now + 0.05)
    const share = sure.wanted?.share ?? 0
    expect(share).toBeLessThan(0.7)
    // one step wider does not reach it
    const wider = train('piped-compressor', (document) => {
      document.plan = { ...document.plan, share: share + 0.005 }
    })
    expect(sureOf(wider).all?.chance).toBeLessThan(now + 0.05)
    expect(sureSentence(run.train, sure)).toContain('it keeps to')
  })

  it('takes the plan as it is where that reaches it', () => {
    expect(sureOf(asking(0.3)).wanted).toEqual({
      chance: 0.3,
      reached: true,
      share: 0.7,
      asked: 0.7,
    })
  })

  it.runIf(isWhole)('takes the best there is where none reaches it, and says so', () => {
    const run = asking(0.99)
    const sure = sureOf(run)
    expect(sure.wanted?.reached).toBe(false)
    const best = Math.max(
      ...train('piped-compressor')
        .along()
        .map(({ all }) => all),
    )
    expect(Math.abs((sure.all?.chance ?? 0) - best)).toBeLessThan(0.02)
    expect(sureSentence(run.train, sure)).toContain('is not reached at 70 % of tolerance or less')
  })

  it.runIf(isWhole)(
    'is told as it was entered, never as 100 %; a share that was taken for it is not called asked for',
    () => {
      const told = sureSentence(asking(0.999999).train, sureOf(asking(0.999999)))
      expect(told).toContain('The 99.9999 % asked for is not reached')
      const run = train('piped-compressor', (document) => {
        document.plan = { ...document.plan, share: 0.9, guard: 0.2, sure: { chance: 0.7 } }
      })
      const [guard] = run.plan().findings.filter(({ where }) => where === 'plan.guard')
      const percent = `${Math.round(run.train.plan.share * 100)} %`
      expect(run.train.plan.share).toBeLessThan(0.9)
      expect(guard?.what).toContain(`${percent} of tolerance is taken for the chance asked for`)
    },
  )
})
