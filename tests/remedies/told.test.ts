import { expect, it } from 'vitest'
import { counted } from '../counts'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import { planOf, reasonsOf } from './bench'
import { enteredBySentence } from './entered'

const start = Number(process.env['HOLDFAST_SEED'] ?? 65_000)
const wanted = counted(3, 200, 6)

const does = /Then (?:nothing needs to move|([\d.]+) (?:µm|mm|mil) of (?:weighted )?moves will do)/
const best = /; at best ([\d.]+) % of tolerance/

const halfDigit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0)

it(`a remedy works as it is told, word by word and number by number, on ${wanted} random impossible trains`, async () => {
  const wrong: string[] = []
  const entered = new Map<string, number>()
  let [trains, others] = [0, 0]
  for (let seed = start; trains < wanted; seed++) {
    const file = randomTrain(seed)
    if (planOf(file).status !== 'impossible') continue
    const working = reasonsOf(file).remedies.filter(({ solves }) => solves)
    if (working.length > 0) trains += 1
    for (const { kind, sentence } of working) {
      const changed = enteredBySentence(file, sentence)
      if (!changed) {
        others += 1
        continue
      }
      entered.set(kind, (entered.get(kind) ?? 0) + 1)
      const { status, cost, floor } = await solveSecond(changed)
      const fault = () =>
        wrong.push(`seed ${seed}: ${sentence} It is ${status}, ${cost}, ${floor}.`)
      const [promise, moves] = does.exec(sentence) ?? []
      const [, percent] = best.exec(sentence) ?? []
      if (promise === undefined) fault()
      else if (status === 'impossible') fault()
      else if (moves === undefined) {
        if (status !== 'in-tolerance') fault()
      } else {
        const off = halfDigit(moves) + 1e-4 * cost
        if (cost > Number(moves) + off) fault()
        else if (percent !== undefined && 100 * floor > Number(percent) + 1e-3) fault()
      }
    }
  }
  const list = [...entered].map(([kind, n]) => `${kind} ${n}`).join(', ')
  console.log(`${trains} trains; entered: ${list}; not by numbers alone: ${others}`)
  expect(wrong).toEqual([])
  expect(entered.size).toBeGreaterThan(counted(2, 12))
}, 3_600_000)
