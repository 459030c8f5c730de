import { describe, expect, it } from 'vitest'
import { displayedPlan } from '../../src/engine/fieldwork/displayed'
import { hasMoves } from '../../src/engine/plan/moves'
import { towardSide } from '../../src/language/sides'
import { inUnits } from '../../src/json/inUnits'
import { firstOf } from '../counts'
import { exampleOf, made, stepsOf } from '../paper/sheets'
import type { TrainFile } from './contract'
import { followPrint } from './printFollowed'

/** Two of the last digits that are printed: what rounding of two ends comes to at a foot between them. */
const digits = { um: 2, mm: 0.02, mil: 0.2 }

const names = firstOf(
  [
    'bolt-bound-gearbox',
    'skid-as-one',
    'five-in-a-line',
    'piped-compressor',
    'base-bound-motor',
    'gear-coupling',
    'pump-and-motor',
    'twisted-base',
  ],
  1,
  8,
)

describe.each(names)("the crew's print of %s, followed by its words alone", (name) => {
  it('keeps every limit at every pose, has room where it says so, and ends at the plan', async () => {
    const document = exampleOf(name)
    const { train, answer, paper } = await made(document)
    const file = document as unknown as TrainFile
    const done = followPrint(file, stepsOf(paper), towardSide(train, 1))
    const slack = digits[file.units.fine]
    expect(done.noRoom).toEqual([])
    expect(done.lacks).toBeLessThan(slack)
    expect(done.ahead).toBeLessThan(slack)
    expect([done.what, Math.max(0, done.by - slack)]).toEqual([done.what, 0])
    // let down, an end is told as its packs are, not as the plane that lies nearest to three rows of them
    expect(done.down).toBeLessThan(slack / 3)
    const shown = displayedPlan(answer)
    if (!hasMoves(shown)) throw new Error(name)
    for (const { body, foot, side, shim } of shown.feet) {
      const [aside = 0, up = 0] = done.told.get(`${body} ${foot}`) ?? []
      expect(Math.abs(aside - inUnits(side, 'fine', train.units)), `${body} ${foot}`).toBeLessThan(
        slack,
      )
      expect(Math.abs(up - inUnits(shim, 'fine', train.units)), `${body} ${foot}`).toBeLessThan(
        slack,
      )
    }
  })
})

it('notices a lift too low, an end too far ahead, a foot without room, an end let down elsewhere', async () => {
  const document = exampleOf('bolt-bound-gearbox')
  const { train, paper } = await made(document)
  const file = document as unknown as TrainFile
  const toThree = towardSide(train, 1)
  const spoilt = (from: string, to: string) =>
    followPrint(
      file,
      stepsOf(paper).map((step) => ({
        ...step,
        words: step.words.replace(from, to),
        lifts: step.lifts.map((line) => line.replace(from, to)),
      })),
      toThree,
    )
  expect(spoilt('Left end up to +1061', 'Left end up to +900').lacks).toBeCloseTo(161, 6)
  expect(spoilt('Right end up to +500', 'Right end up to +200').ahead).toBeGreaterThan(100)
  expect(spoilt('the packs of', 'what is under').noRoom.length).toBeGreaterThan(0)
  expect(spoilt('Left end down to +61', 'Left end down to +161').down).toBeCloseTo(100, 6)
})
