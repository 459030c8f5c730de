import { expect, test } from 'vitest'
import { applyRemedy } from '../../src/engine/infeasible/remedies/change'
import { asFirst } from '../agreement/firstAnswer'
import { compare } from '../second/disagreements'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'
import { planOf, reasonsOf } from './bench'

const long = process.env.HOLDFAST_LONG === '1'
const wanted = long ? 300 : 2

test(
  `what remedies make of ${wanted} random impossible trains is planned alike by another builder`,
  async () => {
    const kinds = new Map<string, number>()
    const wrong: string[] = []
    let [trains, helped, remedies] = [0, 0, 0]
    for (let seed = 1000; trains < wanted; seed++) {
      const document = randomTrain(seed)
      if (planOf(document).status !== 'impossible') continue
      trains += 1
      const answer = reasonsOf(document)
      const working = answer.remedies.filter(({ solves }) => solves)
      if (working.length > 0) helped += 1
      for (const remedy of working) {
        remedies += 1
        kinds.set(remedy.kind, (kinds.get(remedy.kind) ?? 0) + 1)
        const after = applyRemedy(answer.document, remedy)
        const mine = planOf(after)
        const other = await solveSecond(after as unknown as Train)
        const { disagreements } = compare(
          asFirst(mine),
          other,
          await solveSecond(after as unknown as Train, { loose: true }),
        )
        if (
          mine.status === 'impossible' ||
          Math.abs((mine.cost ?? NaN) - (remedy.cost ?? NaN)) > 1e-6
        )
          wrong.push(
            `seed ${seed}, ${remedy.kind}: ${mine.status}, ${mine.cost} for ${remedy.cost}`,
          )
        for (const text of disagreements) wrong.push(`seed ${seed}, ${remedy.kind}: ${text}`)
      }
    }
    const list = [...kinds].map(([kind, n]) => `${kind} ${n}`).join(', ')
    console.log(`${helped} of ${trains} trains helped by ${remedies} remedies: ${list}`)
    expect(wrong).toEqual([])
    expect(helped).toBeGreaterThan(trains / 3)
  },
  long ? 3_600_000 : 600_000,
)
