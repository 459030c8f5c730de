import { expect, test } from 'vitest'
import { feetSketch } from '../../src/scene/feetSketch'

const room = { width: 156, height: 92 }
const four = (apart: number, wide: number) =>
  [0, apart].flatMap((up) =>
    [0, wide].map((across) => ({ id: `${up} ${across}`, up: up + 700, across })),
  )

/** Pairs of squares that touch. */
function touching({ places, size }: ReturnType<typeof feetSketch>): string[] {
  return places.flatMap((a, i) =>
    places
      .slice(0, i)
      .filter((b) => Math.abs(a.x - b.x) < size && Math.abs(a.y - b.y) < size)
      .map((b) => `${a.id} and ${b.id}`),
  )
}

test('feet that stand clear of each other are drawn to scale, about the middle of the picture', () => {
  const sketch = feetSketch(four(1000, 1500), room)
  const [a, b, c] = sketch.places
  if (!a || !b || !c) throw new Error('no feet')
  expect(sketch.size).toBe(18)
  expect((b.x - a.x) / (a.y - c.y)).toBeCloseTo(1.5, 9)
  expect((a.x + b.x) / 2).toBeCloseTo(room.width / 2, 9)
  expect((a.y + c.y) / 2).toBeCloseTo(room.height / 2, 9)
  // away from who looks is up the picture
  expect(c.y).toBeLessThan(a.y)
})

test.each([
  ['rows close together', four(1500, 300)],
  ['a narrow machine', four(200, 3000)],
  [
    'a bedplate with ten rows',
    Array.from({ length: 20 }, (_, i) => ({
      id: String(i),
      across: Math.floor(i / 2) * 900,
      up: (i % 2) * 2000,
    })),
  ],
])('squares never touch: %s', (_, feet) => {
  const sketch = feetSketch(feet, room)
  expect(touching(sketch)).toEqual([])
  expect(sketch.size).toBeGreaterThanOrEqual(6)
  for (const { x, y } of sketch.places) {
    expect(x).toBeGreaterThanOrEqual(sketch.size / 2)
    expect(x).toBeLessThanOrEqual(room.width - sketch.size / 2)
    expect(y).toBeGreaterThanOrEqual(sketch.size / 2)
    expect(y).toBeLessThanOrEqual(room.height - sketch.size / 2)
  }
})

test('a machine without feet, on one foot, or with two at one place is drawn', () => {
  expect(feetSketch([], room).places).toEqual([])
  const one = { id: 'a', across: 4000, up: -300 }
  expect(feetSketch([one], room).places).toEqual([{ id: 'a', x: 78, y: 46 }])
  expect(feetSketch([one, { ...one, id: 'b' }], room).size).toBe(6)
})
