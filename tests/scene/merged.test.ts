import { expect, test } from 'vitest'
import { circle, lineMark, rect, type Mark } from '../../src/scene/drawings/marks'
import { merged } from '../../src/scene/merged'
import { sheetScene } from '../../src/scene/sheet'
import { drawExample, exampleFiles } from './trains'

test('lines of one look and dash are one path, each of its strokes in it', () => {
  const marks = [
    lineMark(0, 1, 10, 1, 'state'),
    lineMark(0, 2, 10, 2, 'state', '9 3'),
    lineMark(0, 3, 10, 3, 'state'),
    lineMark(0, 4, 10, 4, 'planned'),
    lineMark(0, 5, 10, 5, 'state', '9 3'),
  ]
  expect(merged(marks)).toEqual([
    { look: 'state', d: 'M0 1L10 1M0 3L10 3' },
    { look: 'state', d: 'M0 2L10 2M0 5L10 5', dash: '9 3' },
    { look: 'planned', d: 'M0 4L10 4' },
  ])
})

test('what is filled stays by itself, and nothing is drawn from under it to above it', () => {
  const marks = [
    lineMark(0, 1, 10, 1, 'after'),
    rect(0, 0, 5, 5, 'shade'),
    rect(2, 2, 5, 5, 'shade'),
    circle(3, 3, 2, 'after'),
  ]
  expect(merged(marks).map(({ look }) => look)).toEqual(['after', 'shade', 'shade', 'after'])
  expect(merged(marks).at(-1)?.d).toBe('M1 3a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z')
})

test.each(exampleFiles)('%s: every stroke of a chart and a card is still there', async (name) => {
  const { train, answer, figures } = await drawExample(name)
  const scene = sheetScene(train, answer, figures, { room: 1000 })
  const strokes = (ds: readonly string[]) => ds.join('').match(/M/g)?.length ?? 0
  const one = (mark: Mark) => (mark.kind === 'path' ? mark.d : 'M')
  const lists = [
    ...[scene.rise, scene.side].flatMap(({ marks, gates }) => [
      marks,
      ...gates.map((g) => g.marks),
    ]),
    ...[...scene.feet.far.levels, ...scene.feet.near.levels].flatMap(({ cards }) =>
      cards.map(({ figure }) => figure),
    ),
  ]
  for (const marks of lists) {
    const paths = merged(marks)
    expect(strokes(paths.map(({ d }) => d))).toBe(strokes(marks.map(one)))
    expect(paths.length).toBeLessThanOrEqual(marks.length)
  }
  expect(merged(scene.rise.marks).length).toBeLessThan(scene.rise.marks.length)
})
