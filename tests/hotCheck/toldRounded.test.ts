import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { hotCheckAnswers } from '../../src/engine/fieldwork/hotCheck/hotChecks'
import { trimPlan } from '../../src/engine/trimPlan'
import { hotChecksJson } from '../../src/json/hotCheckJson'
import { bodiesInWords } from '../../src/language/names'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted } from '../counts'
import { contractFaults } from '../packs/contract'
import { shimmed, type Shimmed } from '../packs/shimmed'
import { exampleOf } from '../paper/sheets'
import { planTrain } from '../planned'
import { judge } from '../second/judge'
import { footRows } from '../second/limits'
import { build } from '../second/model'
import { Random } from '../second/random'
import { fineFactor } from '../second/train'
import { randomCheck, withCheck, withGrowth } from './randomCheck'

// What a trim rounded to the shims of the store promises, held against a copy of the train in which the growth that was
// found is entered: planned anew, its plates laid under the feet, and every coupling judged by other code.

const solver = await glpkSolver()
const start = Number(process.env['HOLDFAST_SEED'] ?? 71_000)
const wanted = counted(3, 300, 8)

const trim =
  /: ([^:]*?), ([\d.]+) (?:µm|mm|mil) in all(?: \((.*?)\))?, rounded to the shims of the store; the tightest coupling then uses (under )?([\d.]+) % of its tolerance in every state\.$/

const halfDigit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0)

interface Told {
  readonly verdict: string
  readonly names: string
  readonly all: string
  readonly parts: string
  readonly under: boolean
  readonly percent: number
  /** The train with the growth that was found, as somebody types it. */
  readonly entered: Shimmed
  readonly bodies: readonly string[]
}

/** What the only hot check of a file says of a rounded trim; none where it says something else. */
function toldOf(document: unknown, file: Shimmed, state: string): Told | undefined {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const answers = hotCheckAnswers(read, (corrected) => trimPlan(corrected, solver))
  const [answer] = hotChecksJson(answers, read.train.units)
  if (!answer) throw new Error('no hot check')
  const [verdict = ''] = answer.sentences
  const [, names, all = '', parts = '', under, percent = ''] = trim.exec(verdict) ?? []
  if (names === undefined) return undefined
  const bodies = answer.trim.plan?.bodies ?? []
  const named = read.train.bodies.filter(({ id }) => bodies.includes(id))
  expect(bodiesInWords(named)).toBe(names)
  return {
    ...{ verdict, names, all, parts, bodies, under: under !== undefined },
    ...{ percent: Number(percent), entered: withGrowth(file, state, answer.growth) as Shimmed },
  }
}

/** Shims by their plates, slides by row and moves along, added up from where the bodies go (document units). */
function addedUp(file: Shimmed) {
  const answer = planTrain(file, solver, { reasons: false, prices: false, packs: true })
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  const { rounded, packs = [] } = answer
  if (answer.status !== 'planned' || rounded?.status !== 'rounded' || !rounded.bodies)
    return undefined
  const motions = Object.fromEntries(rounded.bodies.map(({ id, move }) => [id, move]))
  const { movers } = build(file)
  const fine = fineFactor(file)
  const sums = { shims: 0, slides: 0, along: 0 }
  for (const { change } of packs) sums.shims += Math.abs(change)
  for (const [id, { body, x0 }] of movers) {
    const move = motions[id]
    if (!move) throw new Error(`no motion of ${id}`)
    sums.along += Math.abs(move.tx)
    // mrad times mm is um
    for (const { x } of footRows(body.feet))
      sums.slides += Math.abs(move.ty + (move.sy * (x - x0)) / fine)
  }
  const touched = new Set([
    ...packs.map(({ body }) => body),
    ...rounded.bodies.flatMap(({ id, move }) => (Math.abs(move.tx) > 1e-9 ? [id] : [])),
  ])
  return { answer, sums, motions, cost: rounded.cost ?? NaN, touched }
}

/** What is wrong with what was told. */
function faultsOf(told: Told): string[] {
  const { entered, verdict, all, parts, under, percent, bodies } = told
  const faults: string[] = []
  const fault = (words: string) => faults.push(`${verdict} ${words}`)
  const made = addedUp(entered)
  if (!made) return [`${verdict} The changed copy is not planned, or not rounded.`]
  const { answer, sums, motions, cost } = made
  faults.push(...contractFaults(entered, answer))
  const { worstShare, violation, where, unfree } = judge(entered, motions)
  if (violation > 1.1e-3) fault(`${where} is passed by ${violation} um`)
  if (unfree > 1e-3) fault(`moves by ${unfree} what is not free`)
  if (worstShare > (entered.plan.share ?? 1) + 1e-4) fault(`uses ${worstShare} of tolerance`)
  if (under ? worstShare > 0.01 : Math.abs(worstShare - percent / 100) > 6e-3)
    fault(`uses ${worstShare} by other code`)
  // half a digit, and what growth typed to a hundredth comes to at every foot
  const near = (text: string) => halfDigit(text) + 0.02 + 1e-4 * Number(text)
  const total = sums.shims + sums.slides + sums.along
  if (Math.abs(Number(all) - total) > near(all)) fault(`comes to ${total}`)
  for (const [what, value] of Object.entries(sums)) {
    const [, each] = new RegExp(`${what} ([\\d.]+)`).exec(parts) ?? []
    if (each !== undefined && Math.abs(Number(each) - value) > near(each))
      fault(`${what}: ${value}`)
  }
  for (const id of made.touched) if (!bodies.includes(id)) fault(`moves ${id} as well`)
  // those that are named do it alone
  const alone = structuredClone(entered)
  for (const body of [...alone.machines, ...(alone.skids ?? [])])
    if (!bodies.includes(body.id)) body.held = true
  const other = addedUp(alone)
  if (!other || other.cost > cost * (1 + 1e-4) + near(all))
    fault(`by those alone ${other?.cost} and not ${cost}`)
  return faults
}

it('the trim of the example is what it comes to once the growth that was found is entered', () => {
  const file = exampleOf('hot-check') as unknown as Shimmed
  const { hotChecks: _, ...bare } = structuredClone(file) as Shimmed & { hotChecks?: unknown }
  const told = toldOf(file, bare, 'full-load')
  if (!told) throw new Error('no trim')
  expect(faultsOf(told)).toEqual([])
})

it(`a trim rounded to shims is what the changed train is rounded to, on ${wanted} random trains`, () => {
  const wrong: string[] = []
  let [trains, trims] = [0, 0]
  for (let seed = start; trims < wanted; seed++) {
    const file = shimmed(seed)
    const check = randomCheck(file, seed, new Random(seed).scale(10, 150))
    if (!check) continue
    trains += 1
    const told = toldOf(withCheck(file, check), file, check.state)
    if (!told) continue
    trims += 1
    wrong.push(...faultsOf(told).map((words) => `seed ${seed}: ${words}`))
  }
  console.log({ trains, trims })
  expect(wrong).toEqual([])
}, 3_600_000)
