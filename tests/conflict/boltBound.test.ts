import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { sentenceOf } from '../../src/engine/plan/sentence'
import { limitName } from '../../src/engine/infeasible/conflict/limitWords'
import { PlanningRun } from '../../src/engine/planningRun'
import { readTrain } from '../../src/document/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'
import { leastShareOf } from './separate'

/** The bolt-bound train as somebody would plan it who holds the gear because it is in the middle. */
function gearHeld(): Train {
  const file = new URL('../../examples/bolt-bound-gearbox.json', import.meta.url)
  const train = JSON.parse(readFileSync(file, 'utf8')) as Train
  return { ...train, machines: train.machines.map((m) => ({ ...m, held: m.id === 'gear' })) }
}

/** The train with a machine's holes or its flanges without limit. */
function freed(train: Train, id: string, what: { holes?: boolean; flanges?: boolean }): Train {
  return {
    ...train,
    machines: train.machines.map((machine) =>
      machine.id !== id
        ? machine
        : {
            ...machine,
            ...(what.holes && {
              feet: machine.feet.map((foot) => ({ ...foot, hole: undefined })),
            }),
            ...(what.flanges && { restraints: undefined }),
          },
    ),
  }
}

const floorOf = async (train: Train) => (await solveSecond(train)).floor
const solver = await glpkSolver()
const read = readTrain(JSON.parse(JSON.stringify(gearHeld())))
if (!read.ok) throw new Error('refused')
const run = new PlanningRun(read, solver)
const [first] = run.reasons()?.conflicts ?? []
const { members: conflict = [], sentence: conflictSentence = '' } = first ?? {}

describe('holding the gear of bolt-bound-gearbox', () => {
  it('is refused for the room of the low stage at its bolts, in words', () => {
    expect(conflictSentence).toMatch(
      /^With the step-up gear fixed, low stage to gear in turndown cannot come within the 70 % of tolerance asked for: the feet of the low-stage compressor lack at least \d+ µm toward the workshop \(bolt-bound, bolts at their holes\), and more there alone would not be enough\.$/,
    )
    expect(
      conflict.map(({ limit }) => [
        limitName(limit),
        limit.kind === 'coupling' ? limit.coupling : limit.body,
      ]),
    ).toEqual([
      ['held', 'gear'],
      ['tolerance', 'low-gear'],
      ['hole', 'low-stage'],
    ])
  })

  it('says in its first words what is bolt-bound', () => {
    const answer = run.answer({ reasons: true })
    expect(sentenceOf(run.train, answer).headline).toBe(
      'The low-stage compressor is bolt-bound: with the step-up gear fixed, the best reachable is 372 % of tolerance; 70 % was asked for.',
    )
    const unexplained = sentenceOf(run.train, run.answer({}))
    expect(unexplained.headline).toMatch(/^With the step-up gear fixed, the best/)
  })

  it('is not refused for the room of the turbine, whatever else one might expect', async () => {
    const train = gearHeld()
    const floor = await floorOf(train)
    expect(floor).toBeCloseTo(3.7153, 3)
    // its bolts off, nothing changes
    expect(await floorOf(freed(train, 'turbine', { holes: true }))).toBeCloseTo(floor, 6)
    // bolts and flanges of the low stage: either alone keeps the floor up, without both it can be planned
    expect(await floorOf(freed(train, 'low-stage', { holes: true }))).toBeCloseTo(3.665, 2)
    expect(await floorOf(freed(train, 'low-stage', { flanges: true }))).toBeCloseTo(3.641, 2)
    expect(await floorOf(freed(train, 'low-stage', { holes: true, flanges: true }))).toBeLessThan(
      0.7,
    )
  })

  it('has no smaller set: no pair of its members is impossible', async () => {
    expect(await leastShareOf(gearHeld(), conflict)).toBeGreaterThan(3)
    for (const gone of conflict)
      expect(
        await leastShareOf(
          gearHeld(),
          conflict.filter((one) => one !== gone),
        ),
      ).toBeLessThan(0.7)
  })
})
