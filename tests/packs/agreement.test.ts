import { expect, test } from 'vitest'
import type { AnswerJson } from '../../src/json/answerJson'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'
import { judge } from '../second/judge'
import { fineFactor, type Foot } from '../second/train'
import { contractFaults } from './contract'
import { FixedShims } from './fixedShims'
import { shimmed, type Shimmed } from './shimmed'
import { storeChanges } from './store'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 300 : 4
const firstSeed = Number(process.env.HOLDFAST_SEED ?? 1)
const solver = await glpkSolver()

/** Costs this near are the same (um, and as a part). */
const same = (a: number, b: number) => Math.abs(a - b) <= 0.05 + 1e-4 * Math.max(a, b)

function planned(train: Shimmed): AnswerJson | undefined {
  const answer = planTrain(train, solver, { reasons: false, prices: false, packs: true })
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  return answer.status === 'planned' ? answer : undefined
}

const nearestOf = (list: readonly number[], value: number): number =>
  list.reduce(
    (best, one) => (Math.abs(one - value) < Math.abs(best - value) - 1e-9 ? one : best),
    0,
  )

/** Every stand at the change nearest to the plan's, evaluated with the slides planned anew. */
async function footByFoot(fixed: FixedShims, train: Shimmed, answer: AnswerJson) {
  const changes = storeChanges(train)
  const chosen = new Map<Foot, number>()
  for (const stand of fixed.stands) {
    const move = answer.bodies?.find(({ id }) => id === stand.body)?.move
    if (!move) throw new Error(`no motion of ${stand.body}`)
    const lists = stand.feet.map((foot) => changes(foot))
    const [first = []] = lists
    const common = first.filter((v) =>
      lists.every((list) => list.some((w) => Math.abs(w - v) < 1e-3)),
    )
    const value = nearestOf(common, fixed.shimOf(stand, move))
    for (const foot of stand.feet) chosen.set(foot, value)
  }
  return fixed.cost(chosen, answer.share)
}

/** The best of every combination of changes within a window around the plan. */
async function everyCombination(
  fixed: FixedShims,
  train: Shimmed,
  answer: AnswerJson,
  most: number,
) {
  const changes = storeChanges(train)
  const options = fixed.stands.map((stand) => {
    const move = answer.bodies?.find(({ id }) => id === stand.body)?.move
    if (!move) throw new Error(`no motion of ${stand.body}`)
    const value = fixed.shimOf(stand, move)
    const lists = stand.feet.map((foot) => changes(foot))
    const [first = []] = lists
    const common = first.filter((v) =>
      lists.every((list) => list.some((w) => Math.abs(w - v) < 1e-3)),
    )
    const near = [...common].sort((a, b) => Math.abs(a - value) - Math.abs(b - value))
    return { stand, values: [...new Set([...near.slice(0, 4), 0])] }
  })
  const count = options.reduce((product, { values }) => product * values.length, 1)
  if (count > most) return undefined
  let best = Infinity
  const chosen = new Map<Foot, number>()
  const look = async (i: number): Promise<void> => {
    const option = options[i]
    if (!option) {
      const found = await fixed.cost(chosen, answer.share)
      if (found && found.cost < best) best = found.cost
      return
    }
    for (const value of option.values) {
      for (const foot of option.stand.feet) chosen.set(foot, value)
      await look(i + 1)
    }
  }
  await look(0)
  return { best, count }
}

test(
  `${trains} random trains: never worse than foot by foot, as good as every combination of small ones`,
  async () => {
    const counts: Record<string, number> = {}
    const count = (what: string) => {
      counts[what] = (counts[what] ?? 0) + 1
    }
    const faults: string[] = []
    let slowest = 0
    let seed = firstSeed
    for (let done = 0; done < trains; seed++) {
      const train = shimmed(seed, 0)
      const started = performance.now()
      const answer = planned(train)
      if (!answer) continue
      done++
      const { rounded, packs } = answer
      if (!rounded) throw new Error(`seed ${seed}: not rounded`)
      slowest = Math.max(slowest, performance.now() - started)
      count(rounded.status)
      const fault = (text: string) => {
        faults.push(`seed ${seed}: ${text}`)
      }
      for (const text of contractFaults(train, answer)) fault(text)
      const fine = fineFactor(train)
      if (rounded.bodies) {
        const motions = Object.fromEntries(rounded.bodies.map(({ id, move }) => [id, move]))
        const { violation, worstShare, where, unfree } = judge(train, motions)
        if (violation > 1.1e-3) fault(`${where} is passed by ${violation} um`)
        if (unfree > 1e-3) fault(`moves by ${unfree} what is not free`)
        const allowed = rounded.status === 'rounded' ? answer.share : 1
        if (worstShare > allowed + 2e-6) fault(`share ${worstShare}`)
        if (Math.abs(worstShare - rounded.worstShare) > 1e-6)
          fault(`share ${worstShare}, told ${rounded.worstShare}`)
      } else if (packs) fault('packs without a rounding')
      const fixed = new FixedShims(train)
      const cost = rounded.status === 'rounded' ? (rounded.cost ?? NaN) * fine : Infinity
      const nearest = await footByFoot(fixed, train, answer)
      if (nearest) {
        count('foot by foot holds')
        if (!(cost <= nearest.cost + 0.05 + 1e-4 * nearest.cost))
          fault(`foot by foot costs ${nearest.cost}, together ${cost} (${rounded.status})`)
        else if (!same(cost, nearest.cost)) count('together is cheaper')
      } else if (rounded.status === 'rounded') count('only together')
      const every = await everyCombination(fixed, train, answer, long ? 3000 : 700)
      if (every) {
        count('every combination tried')
        if (!(cost <= every.best + 0.05 + 1e-4 * every.best))
          fault(`a combination costs ${every.best}, together ${cost} (${rounded.status})`)
        else if (every.best < Infinity) {
          count('every combination agrees')
          if (!same(cost, every.best)) count('better outside the window')
        }
        const bound = (rounded.bound ?? 0) * fine
        if (rounded.status === 'rounded' && bound > every.best + 0.05 + 1e-4 * every.best)
          fault(`bound ${bound} above ${every.best}`)
      }
      if (rounded.status === 'rounded' && (rounded.gap ?? 0) * fine > 0.1 + 1e-4 * cost)
        count('gap left open')
    }
    console.log(`seeds ${firstSeed} to ${seed - 1}, slowest ${slowest.toFixed(0)} ms`, counts)
    expect(faults).toEqual([])
    expect(counts['rounded'] ?? 0).toBeGreaterThan(trains / 3)
    expect(counts['every combination agrees'] ?? 0).toBeGreaterThan(trains / 10)
    expect(counts['only together'] ?? 0).toBeGreaterThan(0)
  },
  long ? 7_200_000 : 600_000,
)
