import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { followed } from '../../src/document/edits/followed'
import { pathFromPlace } from '../../src/document/place'
import { addMachine, moveMachine, removeMachine } from '../../src/document/edits/machines'
import { newTrain } from '../../src/document/edits/newTrain'
import { rollWords } from '../../src/document/words/rollWords'
import { shiftMachine, shiftRoom } from '../../src/document/edits/shiftMachine'
import { removeSkid, setOnSkid } from '../../src/document/edits/skids'
import { mustPlan, planRead } from '../planned'
import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import { placeOf } from '../../src/document/refusal'
import { glpkSolver } from '../../src/solvers/glpk'

const example = (file: string): TrainDocument =>
  JSON.parse(
    readFileSync(new URL(`../../examples/${file}.json`, import.meta.url), 'utf8'),
  ) as TrainDocument
const gear = example('bolt-bound-gearbox')

/** What a train file demands of couplings: one between each machine and the next, in order. */
function joined({ machines, couplings }: TrainDocument): void {
  expect(couplings.map(({ left, right }) => [left.machine, right.machine])).toEqual(
    machines.slice(1).map(({ id }, i) => [machines[i]?.id, id]),
  )
  expect(new Set(couplings.map(({ id }) => id)).size).toBe(couplings.length)
  expect(new Set(machines.map(({ id }) => id)).size).toBe(machines.length)
}

describe('machines added, removed and moved', () => {
  test('keep one coupling between each machine and the next', () => {
    const step = fc.record({
      kind: fc.constantFrom('add', 'remove', 'move'),
      a: fc.nat(9),
      b: fc.nat(9),
    })
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.boolean(), (steps, empty) => {
        let now = empty ? newTrain() : gear
        for (const { kind, a, b } of steps) {
          const n = now.machines.length
          const change =
            kind === 'add'
              ? addMachine(now, a % (n + 1))
              : kind === 'remove'
                ? removeMachine(now, a % Math.max(1, n))
                : moveMachine(now, a % Math.max(1, n), b % Math.max(1, n))
          if (change.document !== now) expect(change.name).not.toBe('')
          now = change.document
          joined(now)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('name what goes, and what the coupling beside is now', () => {
    expect(removeMachine(gear, 2).name).toBe(
      'removed the step-up gear and the readings of low stage to gear and gear to high stage, now one coupling',
    )
    expect(addMachine(gear, 4).name).toBe('added a machine at the right end')
    expect(addMachine(gear, 1).name).toMatch(
      /^added a machine between the steam turbine and the low-stage compressor; the coupling .* now leads to it, with its figures$/,
    )
  })

  test('a new one between two keeps the figures of the coupling that was there', () => {
    const { document } = addMachine(gear, 1)
    expect(document.couplings[0]?.found).toEqual(gear.couplings[0]?.found)
    expect(document.couplings[0]?.left).toEqual(gear.couplings[0]?.left)
    expect(document.couplings[1]?.found).toEqual([])
    expect(document.couplings.slice(2)).toEqual(gear.couplings.slice(1))
  })

  test('a machine that goes is on no skid any more', () => {
    const skid = example('skid-as-one')
    const carried = skid.skids?.[0]?.carries ?? []
    const index = skid.machines.findIndex(({ id }) => id === carried[0])
    expect(removeMachine(skid, index).document.skids?.[0]?.carries).toEqual(carried.slice(1))
    expect(setOnSkid(skid, 0, carried[0] ?? '', false).document.skids?.[0]?.carries).toEqual(
      carried.slice(1),
    )
    expect(removeSkid(skid, 0).document.skids).toBeUndefined()
  })
})

describe('a machine moved along the train', () => {
  test('by nothing but x: the whole train moved machine by machine is the same train', async () => {
    // spacers in between stay as they are when all machines have gone the same way
    const order = [3, 2, 1, 0]
    const there = order.reduce((now, m) => shiftMachine(now, m, 40).document, gear)
    expect(there.machines.map(({ feet }) => feet.map(({ x }) => x - 40))).toEqual(
      gear.machines.map(({ feet }) => feet.map(({ x }) => x)),
    )
    expect(there.couplings.map(({ left, right }) => [left.plane - 40, right.plane - 40])).toEqual(
      gear.couplings.map(({ left, right }) => [left.plane, right.plane]),
    )
    const solver = await glpkSolver()
    const [before, after] = [gear, there].map((document) => {
      const read = readTrain(document)
      if (!read.ok) throw new Error(read.refused[0]?.why)
      return mustPlan(planRead(read.train, solver, { prices: false })).cost
    })
    expect(before).toBeGreaterThan(0)
    expect(after).toBeCloseTo(before ?? NaN, 2)
  })

  test('never closes a spacer, and takes a single plane along', () => {
    const [least, most] = shiftRoom(gear, 1)
    const { document } = shiftMachine(gear, 1, 1e6)
    expect(least).toBeLessThan(0)
    expect(document.machines[1]?.feet[0]?.x).toBe((gear.machines[1]?.feet[0]?.x ?? 0) + most)
    for (const { left, right } of document.couplings)
      expect(right.plane).toBeGreaterThan(left.plane)
    const single: TrainDocument = {
      ...gear,
      couplings: gear.couplings.map((coupling, i) =>
        i === 1
          ? { ...coupling, right: { ...coupling.right, plane: coupling.left.plane } }
          : coupling,
      ),
    }
    const plane = single.couplings[1]?.left.plane ?? NaN
    const moved = shiftMachine(single, 1, 10).document.couplings[1]
    expect([moved?.left.plane, moved?.right.plane]).toEqual([plane + 10, plane + 10])
  })

  test('there and back is the same document', () => {
    fc.assert(
      fc.property(fc.nat(3), fc.integer({ min: -40, max: 40 }), (m, by) => {
        const there = shiftMachine(gear, m, by).document
        expect(JSON.stringify(shiftMachine(there, m, -by).document)).toBe(JSON.stringify(gear))
      }),
    )
  })
})

test('the roll of a gear is said for both its shafts, with sides', () => {
  // z 900 mm at both ends, the right axis 520 mm toward 9 o'clock: 1 mrad carries them 900 µm, and 520 µm
  expect(rollWords(gear, 2)).toBe(
    'Rolling the step-up gear moves both its shafts: 1 mrad, the side toward the lake up, carries ' +
      'the shaft at its left end 900 µm toward the workshop, and the one at its right end 900 µm toward ' +
      'the workshop and 520 µm down. Ask for a tooth contact check of the step-up gear by name, before and after the roll.',
  )
})

describe('entries that are no values yet', () => {
  test('go with what they were typed for', () => {
    const entries = { 'machines[2].feet[1].x': 'four', 'couplings[1].left.plane': '?', name: '' }
    const { document } = moveMachine(gear, 2, 0)
    expect(followed(entries, gear, document)).toEqual({
      'machines[0].feet[1].x': 'four',
      'couplings[1].left.plane': '?',
      name: '',
    })
    const gone = removeMachine(gear, 2).document
    expect(followed(entries, gear, gone)).toEqual({ 'couplings[1].left.plane': '?', name: '' })
    expect(followed(entries, gear, { ...gear, note: 'x' })).toBe(entries)
  })

  test('their places are read back as they are written', () => {
    const key = fc.oneof(fc.string({ minLength: 1 }), fc.nat(99))
    fc.assert(
      fc.property(fc.array(key, { minLength: 1 }), (path) => {
        expect(pathFromPlace(placeOf(path))).toEqual(path)
      }),
    )
  })
})
