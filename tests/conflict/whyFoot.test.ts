import { PlanRun } from '../../src/engine/plan/planRun'
import { describe, expect, it } from 'vitest'
import { whyFoot } from '../../src/engine/studies/why/whyFoot'
import { limitWords } from '../../src/engine/plan/limitWords'
import type { WhyFoot } from '../../src/engine/studies/why/whyFootSentence'
import { mustPlan, planRead } from '../planned'
import type { TrainDocument } from '../../src/document/schema'
import { glpkSolver } from '../../src/solvers/glpk'
import { fourFeet, given, twoMachines } from '../second/pairs'
import type { Foot } from '../second/train'
import { example, trainOf } from './examples'

const solver = await glpkSolver()

function why(
  document: unknown,
  body: string,
  foot: string,
  way: 'shim' | 'slide',
  step?: number,
): WhyFoot {
  const found = whyFoot(
    new PlanRun(trainOf(document), solver),
    { body, foot, way },
    step === undefined ? {} : { step },
  )
  if (!found) throw new Error(`nothing to say of foot ${foot}`)
  return found
}

/** 100 um too low by an offset of 10: the near pair goes up by 90 / 1.9, the far pair stays. */
const low = (far: Partial<Foot> = {}) =>
  twoMachines({ offset: 10 }, [given(0, -100)], {
    feet: fourFeet().map((f) => (f.x === 2000 ? { ...f, ...far } : f)),
  })

describe('worked by hand: 47.37 um at the near pair', () => {
  const found = why(low(), 'B', '1000a', 'shim', 20)

  it('is what the plan does', () => {
    expect(found.move).toBeCloseTo(90 / 1.9, 4)
    expect(found.planShare).toBeCloseTo(1, 4)
    expect(found.planCost).toBeCloseTo(180 / 1.9, 4)
  })

  it('20 less leave 40 for the far pair, down: 30 um off, three times the tolerance', () => {
    expect(found.worstShare).toBeCloseTo((100 - (90 - 38) - 0.9 * 20) / 10, 4)
    expect(found.worstAt).toEqual({ coupling: 'c', state: 'cold' })
  })

  it('to stay within it the far pair would go down by 38 / 0.9', () => {
    expect(found.cost).toBeCloseTo(2 * (90 / 1.9 - 20 + 38 / 0.9), 3)
  })

  it('is held there by that coupling', () => {
    expect(
      found.holders.map((holder) => {
        const { limit, where } = limitWords(trainOf(low()), holder)
        return `${where}: ${limit}`
      }),
    ).toEqual(['Motor to Pump, cold, in height: offset'])
    expect(found.sentence).toBe(
      'Foot 1000a of the pump gets 47 µm of shim. With 20 µm less and no more moves in all, the tightest coupling would use 300 % of its tolerance instead of 100 % (Motor to Pump, cold). To keep to 100 % would take 44 µm more moves in all. What holds it there: Motor to Pump, cold, in height (offset).',
    )
  })
})

describe('with only 10 um to come out under the far pair', () => {
  const found = why(low({ pack: { now: 1000, min: 990 } }), 'B', '1000b', 'shim', 20)

  it('39 um are left, and no plan keeps the tolerance', () => {
    expect(found.worstShare).toBeCloseTo((100 - (90 - 38) - 0.9 * 10) / 10, 4)
    expect(found.cost).toBeNull()
    expect(found.sentence).toContain('No plan then keeps to 100 %.')
  })

  it('and that pack holds it there as well', () => {
    const limits = found.holders.map((holder) =>
      'coupling' in holder
        ? [holder.what, holder.coupling]
        : [holder.kind === 'foot' ? holder.limit : holder.kind, holder.body],
    )
    expect(limits).toContainEqual(['offset', 'c'])
    expect(limits).toContainEqual(['minimum pack', 'B'])
  })
})

it('says nothing of a foot that stays, of a foot that is not there, or without a plan', () => {
  const ask = (document: unknown, foot: string) =>
    whyFoot(new PlanRun(trainOf(document), solver), { body: 'B', foot, way: 'shim' })
  expect(ask(low(), '2000a')).toBeUndefined()
  expect(ask(low(), 'nowhere')).toBeUndefined()
  expect(ask({ ...low(), plan: { share: 1e-9 } }, '1000a')).toBeDefined()
  expect(ask(twoMachines({ offset: 10 }, [given(0, 0)]), '1000a')).toBeUndefined()
  expect(
    whyFoot(new PlanRun(trainOf(example('bolt-bound-gearbox', ['gear'])), solver), {
      body: 'turbine',
      foot: '1 lake',
      way: 'shim',
    }),
  ).toBeUndefined()
})

describe('in the examples', () => {
  const document = example('base-bound-motor', ['pump'])
  const train = trainOf(document)
  const feet = train.bodies.flatMap(({ id, feet: all }) =>
    all.map((foot) => [id, foot.id] as const),
  )

  /** The document with the pack of one foot limited as the question limits it. */
  const limited = (body: string, foot: string, { move, step }: WhyFoot): TrainDocument => ({
    ...document,
    machines: document.machines.map((machine) => ({
      ...machine,
      feet: machine.feet.map((at) => {
        if (machine.id !== body || at.id !== foot || !at.pack) return at
        const { now } = at.pack
        const end = now + move - Math.sign(move) * step
        return { ...at, pack: { ...at.pack, ...(move > 0 ? { max: end } : { min: end }) } }
      }),
    })),
  })

  it('a step less costs what planning with that limit in the file costs, at every foot', () => {
    let asked = 0
    for (const [body, foot] of feet) {
      const found = whyFoot(new PlanRun(train, solver), { body, foot, way: 'shim' })
      if (!found) continue
      asked += 1
      const plan = planRead(trainOf(limited(body, foot, found)), solver)
      expect(found.cost, found.sentence).toBeCloseTo(mustPlan(plan).cost, 1)
      expect(found.worstShare).toBeGreaterThanOrEqual(found.planShare - 1e-6)
      expect(found.holders.length).toBeGreaterThan(0)
    }
    expect(asked).toBeGreaterThan(6)
  })

  it('a slide says toward which side', () => {
    expect(why(document, 'fluid-drive', '1 stairs', 'slide').sentence).toMatch(
      /^Foot 1 stairs of the fluid drive slides \d+ µm toward the boiler\./,
    )
  })
})
