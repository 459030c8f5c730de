import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { sampled } from '../second/sure/sampled'
import type { Source } from '../second/sure/source'
import { plannedSure } from './sureAnswer'
import { randomSureTrain } from '../second/randomSure'
import { isWhole, counted } from '../counts'

const trains = counted(1, 20, 1)
const draws = counted(5000, 10_000, 10_000)
const most = 0.03 // points: more than four standard deviations of both samplings

/** The groups of the contract by the planner's words for them; what a coupling or machine has is its own. */
const belongs: Record<string, (source: Source, where: string) => boolean> = {
  readings: ({ group, of }, where) => group === 'readings' && of === where,
  brackets: ({ group, of }, where) => group === 'brackets' && of === where,
  growth: ({ group, of }, where) => group === 'growth' && of === where,
  work: ({ group }) => group === 'work',
  'places of feet': ({ group }) => group === 'places',
}

test.runIf(isWhole)(
  `what better knowledge buys is what the sampler finds, on ${trains} random trains at least`,
  async () => {
    const solver = await glpkSolver()
    const wrong: string[] = []
    const seen: Record<string, number> = {}
    let matters = 0
    const all = Object.keys(belongs)
    // more of them until every group has come up, and has mattered
    const more = () => matters <= 1 || all.some((what) => !(what in seen))
    for (let seed = 1, n = 0; n < trains || more(); seed++) {
      const train = randomSureTrain(seed)
      const { status, motions, sure } = plannedSure(train, solver)
      if (status !== 'planned') continue
      n += 1
      for (const { what, where = '', exact, halved } of sure?.buys ?? []) {
        const inGroup = belongs[what]
        if (!inGroup) continue
        seen[what] = (seen[what] ?? 0) + 1
        for (const [part, theirs] of [
          [0, exact],
          [0.5, halved],
        ] as const) {
          const factor = (source: Source) => (inGroup(source, where) ? part : 1)
          const { all: ours } = sampled(train, motions, { draws, seed: 5, factor })
          if (!(Math.abs(ours - (theirs ?? NaN)) <= most))
            wrong.push(`seed ${seed}: ${what} ${where} at ${part} is ${theirs}, not ${ours}`)
          if (Math.abs(ours - (sure?.all?.chance ?? ours)) > 2 * most) matters += 1
        }
      }
      const best = (sure?.buys ?? []).map(({ exact }) => exact)
      expect(best, `seed ${seed}: best first`).toEqual([...best].sort((a, b) => b - a))
    }
    expect(wrong).toEqual([])
    expect(Object.keys(seen).sort()).toEqual(all.sort())
    expect(matters).toBeGreaterThan(1)
  },
  1_800_000,
)
