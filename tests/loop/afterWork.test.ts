import { describe, expect, it } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { afterWork } from '../../src/engine/fieldwork/loop/afterWork'
import type { ReadyAnswer } from '../../src/engine/fieldwork/ready/answer'
import { addPage } from '../../src/engine/fieldwork/loop/record'
import { paperOf } from '../../src/paper/paperOf'
import { planRead } from '../planned'
import { readTrain } from '../../src/document/readTrain'
import { given, pair, type Json } from '../engine/pair'

const stepPage = {
  kind: 'step',
  when: '2026-01-02T03:04:05Z',
  words: 'done',
  content: {},
} as const

const ready: ReadyAnswer = {
  ...{ ready: true, provisional: false, sentence: 'Ready.', provisionalSentence: '' },
  ...{ items: [], softFoot: [], strain: [], closure: [], signs: [] },
}

interface After {
  readonly ready?: ReadyAnswer
  /** What the last round's page says of the readings. */
  readonly meaning?: { readonly kind: string; readonly words: string }
  readonly found?: readonly Json[]
}

/** A pump read at `z` um where 100 are allowed, planned at a share, after so many rounds of work. */
async function judged(z: number, share: number, rounds: number, more: After = {}) {
  const content = more.meaning ? { comparison: { meaning: more.meaning } } : {}
  const page = { ...stepPage, content }
  const pages = Array.from({ length: rounds }).reduce<ReturnType<typeof addPage>>(
    (all) => addPage(all, page),
    [],
  )
  const read = readTrain(
    pair({ found: more.found ?? [given(0, z)], rest: { plan: { share }, record: { pages } } }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const plan = planRead(read.train, await glpkSolver(), { prices: false })
  const answer = { ...plan, ready: more.ready ?? ready }
  const paper = paperOf({ ...read, answer }, { size: 'a4', print: 'crew' })
  return { answer, after: afterWork(read.document, read.train, answer), paper }
}

describe('after work', () => {
  it('what is over the share asked for is never done, though moving it would be worth nothing', async () => {
    const { answer, after, paper } = await judged(75, 0.7, 1)
    expect(answer.status).toBe('planned')
    expect(after?.state).toBe('not worth it')
    expect(after?.headline).toBe('What is left to move is less than the work can be told by.')
    expect(after?.words).toMatch(
      /^Inside full tolerance, over the 70 % asked for: Motor to Pump uses 75 % .* give or take 16 %\. What a plan .* Accept it as it is, by name/,
    )
    expect(paper.notice).toBe('LESS LEFT THAN ITS ERRORS: see page 1')
    expect(JSON.stringify(paper.pages[0])).toContain('LESS LEFT THAN ITS ERRORS')
    expect(JSON.stringify([after, paper.pages[0]])).not.toMatch(/Done:|Nothing more|NOTHING MORE/)
  })

  it('within the share, with readings that agree and all that must be in, it is done', async () => {
    const { answer, after, paper } = await judged(60, 0.7, 1)
    expect(answer.status).toBe('in-tolerance')
    expect(after?.state).toBe('done')
    expect(after?.headline).toBe('Nothing more needs to be done.')
    expect(after?.words).toMatch(/^Done: .*\. Moving more would only bring new errors\.$/)
    expect(JSON.stringify(paper.pages[0])).toContain('NOTHING MORE TO DO')
  })

  it('is not done while the sheet is not ready, or nobody knows whether it is', async () => {
    const not = {
      ...ready,
      ready: false,
      sentence: 'Not ready: soft foot not measured (the pump).',
    }
    const { after } = await judged(60, 0.7, 1, { ready: not })
    expect(after?.state).toBe('open')
    expect(after?.words).toMatch(/^Not done\. Not ready: soft foot not measured/)
    expect(after?.headline).not.toContain('Nothing more')
    const read = readTrain(
      pair({
        found: [given(0, 60)],
        rest: { plan: { share: 0.7 }, record: { pages: addPage([], stepPage) } },
      }),
    )
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const plan = planRead(read.train, await glpkSolver(), { prices: false })
    expect(afterWork(read.document, read.train, plan)?.words).toMatch(/^Not judged: /)
  })

  it('is not done while readings contradict each other, or what was expected', async () => {
    const { after } = await judged(0, 0.7, 1, { found: [given(0, 20), given(0, 100)] })
    expect(after?.state).toBe('open')
    expect(after?.words).toMatch(/^Not done: the readings of Motor to Pump contradict each other/)
    const meaning = { kind: 'causes', words: 'Most likely the bracket sags.' }
    const other = await judged(60, 0.7, 1, { meaning })
    expect(other.after?.state).toBe('open')
    expect(other.after?.words).toMatch(/^Not done: in round 1 .* Most likely the bracket sags\./)
    const fine = await judged(60, 0.7, 1, { meaning: { kind: 'within doubt', words: '' } })
    expect(fine.after?.state).toBe('done')
  })

  it('a train that nobody worked on is planned as it is, however little that is', async () => {
    const { after, paper } = await judged(75, 0.7, 0)
    expect(after).toBeUndefined()
    expect(paper.notice).toBe('')
  })

  it('what a plan gains by more than its errors is left to the engineer', async () => {
    const { after, paper } = await judged(75, 0.1, 1)
    expect(after?.state).toBe('open')
    expect(after?.words).toMatch(/^Inside full tolerance.* better that by more than its own errors/)
    expect(paper.notice).toBe('')
  })

  it('out of tolerance, or too unsure to say, is worked on', async () => {
    const unsure = await judged(90, 0.7, 1)
    expect(unsure.after?.state).toBe('open')
    expect(unsure.after?.words).toMatch(/^Not sure: /)
    const out = await judged(130, 0.7, 2)
    expect(out.after?.state).toBe('open')
    expect(out.after?.words).toMatch(/^Not done: /)
  })
})
