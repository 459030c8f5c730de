import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { hotCheckAnswers } from '../../src/engine/fieldwork/hotCheck/hotChecks'
import { trimPlan } from '../../src/engine/trimPlan'
import { hotChecksJson } from '../../src/json/hotCheckJson'
import { bodiesInWords } from '../../src/language/names'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted } from '../counts'
import { build } from '../second/model'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import { shareOf } from '../second/share'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'
import { randomCheck, withCheck, withGrowth } from './randomCheck'

const solver = await glpkSolver()
const start = Number(process.env['HOLDFAST_SEED'] ?? 64_000)
const wanted = counted(4, 300, 8)

const halfDigit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0)
/** Half a percent, and what growth written to a hundredth of what is read may come to on tight couplings. */
const near = (share: number) => 7e-3 + 5e-4 * share

const unit = '(?:µm|mm|mil)'
const trim = new RegExp(
  `: ([^:]*?), ([\\d.]+) ${unit} in all(?: \\((.*?)\\))?; the tightest coupling then uses (under )?([\\d.]+) % of its tolerance in every state\\.`,
)
const best = /the best reachable is ([\d.]+) % of tolerance/

/** The share of its tolerance that a coupling uses in a state, by other code. */
function shareIn(file: Train, coupling: string, state: string): number {
  const across = build(file).checks.filter(
    (check) =>
      check.coupling === coupling &&
      check.state === state &&
      !['gap', 'stretch', 'float'].includes(check.what),
  )
  return Math.max(0, ...across.map((check) => shareOf(check, [])))
}

it(`a trim is what other code plans once the growth that was found is entered, on ${wanted} random trains`, async () => {
  const wrong: string[] = []
  const told = { trains: 0, shares: 0, trims: 0, nothing: 0, impossible: 0, 'no trim': 0 }
  for (let seed = start; told.trims < wanted; seed++) {
    const file = randomTrain(seed)
    const check = randomCheck(file, seed, new Random(seed).scale(10, 150))
    if (!check) continue
    const read = readTrain(withCheck(file, check))
    if (!read.ok) throw new Error(`${seed}: ${JSON.stringify(read.refused)}`)
    const { train } = read
    const [answer] = hotChecksJson(
      hotCheckAnswers(read, (corrected) => trimPlan(corrected, solver)),
      train.units,
    )
    if (!answer) throw new Error('no hot check')
    told.trains += 1
    const [verdict = '', ...rest] = answer.sentences
    const fault = (words: string) => wrong.push(`seed ${seed}: ${verdict} ${words}`)
    const { state } = check
    const entered = withGrowth(file, state, answer.growth)
    for (const { id, name } of train.couplings) {
      const said = rest.find((one) => one.startsWith(`${name} ran with `))
      const [, under, percent] =
        /It used (under )?([\d.]+) % of its tolerance/.exec(said ?? '') ?? []
      if (percent === undefined) continue
      told.shares += 1
      const share = shareIn(entered, id, state)
      if (under ? share > 0.01 : Math.abs(share - Number(percent) / 100) > near(share))
        fault(`${said ?? ''} It is ${share}.`)
    }
    const second = await solveSecond(entered)
    if (/no trim (?:pays|is shown)/.test(verdict)) {
      told['no trim'] += 1
      continue
    }
    if (verdict.includes('nothing needs to move')) {
      told.nothing += 1
      if (second.status !== 'in-tolerance') fault(second.status)
      continue
    }
    const [reachable] = best.exec(verdict)?.slice(1) ?? []
    if (reachable !== undefined) {
      told.impossible += 1
      const over = Number(reachable) / 100 - second.floor
      if (second.status !== 'impossible' || over < -1e-6 || over > 0.0101)
        fault(`${second.status}, ${second.floor}`)
      continue
    }
    const [, names, all = '', parts = '', under, percent = ''] = trim.exec(verdict) ?? []
    if (names === undefined) {
      fault('is not what is looked for')
      continue
    }
    told.trims += 1
    if (second.status !== 'planned') {
      fault(second.status)
      continue
    }
    const bodies = [...file.machines, ...(file.skids ?? [])]
    const weights = file.plan?.weights
    const plain = bodies.every(({ weight = 1 }) => weight === 1)
    const each = (what: string) =>
      Number(new RegExp(`${what} ([\\d.]+)`).exec(parts)?.[1] ?? (parts === '' ? NaN : 0))
    const [told1, told2] = [Number(all), each('shims') + each('slides') + each('along')]
    if (parts !== '' && Math.abs(told1 - told2) > 4 * halfDigit(all) + 1e-9)
      fault(`${told1} is not ${told2}`)
    if (plain && !Object.values(weights ?? {}).some((weight) => weight !== 1)) {
      const off = Math.abs(told1 - second.cost)
      if (off > halfDigit(all) + 1e-4 * second.cost + 1e-6) fault(`${second.cost} by other code`)
    }
    const [low, high] = [Math.min(...second.worstShareBand), Math.max(...second.worstShareBand)]
    const share = Number(percent) / 100
    if (!under && (share < low - near(low) || share > high + near(high))) fault(`${low} to ${high}`)
    // those that are named do it alone, to the digit that is told
    const named = train.bodies.filter(({ id }) => answer.trim.plan?.bodies.includes(id))
    if (bodiesInWords(named) !== names) fault('names others')
    const alone = structuredClone(entered)
    for (const body of [...alone.machines, ...(alone.skids ?? [])])
      if (!named.some(({ id }) => id === body.id)) body.held = true
    const { status, cost } = await solveSecond(alone)
    if (status !== 'planned' || cost > second.cost * (1 + 1e-4) + halfDigit(all))
      fault(`by ${names} alone ${status}, ${cost} and not ${second.cost}`)
  }
  console.log(told)
  expect(wrong).toEqual([])
}, 3_600_000)
