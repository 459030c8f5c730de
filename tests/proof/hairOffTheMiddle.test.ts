import { expect, test } from 'vitest'
import { kept } from '../kept/kept'
import { planOf } from '../engine/pair'

/**
 * An axis that rounding left beside the middle of its machine: what a yaw then carries along the train is nothing,
 * but stands in the row of a shaft-end gap. The answer is that of an axis in the middle.
 */
test.each([1e-16, 1e-13, 1e-10, 6e-7, 1e-5, 1e-4])(
  'an axis %s mm off the middle changes nothing',
  (y) => {
    const at = (left: number) => {
      const train = structuredClone(kept('hair-off-the-middle'))
      const gear = train.machines[1]
      if (!gear || !('left' in gear.axis)) throw new Error('no gear with two axes')
      gear.axis.left.y = left
      return planOf(train)
    }
    const [middle, beside] = [at(0), at(y)]
    expect(middle.status).toBe('impossible')
    expect(beside.status).toBe('impossible')
    if (middle.status !== 'impossible' || beside.status !== 'impossible') return
    expect(beside.floor ?? 0).toBeCloseTo(middle.floor ?? -1, 5)
  },
)
