import { describe, expect, it } from 'vitest'
import type { Mark } from '../../src/scene/drawings/marks'
import { sheetScene, type SheetScene } from '../../src/scene/sheet'
import { roles } from '../../src/mechanics/train'
import { draw, drawExample, exampleFiles, pair } from './trains'

interface Box {
  readonly left: number
  readonly width: number
}

/** Boxes of one row, left to right: none may reach into the next, nor off the page. */
function expectApart(boxes: readonly Box[], page: number): void {
  expect(boxes.length).toBeGreaterThan(0)
  boxes.forEach(({ left, width }, i) => {
    const before = boxes[i - 1]
    expect(left).toBeGreaterThanOrEqual((before ? before.left + before.width : 0) - 1e-6)
    expect(left + width).toBeLessThanOrEqual(page + 1e-6)
  })
}

/** No mark may carry a number that is none: a browser drops such a path in silence. */
function expectDrawn(marks: readonly Mark[]): void {
  for (const mark of marks) expect(JSON.stringify(mark)).not.toMatch(/NaN|Infinity|null/)
}

const levels = (scene: SheetScene) => [...scene.feet.far.levels, ...scene.feet.near.levels]
const rooms = [274, 376, 660, 892, 908, 1008, 1400]

describe.each(exampleFiles)('the sheet of %s', (file) => {
  it.each(rooms)('has no two cards that overlap in %i px', async (room) => {
    const { train, answer, figures } = await drawExample(file)
    const scene = sheetScene(train, answer, figures, { room })
    expect(scene.width).toBeGreaterThanOrEqual(room)
    for (const level of levels(scene)) expectApart(level.cards, scene.width)
    expectApart(scene.couplings.cards, scene.width)
    expectApart(
      scene.slots.map(({ head }) => head),
      scene.width,
    )
    for (const chart of [scene.rise, scene.side])
      chart.ticks.slice(1).forEach((tick, i) => {
        expect(Math.abs(tick.y - (chart.ticks[i]?.y ?? 0))).toBeGreaterThan(14)
      })
    expect(levels(scene).flatMap(({ cards }) => cards)).toHaveLength(
      train.bodies.reduce((sum, { feet }) => sum + feet.length, 0),
    )
  })

  it('fits a page 1024 px wide, and one x scale serves every band', async () => {
    const { train, answer, figures } = await drawExample(file)
    const room = 1024 - 116 - 15
    const scene = sheetScene(train, answer, figures, { room })
    expect(scene.width).toBe(room)
    const feet = train.bodies.flatMap((body) => body.feet.map(({ x }) => scene.scale.at(x)))
    scene.feet.plan.feet.forEach(({ x }, i) => {
      expect(x).toBeCloseTo(feet[i] ?? NaN, 9)
    })
    scene.elevation.stakes.forEach((stakes) => {
      const own = train.bodies[stakes.body]?.feet.map(({ x }) => scene.scale.at(x)) ?? []
      expect(stakes.left).toBeCloseTo(Math.min(...own), 9)
      expect(stakes.right).toBeCloseTo(Math.max(...own), 9)
    })
    for (const gate of [...scene.rise.gates, ...scene.side.gates]) {
      const known = figures.gates.find(({ id }) => id === gate.id)
      expect(gate.x).toBeCloseTo(scene.scale.at(known?.x ?? NaN), 9)
    }
  })

  it('draws everything with numbers', async () => {
    const { train, answer, figures } = await drawExample(file)
    const scene = sheetScene(train, answer, figures, { room: 1008 })
    expectDrawn(scene.elevation.marks)
    for (const chart of [scene.rise, scene.side]) {
      expectDrawn(chart.marks)
      for (const gate of chart.gates) expectDrawn(gate.marks)
    }
    expectDrawn(scene.feet.plan.marks)
    for (const level of levels(scene)) for (const card of level.cards) expectDrawn(card.figure)
    expectDrawn(scene.couplings.leaders)
  })
})

describe('the sheet', () => {
  it('shows the lines and gates of a chosen state alone', async () => {
    const { train, answer, figures } = await drawExample('piped-compressor.json')
    const every = sheetScene(train, answer, figures, { room: 1008 })
    const one = sheetScene(train, answer, figures, { room: 1008, chosen: 1 })
    const states = (scene: SheetScene) =>
      scene.rise.marks.filter((mark) => mark.kind === 'path' && mark.look === 'state').length
    // motor and compressor have one axis, the gear two
    expect(states(every)).toBe(4 * train.states.length)
    expect(states(one)).toBe(4)
    expect(one.rise.gates[0]?.words).toContain(train.states[1]?.name)
    // nothing moves unless the plan moved: the scale stays
    expect(one.rise.ratio).toBe(every.rise.ratio)
    expect(one.rise.ticks).toEqual(every.rise.ticks)
  })

  it('steps foot cards back to a second level where they do not fit on one', async () => {
    const { train, answer, figures } = await drawExample('five-in-a-line.json')
    const wide = sheetScene(train, answer, figures, { room: 1900 })
    const narrow = sheetScene(train, answer, figures, { room: 892 })
    expect(wide.feet.far.levels).toHaveLength(1)
    expect(narrow.feet.far.levels.map(({ cards }) => cards.length)).toEqual([5, 5])
    // a leader to the second level passes between the cards of the first
    const first = narrow.feet.far.levels[0]
    expect(first?.passing).toHaveLength(5)
    for (const x of first?.passing ?? [])
      expect(first?.cards.some(({ left, width }) => x > left && x < left + width)).toBe(false)
  })

  it('gives every role a drawing of its own', async () => {
    const drawings = await Promise.all(
      roles.map(async (role) => {
        const { train, answer, figures } = await draw(pair({}, { left: { role } }))
        const { marks } = sheetScene(train, answer, figures, { room: 1008 }).elevation
        expectDrawn(marks)
        return JSON.stringify(marks)
      }),
    )
    expect(new Set(drawings).size).toBe(roles.length)
  })

  it('draws a train with an anchored machine that has no feet, and 40 letters in a name', async () => {
    const { train, answer, figures } = await draw(
      pair(
        { z: 150 },
        {
          left: {
            feet: [],
            anchored: 'cast in',
            name: 'Hochdruckverdichterstufenantriebsmotor 12',
          },
        },
      ),
    )
    const scene = sheetScene(train, answer, figures, { room: 1008 })
    expectDrawn(scene.elevation.marks)
    expectDrawn(scene.feet.plan.marks)
    for (const level of levels(scene)) expectApart(level.cards, scene.width)
  })
})
