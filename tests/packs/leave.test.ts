import { expect, test } from 'vitest'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'
import { judge } from '../second/judge'
import { fineFactor } from '../second/train'
import { contractFaults } from './contract'
import { shimmed } from './shimmed'
import { counted } from '../counts'

const long = process.env.HOLDFAST_LONG === '1'
const trains = counted(3, 150, 6)
const firstSeed = Number(process.env.HOLDFAST_SEED ?? 1)
const solver = await glpkSolver()

test(
  `${trains} random trains: no move under plan.leave is told unless it has to be, and the same file gives the same bytes`,
  () => {
    const counts: Record<string, number> = {}
    const count = (what: string, by = 1) => {
      counts[what] = (counts[what] ?? 0) + by
    }
    const faults: string[] = []
    let seed = firstSeed
    for (let done = 0; done < trains; seed++) {
      const train = shimmed(seed, 20)
      const plan = () => planTrain(train, solver, { reasons: false, prices: false, packs: true })
      const answer = plan()
      if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
      const { rounded } = answer
      if (answer.status !== 'planned' || !rounded) continue
      done++
      count(rounded.status)
      for (const text of contractFaults(train, answer)) faults.push(`seed ${seed}: ${text}`)
      if (done % 5 === 0 && JSON.stringify(plan()) !== JSON.stringify(answer))
        faults.push(`seed ${seed}: another answer the second time`)
      if (!rounded.bodies) continue
      const fine = fineFactor(train)
      const motions = Object.fromEntries(rounded.bodies.map(({ id, move }) => [id, move]))
      const { violation, worstShare, unfree } = judge(train, motions)
      if (violation > 1.1e-3 || unfree > 1e-3) faults.push(`seed ${seed}: passes ${violation} um`)
      if (worstShare > (rounded.status === 'rounded' ? answer.share : 1) + 2e-6)
        faults.push(`seed ${seed}: share ${worstShare}`)
      // what is small among shims, slides and moves along, counted from the feet and bodies themselves
      const small = (value: number) =>
        Math.abs(value * fine) > 0.1 && Math.abs(value * fine) < 20 - 2e-3
      const shims = rounded.feet.filter(({ shim }) => small(shim)).length
      const slides = rounded.feet.filter(({ side }) => small(side)).length
      const along = rounded.bodies.filter(({ move }) => small(move.tx)).length
      const told = rounded.small ?? []
      count('left alone', (rounded.left ?? []).length)
      count('small but told', told.length)
      if (shims !== told.filter(({ foot }) => foot !== undefined).length)
        faults.push(`seed ${seed}: ${shims} small shims`)
      if (slides > 0 !== told.some(({ row }) => row !== undefined))
        faults.push(`seed ${seed}: ${slides} small slides`)
      if (along !== told.filter(({ foot, row }) => foot === undefined && row === undefined).length)
        faults.push(`seed ${seed}: ${along} small moves along the train`)
    }
    console.log(`seeds ${firstSeed} to ${seed - 1}`, counts)
    expect(faults).toEqual([])
    expect(counts['left alone'] ?? 0).toBeGreaterThan(trains / 4)
    expect(counts['small but told'] ?? 0).toBeLessThan(counts['left alone'] ?? 0)
  },
  long ? 1_800_000 : 900_000,
)
