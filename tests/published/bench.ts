import { expect } from 'vitest'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'

const solver = await glpkSolver()

/** The plan of a train file; a refused one fails the test with its refusals. */
export function plan(document: unknown) {
  const answer = planTrain(document, solver, { reasons: false })
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  return answer
}

type Answer = ReturnType<typeof plan>

/** Shim and slide of each foot of all bodies, or of one, in the order of the answer. */
export function moves(answer: Answer, body?: string) {
  const feet = (answer.feet ?? []).filter((foot) => body === undefined || foot.body === body)
  if (feet.length === 0) throw new Error(`no feet in an answer that is ${answer.status}`)
  return { shim: feet.map(({ shim }) => shim), side: feet.map(({ side }) => side) }
}

/** The line of a coupling as found, carried to x; for inches and mils, where a mrad is a mil per inch. */
export function lineAt(line: Answer['asFound'][number] | undefined, x: number) {
  if (line === undefined) throw new Error('no line as found')
  const run = x - line.at
  return {
    y: line.offset.y + line.slope.y * run,
    z: line.offset.z + line.slope.z * run,
  }
}

type Numbers = number | undefined | readonly (number | undefined)[]

/** Fails unless every number found lies within the tolerance of the one wanted. */
export function near(found: Numbers, wanted: Numbers, tolerance: number): void {
  const list = (numbers: Numbers) =>
    Array.isArray(numbers)
      ? (numbers as readonly (number | undefined)[])
      : [numbers as number | undefined]
  const [a, b] = [list(found), list(wanted)]
  const apart = a.map((value, i) => Math.abs((value ?? Number.NaN) - (b[i] ?? Number.NaN)))
  const ok = a.length === b.length && apart.every((value) => value <= tolerance)
  expect(ok, `${a.join(', ')} against ${b.join(', ')} within ${tolerance}`).toBe(true)
}
