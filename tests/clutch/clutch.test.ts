import { readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { renamedState, withEngaged, withoutState } from '../../src/document/edits/stateEdits'
import type { TrainDocument } from '../../src/document/schema'
import { everyStage, PlanningRun } from '../../src/engine/planningRun'
import type { Solver } from '../../src/engine/lp/solver'
import { prove } from '../../src/engine/proof/prove'
import { hotCheckAnswers } from '../../src/engine/fieldwork/hotCheck/hotChecks'
import { handAnswer } from '../../src/engine/studies/hand/handAnswer'
import { paperOf } from '../../src/paper/paperOf'
import { couplingFacts } from '../../src/scene/couplingFacts'
import { figuresOf } from '../../src/scene/figures'
import { sheetScene } from '../../src/scene/sheet'
import { glpkSolver } from '../../src/solvers/glpk'
import { planText } from '../../src/text/planText'
import { given, twoMachines } from '../second/pairs'
import type { Train } from '../second/train'

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

/** The right machine grows 100 um up while the left one stands by, 300 um while it drives. */
const train = (disengaged?: string[]): Train =>
  twoMachines(
    { offset: 50, angle: 5 },
    [given(0, -50)],
    { growth: { standby: [{ at: 1000, rise: 300 }], driving: [{ at: 1000, rise: 100 }] } },
    {
      states: [
        { id: 'standby', name: 'standing by' },
        { id: 'driving', name: 'driving' },
      ],
    },
    { disengaged },
  )

function planned(document: Train) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const run = new PlanningRun(read, solver)
  return { ...read, run, answer: run.answer(everyStage) }
}
const flat = (text: string) => text.replace(/\s+/g, ' ')

test('where a clutch is open nothing of it is judged: in tolerance with it open, impossible with it engaged', () => {
  // driving: -50 + 100 = 50 um, the whole of its tolerance; standing by: 250 um
  const open = planned(train(['standby'])).answer
  expect(open.status).toBe('in-tolerance')
  expect(open.standingShare).toBeCloseTo(1, 9)
  expect(open.asFound[0]?.share).toEqual({ driving: open.standingShare })
  // 200 um apart in two states, 50 um allowed in each: no place is right for both
  expect(planned(train()).answer.status).toBe('impossible')
})

test('a plan, its proof, its bound and what is put by hand leave it out', () => {
  const document = { ...train(['standby']), plan: { share: 0.5 } }
  const { run, answer } = planned(document)
  if (answer.status !== 'planned') throw new Error(answer.status)
  expect(answer.couplings.map(({ state }) => state)).toEqual(['driving'])
  // 25 um down at mid-span: one pair of feet 25/1.9 um, which lowers the angle nobody minds
  expect(answer.cost).toBeCloseTo((2 * 25) / 1.9, 3)
  const lines = run.found().map(({ line }) => line)
  const { bound, byOwnRows } = run.bound()
  expect(byOwnRows).toBe(true)
  expect(prove(run.train, lines, run.motions(), 0.5, bound).sound).toBe(true)
  const closed = {
    ...run.train,
    couplings: run.train.couplings.map(({ disengaged: _, ...coupling }) => coupling),
  }
  expect(prove(closed, lines, run.motions(), 0.5, bound).sound).toBe(false)
  const motions = Object.fromEntries(
    answer.bodies.map(({ id, move }) => [id, { ...move, tz: move.tz - 10 }]),
  )
  const hand = handAnswer(run.train, run.found(), { motions, touched: ['B'] }, answer)
  expect(hand.couplings.map(({ state }) => state)).toEqual(['driving'])
})

test('every face says not engaged where the share would stand, and never a nought', () => {
  const {
    document,
    train: read,
    answer,
  } = planned({
    ...train(['standby']),
    plan: { share: 0.5 },
  })
  const text = flat(planText(read, answer))
  expect(text).toContain('standing by not engaged')
  expect(text).toContain(
    'Motor to Pump: engaged in driving; not engaged, and not judged, in standing by',
  )
  expect(text).not.toMatch(/standing by +\d+ %/)
  const [facts] = couplingFacts(read, answer, figuresOf(read, answer))
  expect(facts?.rows.map(({ name }) => name)).toEqual(['driving'])
  expect(facts?.apart).toEqual([{ state: 0, name: 'standing by' }])
  for (const print of ['crew', 'office'] as const) {
    const paper = JSON.stringify(paperOf({ document, train: read, answer }, { size: 'a4', print }))
    expect(paper, print).toContain('not engaged')
    expect(paper).not.toMatch(/Infinity|NaN|undefined/)
  }
  for (const chosen of [undefined, 0, 1]) {
    const scene = sheetScene(read, answer, figuresOf(read, answer), {
      room: 1200,
      ...(chosen !== undefined && { chosen }),
    })
    // what is drawn and said: a number without end becomes null in JSON
    expect(JSON.stringify([scene.rise.gates, scene.side.gates])).not.toMatch(/null|NaN/)
    expect(JSON.stringify(scene.couplings)).toContain('"name":"standing by"')
  }
})

test('a state that is renamed or taken away takes its open clutches along', () => {
  const document = train(['standby']) as TrainDocument
  expect(renamedState(document, 0, 'turning').couplings[0]?.disengaged).toEqual(['standby'])
  expect(withoutState(document, 0).couplings[0]?.disengaged).toBeUndefined()
  // the last state in which it is engaged stays
  expect(withEngaged(document, 0, 'driving', false)).toBe(document)
  expect(withEngaged(document, 0, 'standby', true).couplings[0]?.disengaged).toBeUndefined()
  const engaged = withEngaged(document, 0, 'standby', true)
  expect(withEngaged(engaged, 0, 'driving', false).couplings[0]?.disengaged).toEqual(['driving'])
})

test('a hot check in a state where a clutch is open tells its line, and judges nothing of it', () => {
  const document = JSON.parse(readFileSync('examples/hot-check.json', 'utf8')) as TrainDocument
  const [first] = document.couplings
  if (!first) throw new Error('no coupling')
  const told = (disengaged: string[] | undefined) => {
    const read = readTrain({
      ...document,
      couplings: document.couplings.map((one, c) => (c === 0 ? { ...one, disengaged } : one)),
    })
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const [answer] = hotCheckAnswers(read)
    if (!answer) throw new Error('no hot check')
    return answer
  }
  const [closed, open] = [told(undefined), told(['full-load'])]
  // the example's worst is its first coupling; without it the other one is told
  expect(closed.trim.coupling).toBe(first.id)
  expect(open.trim.coupling).not.toBe(first.id)
  expect(open.couplings[0]?.running).toEqual(closed.couplings[0]?.running)
  expect(closed.couplings[0]?.share).toBeDefined()
  expect(open.couplings[0]?.share).toBeUndefined()
  expect(open.sentences.join(' ')).toContain('Its clutch is open in this state: it is not judged')
})
