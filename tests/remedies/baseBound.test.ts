import { expect, it } from 'vitest'
import { applyRemedy } from '../../src/engine/infeasible/remedies/change'
import { moves, near } from '../published/bench'
import { caseOf } from '../published/cases'
import { planOf, reasonsOf } from './bench'

interface Case {
  input: {
    'pump feet': number[]
    coupling: number
    'motor feet': [number, number]
    'motor must drop': [number, number]
    'minimum pack': number
  }
  expected: Record<"pump line raised at the motor's feet" | 'motor rises', number[]>
}

const { input, expected, tolerance } = caseOf<Case>('baseBound', 'T2')
const [front, rear] = input['motor feet']
const [dropFront, dropRear] = input['motor must drop']

/** A held pump, and a motor on bare base that lies too high; only the true line is right. */
function train() {
  const slope = (dropRear - dropFront) / (rear - front)
  const at = input.coupling
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'Motor without shims',
    units: { length: 'in', fine: 'mil' },
    clock: { seenFrom: 'left' },
    machines: [
      {
        id: 'pump',
        name: 'Pump',
        axis: { z: 10 },
        held: true,
        feet: input['pump feet'].map((x, i) => ({
          id: `${i + 1}`,
          x,
          pack: { now: 125, min: 50 },
        })),
      },
      {
        id: 'motor',
        name: 'Motor',
        axis: { z: 10 },
        weight: 5,
        feet: input['motor feet'].map((x, i) => ({
          id: `${i + 1}`,
          x,
          pack: { now: 0, min: input['minimum pack'] },
        })),
      },
    ],
    couplings: [
      {
        id: 'c',
        left: { machine: 'pump', plane: at },
        right: { machine: 'motor', plane: at },
        tolerance: { offset: 0.0001, angle: 0.0001 },
        found: [
          {
            kind: 'line',
            at,
            offset: { y: 0, z: dropFront + slope * (at - front) },
            slope: { y: 0, z: slope },
          },
        ],
      },
    ],
  }
}

it('T2: the pump is raised and the motor set on its minimum pack (secondary source)', () => {
  const answer = reasonsOf(train())
  expect(answer.conflictSentence).toMatch(
    /^With the pump fixed, .* feet of the motor lack .* downward/,
  )
  const raise = answer.remedies.find(({ kind }) => kind === 'raise')
  expect(raise?.solves).toBe(true)
  expect(raise?.sentence).toMatch(
    /Raise the pump on plates of 25 mil .* motor on its minimum pack, 50 mil up/,
  )
  if (!raise) return
  const document = applyRemedy(answer.document, raise)
  const after = planOf(document)
  const was = (machine: number, foot: number) =>
    answer.document.machines[machine]?.feet[foot]?.pack?.now ?? NaN
  const risen = (machine: number, id: string) =>
    moves(after, id).shim.map((shim, f) => {
      const now = document.machines[machine]?.feet[f]?.pack?.now ?? NaN
      return now - was(machine, f) + shim
    })
  const [a = NaN, b = NaN] = risen(0, 'pump')
  const [xa = NaN, xb = NaN] = input['pump feet']
  const line = (x: number) => a + ((b - a) * (x - xa)) / (xb - xa)
  near([line(front), line(rear)], expected["pump line raised at the motor's feet"], tolerance)
  near(risen(1, 'motor'), expected['motor rises'], tolerance)
})

it('T2: what the plates do to the readings is said to be worked out, not read', () => {
  const answer = reasonsOf(train())
  const raise = answer.remedies.find(({ kind }) => kind === 'raise')
  const fields = raise?.change.map(({ at }) => at) ?? []
  expect(fields).toContain('couplings[0].found[0].offset.z')
  expect(raise?.change.find(({ at }) => at === 'couplings[0].found[0].why')?.to).toBe(
    'worked out for the plates, not read',
  )
})
