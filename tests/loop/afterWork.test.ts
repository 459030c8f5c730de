import { describe, expect, it } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { afterWork } from '../../src/engine/fieldwork/loop/afterWork'
import { addPage } from '../../src/engine/fieldwork/loop/record'
import { paperOf } from '../../src/paper/paperOf'
import { planRead } from '../planned'
import { readTrain } from '../../src/document/readTrain'
import { given, pair } from '../engine/pair'

/** A pump read at `z` um where 100 are allowed, planned at a share, after so many rounds of work. */
async function judged(z: number, share: number, rounds: number) {
  const page = { kind: 'step', when: '2026-01-02T03:04:05Z', words: 'done', content: {} } as const
  const pages = Array.from({ length: rounds }).reduce<ReturnType<typeof addPage>>(
    (all) => addPage(all, page),
    [],
  )
  const read = readTrain(
    pair({ found: [given(0, z)], rest: { plan: { share }, record: { pages } } }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const answer = planRead(read.train, await glpkSolver(), { prices: false })
  const paper = paperOf({ ...read, answer }, { size: 'a4' })
  return { answer, after: afterWork(read.document, read.train, answer), paper }
}

describe('after work', () => {
  it('a few micrometres that the share asked for still wants are nothing to be done', async () => {
    const { answer, after, paper } = await judged(75, 0.7, 1)
    expect(answer.status).toBe('planned')
    expect(after?.settled).toBe(true)
    expect(after?.headline).toBe('Nothing more needs to be done.')
    expect(after?.words).toMatch(
      /^Done: Motor to Pump uses 75 % .* give or take 16 %\. What a plan/,
    )
    expect(paper.notice).toBe('NOTHING MORE TO DO: see page 1')
    expect(JSON.stringify(paper.pages[0])).toContain('NOTHING MORE TO DO')
  })

  it('a train that nobody worked on is planned as it is, however little that is', async () => {
    const { after, paper } = await judged(75, 0.7, 0)
    expect(after).toBeUndefined()
    expect(paper.notice).toBe('')
  })

  it('what a plan gains by more than its errors is left to the engineer', async () => {
    const { after, paper } = await judged(75, 0.1, 1)
    expect(after?.settled).toBe(false)
    expect(after?.words).toMatch(/^Done: .* better that by more than its own errors/)
    expect(paper.notice).toBe('')
  })

  it('out of tolerance, or too unsure to say, is worked on', async () => {
    const unsure = await judged(90, 0.7, 1)
    expect(unsure.after?.settled).toBe(false)
    expect(unsure.after?.words).toMatch(/^Not sure: /)
    const out = await judged(130, 0.7, 2)
    expect(out.after?.settled).toBe(false)
    expect(out.after?.words).toMatch(/^Not done: /)
  })

  it('a train that asks for nothing is done in the same words', async () => {
    const { answer, after } = await judged(60, 0.7, 1)
    expect(answer.status).toBe('in-tolerance')
    expect(after?.settled).toBe(false)
    expect(after?.words).toMatch(/^Done: .*\. Moving more would only bring new errors\.$/)
  })
})
