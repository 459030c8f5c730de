import { readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { PlanningRun, everyStage } from '../../src/engine/planningRun'
import { axialShown } from '../../src/scene/axialShown'
import { axialTable } from '../../src/engine/plan/axialTable'
import type { Solver } from '../../src/engine/lp/solver'
import { paperOf } from '../../src/paper/paperOf'
import { glpkSolver } from '../../src/solvers/glpk'
import { planText } from '../../src/text/planText'

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

const example = (): TrainDocument =>
  JSON.parse(readFileSync('examples/endwise.json', 'utf8')) as TrainDocument

function planned(document: TrainDocument) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const run = new PlanningRun(read, solver)
  return { ...read, answer: run.answer(everyStage) }
}

test('gaps, rotors and stretch of every state follow from the moves, by hand', () => {
  const { train, answer } = planned(example())
  const axial = axialShown(train, answer)
  if (!axial) throw new Error('no row')
  const [motor, gear, compressor] = axial.machines
  const [first] = axial.couplings
  if (!motor?.moves || !gear?.moves || !compressor?.moves || !first)
    throw new Error('a member lacks')
  expect(compressor.moves).toEqual({ feet: 0, left: 0, right: 0 })
  expect(motor.moves.feet).toBeLessThan(-100)
  // cold: what was found, opened by the gear's left shaft and closed by the motor's right one
  const planned1 = 250.2 + (gear.moves.left - motor.moves.right) / 1000
  expect(first.planned).toBeCloseTo(planned1, 9)
  const hot = first.states.find(({ state }) => state === 'hot-summer')
  // the gear's face grows 0.15 mm to the left, the motor's shaft 0.3 mm to the right; its rotor runs 0.6 mm right
  const gap = planned1 - 0.15 - 0.3 - 0.6
  expect(hot?.gap).toBeCloseTo(gap, 9)
  expect(hot?.left).toBeCloseTo(0.5 - Math.abs(gap - 250), 9)
  // the gear's rotor may lie 0.1 mm to either side
  expect(hot?.stretch?.from).toBeCloseTo(gap - 250 - 0.1, 9)
  expect(hot?.stretch?.to).toBeCloseTo(gap - 250 + 0.1, 9)
  expect(hot?.stretch?.left).toBeCloseTo(1.5 - Math.abs(gap - 250) - 0.1, 9)
  // at its own length the coupling draws the motor's rotor from its centre by what the gap is off
  expect(hot?.rotor?.from).toBeCloseTo(0.6 + gap - 250 - 0.1, 9)
  expect(hot?.rotor?.left).toBeCloseTo(4 + 0.6 + gap - 250 - 0.1, 9)
})

test('every face says which machine moves endwise, how far and toward whom', () => {
  const read = planned(example())
  const { train, answer } = read
  const axial = axialShown(train, answer)
  if (!axial) throw new Error('no row')
  const table = axialTable(train, axial)
  expect(table.members.map(({ name }) => name)).toEqual([
    'Motor',
    'motor to gear',
    'Step-up gear',
    'gear to compressor',
    'Air compressor',
  ])
  const feet = axial.machines[1]?.moves?.feet ?? 0
  const said = `${Math.round(-feet)} µm to the left, toward the motor`
  expect(table.rows.find(({ key }) => key === 'moves')?.cells[2]).toBe(said)
  expect(table.rows.find(({ key }) => key === 'moves')?.cells[4]).toBe('stays')
  const flat = (text: string) => text.replace(/\s+/g, ' ')
  expect(flat(planText(train, answer))).toContain(said)
  for (const print of ['crew', 'office'] as const) {
    const paper = paperOf(read, { size: 'a4', print, date: '' })
    expect(flat(JSON.stringify(paper)), print).toContain(said)
  }
})

test('a crew that moves nothing endwise gets no such page', () => {
  const document = example()
  for (const machine of document.machines) delete machine.free
  for (const coupling of document.couplings) if (coupling.axial) coupling.axial.tolerance = 2
  const read = planned(document)
  expect(read.answer.status).toBe('planned')
  const titles = (print: 'crew' | 'office') =>
    JSON.stringify(paperOf(read, { size: 'a4', print, date: '' })).includes('Along the train')
  expect([titles('crew'), titles('office')]).toEqual([false, true])
})

test('what no gap was entered for is told as not entered', () => {
  const document = example()
  delete document.couplings[1]?.axial
  const { train, answer } = planned(document)
  const axial = axialShown(train, answer)
  expect(axial?.couplings.map(({ coupling }) => coupling)).toEqual(['motor-gear'])
  const table = axial && axialTable(train, axial)
  expect(table?.rows.find(({ key }) => key === 'found')?.cells[3]).toBe('not entered')
})
