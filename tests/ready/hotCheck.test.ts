import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { withFoundGrowth } from '../../src/engine/fieldwork/hotCheck/hotChecks'
import { glpkSolver } from '../../src/solvers/glpk'
import { planText } from '../../src/text/planText'
import { wholeAnswer } from '../planned'

const solver = await glpkSolver()

const example = JSON.parse(readFileSync('examples/hot-check.json', 'utf8')) as TrainDocument

function planned(document: TrainDocument) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const answer = wholeAnswer(read, solver, { reasons: false })
  return {
    read,
    answer,
    items: (answer.ready?.items ?? []).filter(({ what }) => what === 'hot check'),
  }
}

it('a train that ran beyond its tolerance where its growth expects little is not ready, though nothing needs to move', () => {
  const { read, answer, items } = planned(example)
  expect(answer.status).toBe('in-tolerance')
  expect(items).toMatchObject([{ where: 'june', state: 'bad' }])
  // as it ran and as expected: what the hot check itself tells
  expect(items[0]?.words).toBe(
    'hot check “June, full load”: in “full load” turbine to compressor ran at 161 % of its tolerance, and the growth in use expects 17 %; take the growth that it found, or find out why, before anything is decided by these numbers',
  )
  expect(answer.ready?.ready).toBe(false)
  expect(planText(read.train, answer).replace(/\s+/g, ' ')).toContain(
    'Not ready: a hot check shows what the growth in use does not expect (“June, full load”)',
  )
})

it('once the growth that it found is in use the plan is made for it, and it is in', () => {
  const { read } = planned(example)
  const corrected = planned(withFoundGrowth(read, 'june'))
  expect(corrected.answer.status).toBe('planned')
  expect(corrected.items).toMatchObject([{ state: 'in' }])
})

it('it is accepted by name and reason, says nothing while it is not used, and nothing where it ran within its tolerance', () => {
  const waiver = {
    what: 'hot check' as const,
    where: 'june',
    by: 'R. Hale',
    why: 'it is trimmed at the next stop',
  }
  expect(planned({ ...example, record: { waivers: [waiver] } }).items).toMatchObject([
    { state: 'waived', by: 'R. Hale' },
  ])
  const [check] = example.hotChecks ?? []
  if (!check) throw new Error('no hot check')
  // read once after the stop, its time constant unknown: nothing is told of any coupling, and nothing is asked
  const once = check.couplings?.map((one) => ({ ...one, times: one.times.slice(0, 1) }))
  expect(planned({ ...example, hotChecks: [{ ...check, couplings: once }] }).items).toEqual([])
  expect(planned({ ...example, hotChecks: [{ ...check, use: false }] }).items).toEqual([])
  const wide = example.couplings.map((one) => ({
    ...one,
    tolerance: { flex: 3, shape: 'round' as const },
  }))
  expect(planned({ ...example, couplings: wide }).items).toMatchObject([{ state: 'in' }])
})
