import { describe, expect, it } from 'vitest'
import { planRead } from '../planned'
import { hasMoves } from '../../src/engine/plan/moves'
import { PlanningRun } from '../../src/engine/planningRun'
import { holdsOf } from '../../src/engine/studies/holds/holdRows'
import { conflictMarks, conflictPlaces } from '../../src/scene/conflictMarks'
import { sheetScene } from '../../src/scene/sheet'
import { holdList } from '../../src/text/holdList'
import { costAt, pointInWords, stepsInWords } from '../../src/text/marginWords'
import { readTrain } from '../../src/document/readTrain'
import { tradeoffPlanner } from '../../src/engine/studies/tradeoff/tradeoff'
import { glpkSolver } from '../../src/solvers/glpk'
import { draw, drawExample, example, exampleFiles } from './trains'

const file = 'bolt-bound-gearbox.json'
/** The example with the gear held instead of the low stage: its bolts are in the way. */
const gearHeld = () => {
  const document = example(file)
  return {
    ...document,
    machines: document.machines.map((one) => ({ ...one, held: one.id === 'gear' })),
  }
}

describe('the list of choices', () => {
  it.each(exampleFiles)(
    '%s: holds every choice once, and nothing and now by themselves',
    async (name) => {
      const { train } = await drawExample(name)
      const { rows, complete } = holdsOf(train, await glpkSolver(), { prices: false })
      const list = holdList(train, { rows, complete })
      const told = list.shown.length + list.beaten.length + list.impossible.length
      const same = [...list.shown, ...list.beaten].reduce((sum, item) => sum + item.same.length, 0)
      expect(told + same + list.implied).toBe(rows.length)
      expect(list.shown.filter(({ current }) => current)).toHaveLength(1)
      const fewest = Math.min(...rows.map(({ held }) => held.length))
      expect(list.shown.filter(({ held }) => held.length === fewest)).toHaveLength(1)
      // the first of the list has the plan of the best choice; what is held now stands for it if it can
      const [first] = list.shown
      const face = rows.find(({ held }) => held.join(' ') === first?.held.join(' '))
      expect([face?.held, face?.sameAs]).toContainEqual(rows[0]?.held)
      if (rows.some(({ current, sameAs }) => current && sameAs === rows[0]?.held))
        expect(face?.current).toBe(true)
      for (const [i, item] of list.shown.entries()) {
        if (i > 0) expect(item.why).not.toBe('')
        expect(item.verdict === undefined).toBe(item.moves !== undefined)
      }
    },
  )

  it('tells moves and effort apart, and what is impossible in words', async () => {
    const { train } = await draw(gearHeld())
    const { rows, complete } = holdsOf(train, await glpkSolver(), { prices: false })
    const { shown } = holdList(train, { rows, complete })
    expect(shown[0]).toMatchObject({
      title: 'The low-stage compressor fixed',
      moves: '2702',
      effort: '300',
      current: false,
    })
    const now = shown.find(({ current }) => current)
    expect(now).toMatchObject({ title: 'The step-up gear fixed', verdict: 'no plan' })
    expect(now?.moves).toBeUndefined()
  })
})

describe('the curve in words', () => {
  it('costs what a plan at that share costs', async () => {
    const solver = await glpkSolver()
    const { train } = await drawExample(file)
    const tradeoff = tradeoffPlanner(train, solver)?.curve
    if (!tradeoff) throw new Error('no curve')
    for (const share of [0.65, 0.7, 0.85, 1]) {
      const other = { ...train, plan: { ...train.plan, share } }
      const plan = planRead(other, solver, { prices: false })
      const cost = hasMoves(plan) ? plan.cost : NaN
      expect(Math.abs((costAt(tradeoff, share) ?? NaN) / cost - 1)).toBeLessThan(1e-4)
    }
    expect(costAt(tradeoff, tradeoff.floor - 0.01)).toBeUndefined()
    expect(costAt(tradeoff, tradeoff.standing + 0.01)).toBe(0)
    expect(pointInWords(train, tradeoff, 0.7)).toBe('70 %, 2702 µm of moves')
    expect(pointInWords(train, tradeoff, 0.9)).toMatch(/^90 %, \d+ µm of moves; no room for error$/)
    expect(pointInWords(train, tradeoff, 0.5)).toBe('50 %, no plan: the best reachable is 64 %')
    expect(stepsInWords(train, tradeoff, 0.65)).toMatch(/^60 % cannot be reached, 2702 µm at 70 %$/)
  })
})

describe('a conflict on the sheet', () => {
  it('marks the members and nothing else', async () => {
    const document = gearHeld()
    const solver = await glpkSolver()
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    const { train } = read
    const drawing = await draw(document)
    const conflict = new PlanningRun(read, solver).reasons()?.conflicts[0]?.members ?? []
    const places = conflictPlaces(train, conflict)
    const count =
      places.feet.size +
      places.bodies.size +
      [...places.couplings.values()].reduce((sum, states) => sum + states.size, 0)
    expect(count).toBe(conflict.length)
    expect(count).toBeGreaterThan(1)
    expect(places.bodies).toEqual(new Set([train.bodies.findIndex(({ id }) => id === 'gear')]))
    const scene = sheetScene(train, drawing.answer, drawing.figures, { room: 1000 })
    const marks = conflictMarks(train, places, scene.scale, scene.elevation)
    const owners = new Set([...places.feet].map((key) => key.split(' ')[0]))
    expect(marks).toHaveLength(places.couplings.size + places.bodies.size + owners.size)
    // two strokes each: a frame is closed twice, a line under a foot drawn twice
    for (const { d } of marks) expect((d.match(/M/g)?.length ?? 0) % 2).toBe(0)
    expect(conflictMarks(train, conflictPlaces(train, []), scene.scale, scene.elevation)).toEqual(
      [],
    )
  })
})
