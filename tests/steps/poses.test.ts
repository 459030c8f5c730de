import { expect, it } from 'vitest'
import { planRead, planTrain, stepsFor } from '../planned'
import { readTrain } from '../../src/document/readTrain'
import { at, solver } from '../engine/pair'
import { randomTrain } from '../second/randomTrain'
import type { TrainFile } from './contract'
import { onJacks } from './onJacks'

const count = process.env['HOLDFAST_LONG'] === '1' ? 300 : 6
const start = Number(process.env['HOLDFAST_SEED'] ?? 7000)

/** What 12 digits and what a plan may pass a limit by come to. */
const allowed = { um: 5e-3, mm: 5e-6, mil: 2e-4 }

it(
  `of ${count} random trains with a plan every pose keeps what bounds it, or the step says what is passed as other code finds it`,
  { timeout: 1_800_000 },
  () => {
    const seen = { plans: 0, lifts: 0, turns: 0, poses: 0, breaks: 0, freed: 0, ms: 0 }
    // as many trains as there are plans of, not as were drawn
    let seed = start
    for (; seen.plans < count; seed++) {
      const drawn = randomTrain(seed)
      const um = { um: 1, mm: 1000, mil: 25.4 }[drawn.units.fine]
      // room over the packs from next to nothing, which small random limits leave, to the usual millimetre
      const slip = [20, 100, 300, 1000][seed % 4] ?? 1000
      const file = { ...drawn, plan: { ...drawn.plan, slip: slip / um } }
      const began = performance.now()
      const answer = planTrain(file, solver, { reasons: false, prices: false })
      seen.ms += performance.now() - began
      if ('refused' in answer || !answer.steps || answer.status !== 'planned') continue
      seen.plans++
      const slack = allowed[file.units.fine]
      const steps = answer.steps.steps
      for (const one of onJacks(file as unknown as TrainFile, answer.steps)) {
        const step = steps.find(({ id }) => id === one.step)
        const label = `${seed} ${one.step} ${one.what}`
        const breaks = step?.breaks ?? []
        for (const value of [one.lacks, one.below, one.ends, one.told])
          expect(value, label).toBeLessThan(slack)
        const told = breaks.find(({ limit }) => limit === 'stage')?.by ?? 0
        expect(Math.abs(one.ahead - told), label).toBeLessThan(slack)
        const others = breaks.filter(({ limit }) => limit !== 'stage')
        if (others.length === 0 && one.by > slack) {
          // a step before it told what it left passed, and this one makes it no worse
          expect([one.what, one.by], label).toEqual([one.stood.what, one.stood.by])
          const before = steps.slice(0, steps.indexOf(step ?? at(steps, 0)))
          const most = Math.max(0, ...before.flatMap((past) => past.breaks.map(({ by }) => by)))
          expect(one.by, label).toBeLessThan(most + slack)
        }
        if (others.length > 0 && others.every(({ unit }) => !/mrad|in$/.test(unit)))
          expect(one.by, label).toBeLessThan(Math.max(...others.map(({ by }) => by)) + slack)
        if (step?.feet.some(({ lift = 0 }) => lift > 0)) seen.lifts++
        seen.turns += step?.kind === 'vertical' && step.stops?.first !== 'together' ? 1 : 0
        seen.poses += step?.poses.length ?? 0
        seen.breaks += breaks.length > 0 ? 1 : 0
      }
      // the room that is told to be enough is: solved again with it, the step passes that no more
      for (const { step, limit, where, slip: less } of answer.steps.breaks) {
        if (less === undefined) continue
        const read = readTrain({ ...file, plan: { ...file.plan, slip: less } })
        if (!read.ok) throw new Error(JSON.stringify(read.refused))
        const again = stepsFor(read, planRead(read.train, solver, { prices: false }))
        const still = again?.breaks.filter((one) => one.step === step && one.limit === limit)
        expect(
          still?.filter((one) => one.where === where),
          `${seed} ${step}`,
        ).toEqual([])
        seen.freed++
      }
    }
    console.log(`seeds ${start} to ${seed - 1}`, seen)
    expect(seen.lifts).toBeGreaterThan(count / 2)
    expect(seen.turns).toBeGreaterThan(0)
  },
)
