import { expect, test } from 'vitest'
import { sheetFileOf } from '../../src/cli/sheet'
import { everyStage, PlanningRun } from '../../src/engine/planningRun'
import { readTrain } from '../../src/document/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'
import { planText } from '../../src/text/planText'
import { counted } from '../counts'
import { randomTrain } from '../second/randomTrain'

const wanted = counted(3, 300, 24)

test(`of the best that can be reached ${wanted} impossible trains are told one percentage each`, async () => {
  const solver = await glpkSolver()
  const wrong: string[] = []
  let [trains, seed, told] = [0, 31_000, 0]
  for (; trains < wanted; seed++) {
    const read = readTrain(randomTrain(seed))
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const answer = new PlanningRun(read, solver).answer(everyStage)
    if (answer.status !== 'impossible') continue
    trains += 1
    const sheet = sheetFileOf(read, solver, { size: 'a4', print: 'office' })
    if (sheet.status === 'stopped') throw new Error('no sheet')
    const faces = [planText(read.train, answer), sheet.html.replace(/<[^>]*>/g, ' ')]
    const found = faces.flatMap((text) =>
      [
        ...text
          .replace(/\s+/g, ' ')
          .matchAll(/the best reachable (?:is|by)[^.;:]*? (\d[\d.]* %)/gi),
      ].map(([, share = '']) => share),
    )
    told += found.length
    // what is reachable is told no lower than it is
    const one = `${Math.ceil(100 * answer.floor - 1e-6)} %`
    if (found.some((share) => share !== one))
      wrong.push(`seed ${seed}: ${found.join(', ')} beside ${one}`)
  }
  expect(wrong).toEqual([])
  // the headline, the proof, and the same on paper
  expect(told).toBeGreaterThanOrEqual(4 * wanted)
})
