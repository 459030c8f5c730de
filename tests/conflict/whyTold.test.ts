import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { PlanRun } from '../../src/engine/plan/planRun'
import { whyFoot } from '../../src/engine/studies/why/whyFoot'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted, firstOf } from '../counts'
import { exampleOf } from '../paper/sheets'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import { fineFactor, type Train } from '../second/train'
import { footLimited, type Limited } from './footLimited'

const solver = await glpkSolver()
const start = Number(process.env['HOLDFAST_SEED'] ?? 63_000)
const examples = firstOf(['pump-and-motor', 'base-bound-motor', 'five-in-a-line'], 1)
const wanted = examples.length + counted(3, 200, 6)

/** Examples, then random trains without end. */
function* trains(): Generator<readonly [string, Train]> {
  for (const name of examples) yield [name, exampleOf(name) as unknown as Train]
  for (let seed = start; ; seed++) yield [`random train ${seed}`, randomTrain(seed)]
}

/** Feet asked about of a train, each by its shims and by its slide. */
const most = counted(2, 4)

const unit = '(?:µm|mm|mil)'
const first = new RegExp(
  `^Foot .* of .*? (?:gets|loses|slides) ([\\d.]+) ${unit}(?: of shim| toward .*?)?\\.`,
)
const less = new RegExp(
  `With ([\\d.]+) ${unit} less and no more (weighted )?moves in all, the tightest coupling would (still )?use (under )?([\\d.]+) %`,
)
const keep = new RegExp(
  `To keep to [\\d.]+ % would take (?:no more (weighted )?moves|([\\d.]+) ${unit} more (weighted )?moves in all)\\.`,
)

const halfDigit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0)

it(`what is told of a foot held back is what other code finds when it is, on ${wanted} trains`, async () => {
  const wrong: string[] = []
  const told = { shares: 0, more: 0, 'no more': 0, 'no plan': 0 }
  let planned = 0
  for (const [name, file] of trains()) {
    if (planned === wanted) break
    const read = readTrain(file)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const { train } = read
    const run = new PlanRun(train, solver)
    if (run.plan().status !== 'planned') continue
    planned += 1
    const fine = fineFactor(file)
    const planCost = (await solveSecond(file)).cost
    const weighted =
      Object.values(file.plan?.weights ?? {}).some((weight) => weight !== 1) ||
      [...file.machines, ...(file.skids ?? [])].some(({ weight = 1 }) => weight !== 1)
    const asked = train.bodies.flatMap(({ id, feet }) =>
      feet.flatMap((foot) =>
        (['shim', 'slide'] as const).map((way) => [id, foot.id, way] as const),
      ),
    )
    let tried = 0
    for (const [body, foot, way] of asked) {
      if (tried === most) break
      const why = whyFoot(run, { body, foot, way })
      if (!why) continue
      tried += 1
      const { sentence } = why
      const fault = (words: string) => wrong.push(`${name}: ${sentence} (${way}): ${words}`)
      const [, moves] = first.exec(sentence) ?? []
      const [, step, ofWeights, , under, percent] = less.exec(sentence) ?? []
      if (moves === undefined || step === undefined || percent === undefined) {
        fault('is not what is looked for')
        continue
      }
      const toRead = halfDigit(moves) + halfDigit(step)
      const limitedTo = (by: number): Promise<Limited> =>
        footLimited(
          file,
          {
            body,
            foot,
            way: way === 'shim' ? 'z' : 'y',
            sign: why.move > 0 ? 1 : -1,
            most: Math.max(0, (Number(moves) - Number(step) + by) * fine),
          },
          planCost * fine * (1 + 1e-6),
        )
      // what is entered is what was read: with its last digit rounded up, and down
      const [looser, tighter] = [await limitedTo(toRead), await limitedTo(-toRead)]
      told.shares += 1
      const share = Number(percent) / 100
      const near = 5.01e-3
      if (!under && !(share >= looser.share - near && share <= tighter.share + near))
        fault(`${looser.share} to ${tighter.share}`)
      if (under && looser.share > 0.01) fault(`${looser.share}`)
      const [kept, keptWeighted, more, moreWeighted] = keep.exec(sentence) ?? []
      if (kept === undefined) {
        told['no plan'] += 1
        if (!/No plan then keeps to /.test(sentence)) fault('says nothing of cost')
        else if (tighter.cost !== undefined) fault(`it can be had for ${tighter.cost / fine}`)
        continue
      }
      told[more === undefined ? 'no more' : 'more'] += 1
      const added = Number(more ?? 0)
      // costs agree to 2e-5
      const off = (more === undefined ? 1e-5 * planCost : halfDigit(more)) + 5e-5 * planCost + 1e-6
      const least = (looser.cost ?? Infinity) / fine - planCost
      const largest = (tighter.cost ?? Infinity) / fine - planCost
      if (!(added >= least - off && added <= largest + off)) fault(`${least} to ${largest} more`)
      for (const word of [ofWeights, keptWeighted ?? moreWeighted])
        if ((word !== undefined) !== weighted) fault('what is weighted')
    }
  }
  console.log(told)
  expect(wrong).toEqual([])
  expect(told.shares).toBeGreaterThan(2)
}, 3_600_000)
