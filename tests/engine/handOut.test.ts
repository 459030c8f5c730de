import { expect, test } from 'vitest'
import { handAnswer } from '../../src/engine/studies/hand/handAnswer'
import { noMotion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { glpkSolver } from '../../src/solvers/glpk'
import { example, trainOf } from '../cli/trains'
import { mustPlan, planRead } from '../planned'

const train = trainOf(example('piped-compressor'))
const best = mustPlan(planRead(train, await glpkSolver()))
const found = train.couplings.map(asFound)
const put = (motions: Readonly<Record<string, typeof noMotion>>) =>
  handAnswer(train, found, { motions, touched: Object.keys(motions) }, best)

test('by hand the couplings that go out are named, each in its worst state, the worst first', () => {
  const nothing = Object.fromEntries(train.bodies.map(({ id }) => [id, noMotion]))
  const { out, couplings } = put(nothing)
  // nothing moved is the train as found, which the answer has apart from this
  const worst = best.asFound
    .flatMap(({ coupling, share }) => {
      const [state, most] = Object.entries(share).reduce((a, b) => (b[1] > a[1] ? b : a))
      const name = train.couplings.find(({ id }) => id === coupling)?.name ?? ''
      const when = train.states.find(({ id }) => id === state)?.name ?? ''
      return most > best.share ? [{ most, text: `${name}, ${when}: ` }] : []
    })
    .sort((a, b) => b.most - a.most)
  expect(worst.length).toBeGreaterThan(0)
  expect(out).toHaveLength(worst.length)
  for (const [i, { most, text }] of worst.entries()) {
    expect(out[i]).toContain(text)
    expect(out[i]).toContain(`${Math.round(most * 100)} % of its tolerance`)
  }
  expect(Math.max(...couplings.map(({ share }) => share))).toBeCloseTo(worst[0]?.most ?? NaN, 6)
})

test('the plan itself put by hand leaves no coupling out', () => {
  const motions = Object.fromEntries(
    best.bodies.map(({ id, move }) => [id, { ...noMotion, ...move }]),
  )
  expect(put(motions).out).toEqual([])
})
