import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { tradeoffPlanner } from '../../src/engine/studies/tradeoff/tradeoff'
import { glpkSolver } from '../../src/solvers/glpk'
import { cornerWords, pointInWords, stepsInWords } from '../../src/text/marginWords'
import { counted, firstOf } from '../counts'
import { exampleOf } from '../paper/sheets'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'

const solver = await glpkSolver()
const start = Number(process.env['HOLDFAST_SEED'] ?? 67_000)
const examples = firstOf(['bolt-bound-gearbox', 'pump-and-motor', 'five-in-a-line'], 1)
const wanted = examples.length + counted(1, 200, 8)
/** Corners tried of a curve. */
const mostCorners = counted(3, 8)

/** Examples, then random trains without end. */
function* trains(): Generator<readonly [string, Train]> {
  for (const name of examples) yield [name, exampleOf(name) as unknown as Train]
  for (let seed = start; ; seed++) yield [`random train ${seed}`, randomTrain(seed)]
}

const halfDigit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0)

const at = (file: Train, percent: string): Train => ({
  ...file,
  plan: { ...file.plan, share: Number(percent) / 100 },
})

const amount = '([\\d.]+) (?:µm|mm|mil)'

it(`what is told along the trade-off is what other code plans at that share, on ${wanted} trains`, async () => {
  const wrong: string[] = []
  const told = { moves: 0, nothing: 0, none: 0, corners: 0 }
  let looked = 0
  for (const [name, file] of trains()) {
    if (looked === wanted) break
    const read = readTrain(file)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const { train } = read
    const curve = tradeoffPlanner(train, solver)?.curve
    if (!curve || curve.floor >= 0.97) continue
    looked += 1
    const { floor, standing } = curve
    const fault = (words: string, found: object) =>
      wrong.push(`${name}: ${words}: ${JSON.stringify(found)}`)

    /** So much is told at a share, on the line between corners that other code may find a little under it. */
    const costs = async (words: string, percent: string, cost: string) => {
      const second = await solveSecond(at(file, percent))
      const { status, cost: least } = second
      const off = halfDigit(cost) + 5e-4 * least + 1e-6
      const apart = Number(cost) - least
      if (status === 'impossible' || Math.abs(apart) > off) fault(words, { status, least })
    }
    const nothing = async (words: string, percent: string) => {
      told.nothing += 1
      const { status } = await solveSecond(at(file, percent))
      if (status !== 'in-tolerance') fault(words, { status })
    }
    const none = async (words: string, percent: string) => {
      told.none += 1
      const { status, floor: least } = await solveSecond(at(file, percent))
      if (status !== 'impossible') fault(words, { status, least })
    }

    const most = Math.min(1, standing)
    const middle = Math.ceil(50 * (Math.max(floor, 0.02) + most)) / 100
    for (const share of [middle, Math.max(0.01, Math.floor(100 * floor) / 100 - 0.02)]) {
      const point = pointInWords(train, curve, share)
      const [, percent = ''] = /^(\d+) %, /.exec(point) ?? []
      const [, cost] = new RegExp(`, ${amount} of (?:weighted )?moves`).exec(point) ?? []
      const [, best] = /no plan: the best reachable is ([\d.]+) %/.exec(point) ?? []
      if (best !== undefined) {
        await none(point, percent)
        const { status, floor: least } = await solveSecond(at(file, best))
        if (status === 'impossible') fault(point, { status, least })
      } else if (cost !== undefined) {
        told.moves += 1
        await costs(point, percent, cost)
      } else if (point.includes('nothing moves')) await nothing(point, percent)
      else fault(point, {})
      const steps = stepsInWords(train, curve, share)
      for (const part of steps === '' ? [] : steps.split(', ')) {
        const [, plain] = /^(-?\d+) % cannot be reached$/.exec(part) ?? []
        const [, still] = /^at (\d+) % nothing moves$/.exec(part) ?? []
        const [, then, by] = new RegExp(`^${amount} at (\\d+) %$`).exec(part) ?? []
        if (plain !== undefined) {
          if (Number(plain) > 0) await none(part, plain)
        } else if (still !== undefined) await nothing(part, still)
        else if (then !== undefined && by !== undefined) {
          told.moves += 1
          await costs(part, by, then)
        } else fault(part, {})
      }
    }
    const corners = curve.points.slice(0, mostCorners)
    for (const corner of [...corners, ...curve.points.slice(-1)]) {
      const [share, moves] = cornerWords(train, curve, corner)
      const [, percent] = /^([\d.]+) %$/.exec(share) ?? []
      const [, cost] = new RegExp(`^${amount}$`).exec(moves) ?? []
      if (percent === undefined || cost === undefined) {
        fault(`${share}, ${moves}`, {})
        continue
      }
      if (Number(percent) === 0) continue
      told.corners += 1
      await costs(`corner at ${share}, ${moves}`, percent, cost)
    }
  }
  console.log(told)
  expect(wrong).toEqual([])
  expect(told.moves).toBeGreaterThan(3)
}, 3_600_000)
