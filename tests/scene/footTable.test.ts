import { expect, test } from 'vitest'
import { displayedPlan } from '../../src/engine/fieldwork/displayed'
import { instructionsOf } from '../../src/engine/fieldwork/steps/instructions'
import { readyCount } from '../../src/engine/fieldwork/ready/readySentence'
import { sentenceOf } from '../../src/engine/plan/sentence'
import { footTable } from '../../src/scene/footTable'
import { glpkSolver } from '../../src/solvers/glpk'
import { readTrain } from '../../src/document/readTrain'
import { example, examples } from '../cli/trains'
import { mustPlan, wholeAnswer } from '../planned'

const solver = await glpkSolver()

/** Amounts as people read them, with the sign that their words give them (in the digits of the file). */
const shimOf = (words: string): number => {
  if (words === 'pack stays') return 0
  const [, verb, digits] = /^(put in|take out) ([\d.]+) (?:µm|mm|mil)$/.exec(words) ?? []
  return (verb === 'put in' ? 1 : -1) * Number(digits)
}

for (const name of examples)
  test(`each foot of ${name} is told the plan's own numbers, signs and sides`, () => {
    const read = readTrain(example(name))
    if (!read.ok) throw new Error(name)
    const { train } = read
    const whole = wholeAnswer(read, solver)
    const answer = displayedPlan(whole)
    const steps = 'steps' in answer ? answer.steps : undefined
    const groups = footTable(train, answer, steps ? instructionsOf(train, steps) : [])
    if (answer.status === 'in-tolerance') {
      expect(groups).toEqual([])
      return
    }
    const plan = mustPlan(answer)
    const per = { um: 1, mm: 1000, mil: 25.4 }[train.units.fine]
    const close = { um: 0.51, mm: 5.1, mil: 1.3 }[train.units.fine]
    const told = groups.flatMap(({ body, rows }) => rows.map((row) => ({ body, ...row })))
    for (const { body, foot, shim, slide, steps: numbers, moves } of told) {
      const move = plan.feet.find((one) => one.body === body && one.foot === foot)
      expect(Math.abs(shimOf(shim) * per - (move?.shim ?? NaN))).toBeLessThan(close)
      const size = slide.startsWith('no slide') ? 0 : Number.parseFloat(slide)
      expect(Math.abs(size * per - Math.abs(move?.side ?? NaN))).toBeLessThan(close)
      if (size > 0)
        expect(slide).toContain((move?.side ?? 0) > 0 ? train.sides.three : train.sides.nine)
      // whatever moves has a step that does it
      expect(numbers.length > 0).toBe(moves)
    }
    // no foot that moves is left out
    for (const { body, foot, shim, side } of plan.feet)
      if (Math.abs(shim) > close || Math.abs(side) > close)
        expect(told.some((row) => row.body === body && row.foot === foot)).toBe(true)
    const fixed = train.bodies.filter(({ held }) => held).map(({ id }) => id)
    expect(told.filter(({ body }) => fixed.includes(body))).toEqual([])
  })

test('the headline names what moves where that is fewer names than what is fixed', () => {
  const read = readTrain(example('skid-as-one'))
  if (!read.ok) throw new Error('skid-as-one')
  const { headline, proof } = sentenceOf(read.train, wholeAnswer(read, solver))
  expect(headline).toBe('Move the bedplate alone.')
  expect(proof).toMatch(/^With .* fixed, no plan/)
})

test('readiness as a count: what is open of all that is asked', () => {
  const items = (...states: ('in' | 'waived' | 'missing' | 'bad')[]) =>
    states.map((state) => ({ state }))
  expect(readyCount(items('in', 'missing', 'bad'))).toBe('Not ready: 2 of 3 checks are open')
  expect(readyCount(items('in', 'missing'))).toBe('Not ready: 1 of 2 checks is open')
  expect(readyCount(items('in', 'in'))).toBe('Ready: all 2 checks are in')
  expect(readyCount(items('in', 'waived'))).toBe(
    'Ready: all 2 checks are in, 1 of them accepted without',
  )
})
