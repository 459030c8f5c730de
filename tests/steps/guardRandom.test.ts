import { expect, it } from 'vitest'
import { guardOf } from '../../src/engine/fieldwork/steps/guard'
import { readTrain } from '../../src/document/readTrain'
import { counted } from '../counts'
import { solver } from '../engine/pair'
import { planRead, stepsFor } from '../planned'
import { randomTrain } from '../second/randomTrain'

const start = Number(process.env['HOLDFAST_SEED'] ?? 64_000)
const wanted = counted(4, 200, 8)

/** One division of a common dial (um), by the fine unit of the file. */
const division = { um: 10, mm: 10, mil: 12.7 }

it(`a foot that goes the wrong way is called after a third of its move or 50 um, whichever is less, on ${wanted} random trains`, () => {
  const seen = { shim: 0, side: 0, thirds: 0, most: 0 }
  let trains = 0
  for (let seed = start; trains < wanted; seed++) {
    const file = randomTrain(seed)
    const read = readTrain(file)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const plan = planRead(read.train, solver, { prices: false, packs: false })
    const steps = stepsFor(read, plan)?.steps ?? []
    if (steps.length === 0) continue
    trains += 1
    for (const [at, step] of steps.entries()) {
      const body = read.train.bodies.find(({ id }) => id === step.body)
      const [before, after] = [step.poses[0]?.move, step.poses.at(-1)?.move]
      if (!body || !before || !after || (step.kind !== 'vertical' && step.kind !== 'lateral'))
        continue
      // a rigid body that turns a little: its foot goes by its shift, and by its turn as far as it stands from the middle
      const middle = body.feet.reduce((sum, { x }) => sum + x, 0) / body.feet.length
      const by = (part: 'ty' | 'tz' | 'sy' | 'sz') => after[part] - before[part]
      for (const { id, x } of step.kind === 'vertical' && after.roll !== before.roll
        ? []
        : body.feet) {
        const upright = step.kind === 'vertical'
        const move = upright
          ? by('tz') + by('sz') * (x - middle)
          : by('ty') + by('sy') * (x - middle)
        // what the digits show as nought is told to stay
        if (Math.abs(move) < 2 * division[file.units.fine]) continue
        const called = (shown: number) => guardOf(read.train, { steps, at, foot: id, shown }).wrong
        const limit = Math.max(division[file.units.fine], Math.min(50, Math.abs(move) / 3))
        const words = `seed ${seed}, ${step.id}, foot ${id}, ${move} um`
        const wrong = -Math.sign(move)
        expect(called(wrong * (0.99 * limit - 0.1)), words).toBeUndefined()
        expect(called(wrong * (1.01 * limit + 0.1)), words).toMatch(/^Stop, the wrong way: /)
        // the right way, half way and at its end, nothing is called
        expect(called(move / 2), words).toBeUndefined()
        expect(called(move), words).toBeUndefined()
        // and it is called before a move gone wrong by all of it is through
        expect(limit, words).toBeLessThan(Math.abs(move))
        seen[upright ? 'shim' : 'side'] += 1
        seen[limit < 50 ? 'thirds' : 'most'] += 1
      }
    }
  }
  console.log(`seeds from ${start}`, seen)
  expect(Math.min(seen.shim, seen.side, seen.most)).toBeGreaterThan(0)
}, 1_200_000)
