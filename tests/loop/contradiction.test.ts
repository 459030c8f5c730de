import { describe, expect, it } from 'vitest'
import { chiSquareLimit } from '../../src/engine/fieldwork/loop/chiSquare'

describe('what chance passes once in a thousand', () => {
  // Tables of the chi-square distribution, upper 0.001 point.
  it.each([
    [1, 10.828],
    [2, 13.816],
    [3, 16.266],
    [4, 18.467],
    [6, 22.458],
    [10, 29.588],
    [20, 45.315],
    [50, 86.661],
  ])('%d degrees of freedom: %d', (freedom, table) => {
    expect(Math.abs(chiSquareLimit(freedom) / table - 1)).toBeLessThan(freedom === 1 ? 0.04 : 0.03)
  })
})
