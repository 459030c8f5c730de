import { expect, it } from 'vitest'
import { planTrain } from '../../src/engine/planTrain'
import { solver } from '../engine/pair'
import { randomTrain } from '../second/randomTrain'
import type { TrainFile } from './contract'
import { followed } from './followed'

const count = process.env['HOLDFAST_LONG'] === '1' ? 400 : 60
const start = Number(process.env['HOLDFAST_SEED'] ?? 5000)

/** Numbers are typed in the file's units; a limit may be passed by 1e-3 um in a plan. */
const allowed = { um: 3e-3, mm: 3e-6, mil: 1.2e-4 }

it(
  `on ${count} random trains the steps keep every limit, or say what they pass as other code finds it`,
  { timeout: 600_000 },
  () => {
    const seen = { plans: 0, steps: 0, stops: 0, portions: 0, breaks: 0 }
    for (let seed = start; seed < start + count; seed++) {
      const file = randomTrain(seed)
      const answer = planTrain(file, solver, { reasons: false, prices: false })
      if ('refused' in answer || !answer.steps || answer.status !== 'planned') continue
      const { steps } = answer
      const { by, what, step, standing, untold } = followed(file as unknown as TrainFile, steps)
      const slack = allowed[file.units.fine]
      const worst = Math.max(
        0,
        ...steps.breaks.filter(({ unit }) => !/mrad|in$/.test(unit)).map((one) => one.by),
      )
      if (steps.breaks.length === 0)
        expect({ seed, what, step, by: Math.max(0, by - slack) }).toMatchObject({ by: 0 })
      else if (steps.breaks.every(({ unit }) => !/mrad|in$/.test(unit)))
        expect(Math.abs(by - worst), `${seed} ${what}`).toBeLessThan(slack)
      for (const { id, move } of answer.bodies ?? [])
        for (const [key, value] of Object.entries(move))
          expect(standing.get(id)?.[key as keyof typeof move] ?? 0).toBeCloseTo(value, 1)
      expect(untold, `${seed}`).toBeLessThan(slack)
      seen.plans++
      seen.steps += steps.order.length
      seen.stops += steps.steps.filter(({ stops }) => (stops?.count ?? 1) > 1).length
      seen.portions += steps.order.some((id) => /:\d+$/.test(id)) ? 1 : 0
      seen.breaks += steps.breaks.length > 0 ? 1 : 0
    }

    expect(seen.plans).toBeGreaterThan(count / 4)
    expect(seen.stops).toBeGreaterThan(0)
  },
)
