import { Readable } from 'node:stream'
import { describe, expect, test, vi } from 'vitest'
import { run } from '../../src/cli/run'
import type { Outcome } from '../../src/engine/lp/solver'
import { exampleFile } from './trains'

const outcome = vi.hoisted(() => ({ next: undefined as (() => Outcome) | undefined }))
vi.mock('../../src/solvers/glpk', () => ({
  glpkSolver: () =>
    Promise.resolve({ name: 'scripted', solve: () => outcome.next?.() ?? { kind: 'unbounded' } }),
}))

async function ended(words: string[], solve: () => Outcome) {
  outcome.next = solve
  const out: string[] = []
  const complaints: string[] = []
  const status = await run(words, {
    folder: process.cwd(),
    input: Readable.from([]),
    output: process.stdout,
    print: (text) => out.push(text),
    complain: (text) => complaints.push(text),
  })
  return { status, out: out.join(''), complaints: complaints.join('') }
}

describe('exit 3: a failure of the program', () => {
  const file = exampleFile('pump-and-motor')
  const stops = (): Outcome => ({ kind: 'stopped', why: 'no answer within 20 s' })

  test('a solver that stops: what is known is told, and no feet', async () => {
    const { status, out } = await ended(['plan', file, '--json'], stops)
    expect(status).toBe(3)
    const answer = JSON.parse(out) as Record<string, unknown>
    expect(answer.status).toBe('stopped')
    expect(answer.why).toContain('no answer within 20 s')
    expect(answer.asFound).toHaveLength(1)
    for (const absent of ['feet', 'packs', 'cost', 'bodies'])
      expect(answer).not.toHaveProperty(absent)
    const plain = await ended(['plan', file], stops)
    expect(plain.status).toBe(3)
    expect(plain.out).toContain('The planner stopped without an answer: no plan is shown.')
    expect(plain.out).not.toContain('FEET')
  })

  test('no model is written either', async () => {
    const { status, out } = await ended(['model', file, '-o', '/nowhere/x.lp', '--json'], stops)
    expect(status).toBe(3)
    expect(JSON.parse(out)).toMatchObject({ status: 'stopped' })
  })

  test('a program that throws says so in the same form', async () => {
    const { status, out } = await ended(['plan', file, '--json'], () => {
      throw new Error('broken in the middle')
    })
    expect(status).toBe(3)
    expect(JSON.parse(out)).toEqual({
      status: 'stopped',
      why: 'the program failed: broken in the middle',
    })
  })
})
