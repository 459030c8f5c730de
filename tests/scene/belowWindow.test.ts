import { expect, test } from 'vitest'
import { belowWindow } from '../../src/scene/belowWindow'

const groups = [
  { name: 'Motor', feet: 4, bottom: 450 },
  { name: 'Gear', feet: 6, bottom: 480 },
  { name: 'Compressor', feet: 4, bottom: 721 },
  { name: 'Expander', feet: 2, bottom: 940 },
]

test('feet that the first window does not show are told, by machine and by number', () => {
  expect(belowWindow(groups, 720)).toBe(
    'Of 16 feet, 6 go on below this window: Compressor and Expander.',
  )
  expect(belowWindow(groups, 940)).toBeUndefined()
  expect(belowWindow([], 720)).toBeUndefined()
})
