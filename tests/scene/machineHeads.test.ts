import { expect, test } from 'vitest'
import { machineHeads } from '../../src/scene/machineHeads'

const row = (rooms: readonly number[], name = 'Low-stage compressor') => {
  let from = 0
  return rooms.map((room) => {
    from += room
    return { name, room, want: from - room / 2 }
  })
}

test('names that have room stand over their machines, as wide as it is', () => {
  expect(machineHeads(row([200, 300, 260]), 900)).toEqual([
    { left: 0, width: 200 },
    { left: 210, width: 280 },
    { left: 500, width: 260 },
  ])
})

test('a short machine beside a long one keeps room for its longest word, and nothing overlaps', () => {
  // beside each other along the train: the couplings on either side of the short one lie a few px apart, or crossed
  for (const room of [12, 0, -80]) {
    const heads = machineHeads(
      [
        { name: 'Steam turbine', room: 400, want: 200 },
        { name: 'Lubrication pump', room, want: 400 },
        { name: 'Generator', room: 600 - room, want: 700 },
      ],
      1000,
    )
    expect(heads[1]?.width).toBe('Lubrication'.length * 9 + 14)
    heads.forEach(({ left, width }, i) => {
      const before = heads[i - 1]
      expect(left).toBeGreaterThanOrEqual(before ? before.left + before.width : 0)
      expect(left + width).toBeLessThanOrEqual(1000)
    })
  }
})

test('in a full row those with room to spare give it to the one without', () => {
  const heads = machineHeads(row([240, 10, 250]), 500)
  const widths = heads.map(({ width }) => width)
  expect(widths[1]).toBe('compressor'.length * 9 + 14)
  expect(widths.reduce((all, one) => all + one, 0)).toBeCloseTo(500, 9)
  expect(heads[0]?.left).toBe(0)
})

test('a page narrower than all the words is filled and never left', () => {
  const heads = machineHeads(row([40, 40, 40, 40]), 160)
  expect(heads.map(({ left, width }) => [Math.round(left), Math.round(width)])).toEqual([
    [0, 40],
    [40, 40],
    [80, 40],
    [120, 40],
  ])
})
