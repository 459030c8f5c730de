import { readFileSync, readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import { firstOf } from '../counts'
import { withNumbers } from '../../src/document/numbers'
import { withValue, type Path } from '../../src/document/place'
import { readTrain } from '../../src/document/readTrain'
import { placeOf } from '../../src/document/refusal'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { trainFigure } from '../../src/paper/trainFigure'
import { withinReach } from '../../src/scene/reach'
import { trainScene, widthFor } from '../../src/scene/sheet'

// A slip of the keyboard in any one number must not make a drawing that nobody can look at.

const example = (name: string) =>
  JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as TrainDocument
const room = 1024
/** Drawings may grow by so much, and the train shrink to one part in so many. */
const most = 6

/** The train with each of its lengths in turn typed as a slip, where that is taken at all. */
function slips(document: TrainDocument, slip: number): { at: string; train: Train }[] {
  const paths: Path[] = []
  withNumbers(document, ({ path, quantity, value }) => {
    if (quantity === 'length') paths.push(path)
    return value
  })
  return paths.flatMap((path) =>
    [slip, -slip].flatMap((value) => {
      const read = readTrain(withValue(document, path, value))
      return read.ok ? [{ at: `${placeOf(path)} ${value}`, train: read.train }] : []
    }),
  )
}

const slipped = [
  ['pump-and-motor', 23_600],
  ['bolt-bound-gearbox', 600_600],
  ['skid-as-one', 23_600],
] as const

test.each(firstOf(slipped, 1, slipped.length))(
  'the drawings of %s stay as large as they are',
  (name, slip) => {
    const read = readTrain(example(name))
    if (!read.ok) throw new Error('refused')
    const usual = trainScene(read.train, room)
    const paper = trainFigure(read.train).height
    const all = slips(example(name), slip)
    expect(all.length).toBeGreaterThan(40)
    for (const { at, train } of all) {
      const { elevation, above, scale } = trainScene(train, room)
      expect(widthFor(train, room), at).toBeLessThanOrEqual(room)
      expect(scale.perMm, at).toBeGreaterThan(usual.scale.perMm / most)
      expect(elevation.height, at).toBeLessThan(most * usual.elevation.height)
      expect(above.height, at).toBeLessThan(most * usual.above.height)
      expect(trainFigure(train).height, at).toBeLessThan(most * paper)
      for (const { x, y } of above.feet) {
        expect(x, at).toBeGreaterThanOrEqual(0)
        expect(x, at).toBeLessThanOrEqual(room)
        expect(y, at).toBeGreaterThanOrEqual(0)
        expect(y, at).toBeLessThanOrEqual(above.height)
      }
    }
  },
)

test('what is drawn nearer than it stands is said; what is to scale says nothing', () => {
  const said = (...path: Path) => {
    const read = readTrain(withValue(example('bolt-bound-gearbox'), path, 600_600))
    if (!read.ok) throw new Error('refused')
    const { elevation, above } = trainScene(read.train, room)
    return [elevation.scale, above.apart]
  }
  expect(said('machines', 1, 'axis', 'z')).toEqual([
    'to scale; the low-stage compressor stands higher or lower than drawn',
    '',
  ])
  expect(said('machines', 0, 'feet', 0, 'y')).toEqual([
    'to scale',
    'the steam turbine foot 1 lake stands farther out than drawn',
  ])
  for (const name of readdirSync('examples').filter((file) => file.endsWith('.json'))) {
    const read = readTrain(example(name.replace('.json', '')))
    if (!read.ok) throw new Error('refused')
    expect(withinReach(read.train).train).toBe(read.train)
  }
})
