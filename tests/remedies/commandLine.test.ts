import { Readable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { run } from '../../src/cli/run'
import type { AnswerJson } from '../../src/json/answerJson'
import { applyRemedy } from '../../src/engine/infeasible/remedies/change'
import { holdfast } from '../cli/shell'
import { firstOf } from '../counts'
import { reasonsOf } from './bench'
import { large, small } from './trains'

/** What the command line answers to a file on standard input. */
async function answered(document: unknown, words = ['plan', '-', '--json']) {
  let out = ''
  const status = await run(words, {
    folder: '.',
    input: Readable.from([Buffer.from(JSON.stringify(document))]),
    output: process.stdout,
    print: (text) => {
      out += text
    },
    complain: (text) => {
      throw new Error(text)
    },
  })
  return { status, out }
}

/** The last one is a skid whose roundings take their whole work: in the long run. */
const all = [...small, ...large]

describe.each(firstOf(all, 5, all.length - 1))('$name', ({ document }) => {
  it('every remedy said to solve is solved again from the changed file', async () => {
    const reasons = reasonsOf(document)
    const working = reasons.remedies.filter(({ solves }) => solves)
    expect(working.length).toBeGreaterThan(0)
    for (const remedy of working) {
      const { status, out } = await answered(applyRemedy(reasons.document, remedy))
      const after = JSON.parse(out) as AnswerJson
      expect([status, after.status], remedy.sentence).toEqual([
        0,
        remedy.cost === 0 ? 'in-tolerance' : 'planned',
      ])
      expect(Math.abs((after.cost ?? NaN) - (remedy.cost ?? NaN))).toBeLessThanOrEqual(
        2e-5 * (remedy.cost ?? NaN) + 1e-9,
      )
      expect(after.floor).toBeCloseTo(remedy.floor ?? NaN, 9)
      expect(after.worstShare).toBeLessThanOrEqual(after.share * (1 + 2e-6))
      expect(after.remedies).toBeUndefined()
    }
  })
})

describe('the command line on an impossible train', () => {
  const impossible = large[0]?.document

  it('prints conflict and remedies with status 1', () => {
    const { status, out } = holdfast(['plan', '-', '--json'], { input: JSON.stringify(impossible) })
    const answer = JSON.parse(out) as AnswerJson
    expect([status, answer.status]).toEqual([1, 'impossible'])
    for (const { limit, where, sentence } of answer.conflict ?? [])
      expect([limit, where, sentence]).not.toContain('')
    expect(answer.conflict?.length).toBe(3)
    expect(answer.conflictSentence).toContain('toward the workshop')
    const [first] = answer.remedies ?? []
    for (const key of ['kind', 'effort', 'where', 'amount', 'solves', 'floor', 'cost', 'agree'])
      expect(first).toHaveProperty(key)
    expect(answer.holdsTried).toEqual({ tried: 4, solve: 3 })
    for (const absent of ['cost', 'bodies', 'feet', 'couplings', 'expected', 'proof'])
      expect(answer).not.toHaveProperty(absent)
  })

  it('the same file gives the same bytes', async () => {
    const [a, b] = [await answered(impossible), await answered(impossible)]
    expect(a.out).toBe(b.out)
  })

  it('a remedy written to a file is planned by a process of its own', () => {
    const { document, remedies } = reasonsOf(impossible)
    const [first] = remedies
    if (!first) throw new Error('no remedy')
    const input = JSON.stringify(applyRemedy(document, first))
    const { status, out } = holdfast(['plan', '-', '--json'], { input })
    expect(status).toBe(0)
    expect((JSON.parse(out) as AnswerJson).cost).toBeCloseTo(first.cost ?? NaN, 6)
  })

  it('as text says why not, what helps, who must agree, in 80 columns', async () => {
    for (const { document } of large.slice(0, 2)) {
      const { status, out } = await answered(document, ['plan', '-'])
      expect(status).toBe(1)
      for (const words of ['WHY NOT', 'REMEDIES', 'Must agree:', 'crew hours', 'First read again'])
        expect(out).toContain(words)
      for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
    }
  })
})
