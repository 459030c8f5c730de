import { expect, it } from 'vitest'
import { planRead, stepsFor } from '../planned'
import { readTrain } from '../../src/document/readTrain'
import type { Train } from '../../src/mechanics/train'
import { counted } from '../counts'
import { solver } from '../engine/pair'
import { randomTrain } from '../second/randomTrain'

const count = counted(5, 300, 24)
const start = Number(process.env['HOLDFAST_SEED'] ?? 61_000)

/** A train without what is told to be taken away: flanges loose, bolts long enough, no limit of tilt or of being ahead. */
const loosened = (train: Train, gone: (limit: string, where: string) => boolean): Train => ({
  ...train,
  bodies: train.bodies.map(({ tilt, ...body }) => ({
    ...body,
    ...(tilt !== undefined && !gone('tilt', body.name) && { tilt }),
    restraints: body.restraints.filter(({ id }) => !gone('restraint', `${body.name}, ${id}`)),
    feet: body.feet.map(({ lift, ...foot }) => ({
      ...foot,
      ...(lift !== undefined && !gone('lift', `${body.name}, foot ${foot.id}`) && { lift }),
    })),
  })),
  plan: { ...train.plan, stage: gone('stage', '') ? 1e9 : train.plan.stage },
})

it(
  `on ${count} random trains a step whose limits are freed as it tells passes none of them, and alone where it tells that`,
  { timeout: 600_000 },
  () => {
    const seen = { breaks: 0, alone: 0, together: 0 }
    for (let seed = start; seed < start + count; seed++) {
      const drawn = randomTrain(seed)
      const um = { um: 1, mm: 1000, mil: 25.4 }[drawn.units.fine]
      const slip = ([20, 100, 300, 1000][seed % 4] ?? 1000) / um
      const read = readTrain({ ...drawn, plan: { ...drawn.plan, slip } })
      if (!read.ok) continue
      const plan = planRead(read.train, solver, { prices: false })
      if (plan.status !== 'planned') continue
      const told = stepsFor(read, plan)?.breaks ?? []
      const lifted = told.filter(({ instead }) => /Or |Less room/.test(instead))
      for (const one of lifted) {
        const same = lifted.filter(({ step }) => step === one.step)
        // keys and pieces of the way beside the lift are freed by other words
        if (!same.every(({ limit }) => /restraint|lift|tilt|stage/.test(limit))) continue
        const alone = !one.instead.includes('every other limit')
        expect(alone, `${seed} ${one.step}`).toBe(same.length === 1)
        const gone = alone ? [one] : same
        const train = loosened(read.train, (limit, where) =>
          gone.some((g) => g.limit === limit && (limit === 'stage' || g.where.startsWith(where))),
        )
        const left = stepsFor({ ...read, train }, plan)?.breaks ?? []
        expect(
          left.filter(({ step, instead }) => step === one.step && /Or |Less room/.test(instead)),
          `${seed} ${one.step} ${one.where}`,
        ).toEqual([])
        seen.breaks++
        seen[alone ? 'alone' : 'together']++
      }
    }
    console.log(`seeds ${start} to ${start + count - 1}`, seen)
    expect(seen.together).toBeGreaterThan(0)
  },
)
