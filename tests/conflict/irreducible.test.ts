import { expect, test } from 'vitest'
import { limitName } from '../../src/engine/infeasible/conflict/limitWords'
import { conflictsOf, contradictionOf } from '../../src/engine/infeasible/conflict/conflict'
import { planRead } from '../planned'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readTrain } from '../../src/document/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomTrain } from '../second/randomTrain'
import { leastShareOf } from './separate'

const long = process.env.HOLDFAST_LONG === '1'
const wanted = long ? 500 : 10
const mostSeeds = wanted * 8

/** How far two right answers may lie apart where circles take part. */
const apart = 2e-5

/** Kinds that must come up, so that being right about them means something. */
const mustAppear = [
  ...['held', 'tolerance', 'hole', 'minimum pack', 'maximum pack', 'lift'],
  ...['restraint', 'tilt', ...(long ? ['side key', 'shim key'] : [])],
]

test(
  `every conflict of ${wanted} random impossible trains is irreducible, judged by another builder and solver`,
  async () => {
    const solver = await glpkSolver()
    const kinds = new Map<string, number>()
    const sizes = new Map<number, number>()
    const wrong: string[] = []
    let [trains, conflicts, solved, seed] = [0, 0, 0, 0]
    while (trains < wanted && seed < mostSeeds) {
      seed += 1
      const document = randomTrain(seed)
      const read = readTrain(document)
      if (!read.ok) throw new Error(JSON.stringify(read.refused))
      const { train } = read
      const told = conflictsOf(contradictionOf(train, train.couplings.map(asFound), solver), solver)
      if (told.length === 0) {
        if (long && planRead(train, solver).status === 'impossible')
          wrong.push(`seed ${seed}: impossible, and no conflict was found`)
        continue
      }
      trains += 1
      if (planRead(train, solver).status !== 'impossible')
        wrong.push(`seed ${seed}: a conflict in a train that is not impossible`)
      const { share } = train.plan
      for (const { members, floor, sentence } of told) {
        conflicts += 1
        sizes.set(members.length, (sizes.get(members.length) ?? 0) + 1)
        for (const { limit } of members) {
          const name = limitName(limit)
          kinds.set(name, (kinds.get(name) ?? 0) + 1)
        }
        if (sentence === '' || members.some((member) => member.sentence === ''))
          wrong.push(`seed ${seed}: a conflict without words`)
        const together = await leastShareOf(document, members)
        solved += 1
        if (!(together > share + 5e-7))
          wrong.push(`seed ${seed}: ${sentence} reaches ${together} of ${share}`)
        const least = floor ?? NaN
        const between =
          least <= together * (1 + apart) &&
          (least >= together * (1 - apart) ||
            least >= (await leastShareOf(document, members, { loose: true })) * (1 - apart))
        if (!between)
          wrong.push(`seed ${seed}: ${sentence} is said to reach ${floor}, and reaches ${together}`)
        for (const gone of members) {
          const rest = members.filter((member) => member !== gone)
          solved += 1
          const without = rest.length === 0 ? 0 : await leastShareOf(document, rest)
          if (!(without <= share * (1 + apart) + 1e-6))
            wrong.push(`seed ${seed}: still ${without} of ${share} without ${gone.where}`)
        }
      }
    }
    const list = (counts: Map<string | number, number>) =>
      [...counts].map(([what, n]) => `${what} ${n}`).join(', ')
    console.log(
      `${trains} impossible trains of ${seed}, ${conflicts} conflicts, ${solved} re-solved sets\n` +
        `members: ${list(kinds)}\nsizes: ${list(sizes)}`,
    )
    expect(wrong).toEqual([])
    expect(trains).toBe(wanted)
    for (const kind of mustAppear) expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(0)
  },
  long ? 1_800_000 : 600_000,
)
