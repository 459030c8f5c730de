import { expect } from 'vitest'
import { planTrain, wholeAnswer } from '../planned'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import type { AnswerJson } from '../../src/json/answerJson'
import { readTrain } from '../../src/document/readTrain'
import type { Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'

export type Json = Record<string, unknown>

export const solver = await glpkSolver()

export interface Pair {
  /** Added to the left machine, the right one, their coupling and the whole document. */
  readonly left?: Json
  readonly right?: Json
  readonly coupling?: Json
  readonly rest?: Json
  readonly found?: readonly Json[]
}

/** Feet at x = 1000 and 2000 mm, 300 mm each side of the middle. */
export const fourFeet = [1000, 2000].flatMap((x) =>
  [300, -300].map((y) => ({ id: `${x}${y > 0 ? 'a' : 'b'}`, x, y })),
)

/** One row of two feet at x = 1000 mm: such a body neither pitches nor yaws. */
export const oneRow = fourFeet.slice(0, 2)

/** One foot a row, in the middle: a yaw carries none along the train. */
export const twoFeet = [1000, 2000].map((x) => ({ id: `${x}`, x }))

/** Misalignment given at mid-span (um, mrad). */
export const given = (y: number, z: number, slopeY = 0, slopeZ = 0): Json => ({
  kind: 'line',
  at: 100,
  offset: { y, z },
  slope: { y: slopeY, z: slopeZ },
})

/**
 * Two machines in mm and um for sums done by hand: the left one anchored, the right one on four
 * feet, axes 400 mm up, flex planes at x = 0 and 200 mm, so mid-span at 100. What the feet at 1000
 * rise by a, and those at 2000 by b, counts 1.9 a - 0.9 b at mid-span, and (b - a) / 1000 as a slope.
 * The offset may be 100 um.
 */
export const pair = ({ left, right, coupling, rest, found }: Pair = {}): Json => ({
  format: 'holdfast-train',
  version: 1,
  name: 'pair',
  units: { length: 'mm', fine: 'um' },
  clock: { seenFrom: 'left' },
  machines: [
    { id: 'A', name: 'Motor', axis: { z: 400 }, anchored: 'dowelled', feet: [], ...left },
    { id: 'B', name: 'Pump', axis: { z: 400 }, feet: fourFeet, ...right },
  ],
  couplings: [
    {
      id: 'c',
      left: { machine: 'A', plane: 0 },
      right: { machine: 'B', plane: 200 },
      tolerance: { offset: 100 },
      found: found ?? [given(0, 0)],
      ...coupling,
    },
  ],
  ...rest,
})

export function planOf(document: unknown): AnswerJson {
  const answer = planTrain(document, solver)
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  return answer
}

export function trainOf(document: unknown): Train {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train
}

/** Entry of a list that must be there. */
export function at<T>(list: readonly T[] | undefined, index: number): T {
  const entry = list?.[index]
  if (entry === undefined) throw new Error(`no entry ${index}`)
  return entry
}

/** Stands for a number within half a unit of a decimal, wherever a whole object is compared. */
export const close = (value: number, digits = 9): number => expect.closeTo(value, digits) as number

/** The same in engine units, for what prints it. */
export function answerOf(document: unknown): PlanAnswer {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return wholeAnswer(read, solver)
}
