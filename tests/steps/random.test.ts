import { expect, it } from 'vitest'
import { planRead, planTrain, stepsFor } from '../planned'
import { stepsJson } from '../../src/json/stepsJson'
import { readTrain } from '../../src/document/readTrain'
import { solver } from '../engine/pair'
import { counted } from '../counts'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import type { TrainFile } from './contract'
import { followed, withStop } from './followed'

const count = counted(20, 400, 40)
const start = Number(process.env['HOLDFAST_SEED'] ?? 5000)

/** The order of steps alone is asked for here: hardly any lift to change packs, which `poses.test.ts` looks at. */
function drawn(seed: number): ReturnType<typeof randomTrain> {
  const file = randomTrain(seed)
  const slip = 1e-3 / { um: 1, mm: 1000, mil: 25.4 }[file.units.fine]
  return { ...file, plan: { ...file.plan, slip } }
}

/** Numbers are typed in the file's units; a limit may be passed by 1e-3 um in a plan. */
const allowed = { um: 3e-3, mm: 3e-6, mil: 1.2e-4 }

it(
  `on ${count} random trains the steps keep every limit, or say what they pass as other code finds it`,
  { timeout: 600_000 },
  () => {
    const seen = { plans: 0, steps: 0, stops: 0, portions: 0, breaks: 0 }
    for (let seed = start; seed < start + count; seed++) {
      const file = drawn(seed)
      const answer = planTrain(file, solver, { reasons: false, prices: false })
      if ('refused' in answer || !answer.steps || answer.status !== 'planned') continue
      const { steps } = answer
      const { by, what, step, standing, untold } = followed(file as unknown as TrainFile, steps)
      const slack = allowed[file.units.fine]
      const worst = Math.max(
        0,
        // an end too far ahead of the other is no limit of where a body stands: `poses.test.ts` looks at it
        ...steps.breaks
          .filter(({ limit, unit }) => limit !== 'stage' && !/mrad|in$/.test(unit))
          .map((one) => one.by),
      )
      if (steps.breaks.length === 0)
        expect({ seed, what, step, by: Math.max(0, by - slack) }).toMatchObject({ by: 0 })
      else if (steps.breaks.every(({ unit }) => !/mrad|in$/.test(unit)))
        expect(Math.abs(by - worst), `${seed} ${what}`).toBeLessThan(slack)
      for (const { id, move } of answer.bodies ?? [])
        for (const [key, value] of Object.entries({ ...move }))
          expect(standing.get(id)?.[key as keyof typeof move] ?? 0).toBeCloseTo(value, 1)
      expect(untold, `${seed}`).toBeLessThan(slack)
      seen.plans++
      seen.steps += steps.order.length
      seen.stops += steps.steps.filter(({ stops }) => (stops?.count ?? 1) > 1).length
      seen.portions += steps.order.some((id) => /:\d+$/.test(id)) ? 1 : 0
      seen.breaks += steps.breaks.length > 0 ? 1 : 0
    }

    console.log(`seeds ${start} to ${start + count - 1}`, seen)
    expect(seen.plans).toBeGreaterThan(count / 4)
    expect(seen.stops).toBeGreaterThan(0)
    // the few that pass something on the way must stay few: a flange between rows that rise and fall, for the most part
    expect(seen.breaks).toBeLessThanOrEqual(seen.plans / 4)
  },
)

it(
  `on ${count} random trains worked in any order, what is passed is said, and every stop that is proposed keeps it`,
  { timeout: 600_000 },
  () => {
    const seen = { orders: 0, breaks: 0, stops: 0, first: 0, turns: 0 }
    for (let seed = start; seed < start + count; seed++) {
      const file = drawn(seed)
      const answer = planTrain(file, solver, { reasons: false, prices: false })
      if ('refused' in answer || !answer.steps || answer.steps.order.length < 2) continue
      const random = new Random(seed)
      const order = answer.steps.order
        .map((id) => ({ id, at: random.between(0, 1) }))
        .sort((a, b) => a.at - b.at)
        .map(({ id }) => id)
      const read = readTrain({ ...file, record: { order } })
      if (!read.ok) throw new Error(JSON.stringify(read.refused))
      const told = stepsFor(read, planRead(read.train, solver, { prices: false }))
      if (!told) throw new Error(`${seed}: no steps`)
      const steps = stepsJson(told, read.train.units)
      const other = file as unknown as TrainFile
      const slack = allowed[file.units.fine]
      const { by, what, step } = followed(other, steps)
      seen.orders++
      if (steps.breaks.length === 0) {
        expect({ seed, what, step, by: Math.max(0, by - slack) }).toMatchObject({ by: 0 })
        continue
      }
      seen.breaks++
      expect(by, `${seed} says that ${steps.breaks[0]?.where ?? ''} is passed`).toBeGreaterThan(0)
      for (const { step: id, stop } of steps.breaks) {
        if (!stop) continue
        if (stop.pieces !== undefined) {
          seen.turns++
          continue
        }
        seen[stop.part > 0 ? 'stops' : 'first']++
        const { by: passed, what: where } = withStop(other, steps, id, stop)
        expect({ seed, id, where, by: Math.max(0, passed - slack) }).toMatchObject({ by: 0 })
      }
    }
    console.log(`seeds ${start} to ${start + count - 1}`, seen)
    expect(seen.orders).toBeGreaterThan(count / 8)
  },
)
