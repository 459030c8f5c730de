import { expect, test } from 'vitest'
import { askedOf, questionWords, saidRight } from '../../src/document/asked'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { numberPlaces } from '../../src/document/quantities'
import { pathFromPlace, withValue } from '../../src/document/place'
import { trainDocument, type TrainDocument } from '../../src/document/schema'
import { everyField } from './everyField'

// Every number that a cell can hold: the largest ordinary one is taken without a word, one beyond it is asked about.

/** Pipe strain and what is read again are typed in cells too, and stand in open parts of the file. */
function document(): TrainDocument {
  const whole = everyField()
  const [first] = whole.couplings
  if (!first) throw new Error('no coupling')
  const again = [
    {
      ...{ coupling: first.id, set: 0, readings: [[12, 0]] },
      ...{ offset: { y: 1, z: 1 }, slope: { y: 0.1, z: 0.1 } },
    },
  ]
  first.strain = { limit: 50, flanges: [{ name: 'inlet', when: 'May', y: 10, z: 20 }] }
  return { ...whole, record: { again } }
}
const withAt = (at: string, value: number): TrainDocument =>
  withValue(document(), pathFromPlace(at), value)
/** Questions about what a value is by itself, not beside the others of its column. */
const questions = (of: TrainDocument) =>
  askedOf(of)
    .filter(({ beyond }) => !/largest of the others/.test(beyond))
    .map((one) => `${one.at}: ${questionWords(one)}`)

/** The document is in mm and um. [place, largest that is ordinary, the question about twice that] */
const cases = [
  ['machines[0].weight', 1000, '2000: more than 1000'],
  ['machines[0].effort', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].tilt', 50, '100 mrad: more than 50 mrad'],
  ['machines[0].level', 50, '100 mrad: more than 50 mrad'],
  ['machines[0].mass', 1e6, '2000000 kg: more than 1000000 kg'],
  ['machines[0].jack', 1e6, '2000000 kg: more than 1000000 kg'],
  ['machines[0].speed', 100_000, '200000 rpm: more than 100000 rpm'],
  ['machines[0].base', 50_000, '100 m: more than 50 m'],
  ['machines[0].pins[0].effort', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].feet[0].y', 50_000, '100 m: more than 50 m'],
  ['machines[0].feet[0].pack.now', 100_000, '200 mm under the foot: more than 100 mm'],
  ['machines[0].feet[0].pack.min', 100_000, '200 mm under the foot: more than 100 mm'],
  ['machines[0].feet[0].pack.max', 100_000, '200 mm under the foot: more than 100 mm'],
  ['machines[0].feet[0].pack.plates[1]', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].feet[0].lift', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].feet[0].soleplate', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].feet[0].hole.clearance', 50_000, '100 mm: more than 50 mm'],
  ['machines[0].feet[0].hole.x', 50_000, '100 mm: more than 50 mm'],
  ['machines[0].feet[0].hole.y', 50_000, '100 mm: more than 50 mm'],
  ['machines[0].feet[0].hole.u', 5000, '10 mm: more than 5 mm'],
  ['machines[0].feet[0].soft', 10_000, '20 mm: more than 10 mm'],
  ['machines[0].feet[0].gaps[3]', 10_000, '20 mm: more than 10 mm'],
  ['machines[0].feet[0].torque.value', 100_000, '200000 N·m: more than 100000 N·m'],
  ['machines[0].stator.airGaps[0].top', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].stator.limit', 0.25, '0.5: more than 0.25'],
  ['machines[0].restraints[0].z', 50_000, '100 m: more than 50 m'],
  ['machines[0].restraints[0].side[1]', 100_000, '200 mm: more than 100 mm'],
  ['machines[0].growth.hot[0].rise', 10_000, '20 mm of growth: more than 10 mm'],
  ['machines[0].growth.hot[0].u', 5000, '10 mm: more than 5 mm'],
  ['machines[0].growth.hot[1].range.axial[1]', 10_000, '20 mm of growth: more than 10 mm'],
  ['couplings[0].speed', 100_000, '200000 rpm: more than 100000 rpm'],
  ['couplings[0].tolerance.flex', 50, '100 mrad: more than 50 mrad'],
  ['couplings[0].aim.hot.offset.z', 10_000, '20 mm of offset: more than 10 mm'],
  ['couplings[0].aim.hot.slope.y', 50, '100 mrad: more than 50 mrad'],
  ['couplings[1].setting.offset.y', 10_000, '20 mm of offset: more than 10 mm'],
  ['couplings[0].found[0].readings[1][1]', 10_000, '20 mm at the dial: more than 10 mm'],
  ['couplings[0].found[0].sag', 10_000, '20 mm of sag: more than 10 mm'],
  ['couplings[0].found[0].u', 5000, '10 mm: more than 5 mm'],
  ['plan.guard', 5, '10: more than 5'],
  ['plan.weights.shim', 1000, '2000: more than 1000'],
  ['plan.reserve', 10_000, '20 mm: more than 10 mm'],
  ['plan.leave', 10_000, '20 mm: more than 10 mm'],
  ['plan.stage', 10_000, '20 mm: more than 10 mm'],
  ['plan.slip', 10_000, '20 mm: more than 10 mm'],
  ['plan.shims.step', 100_000, '200 mm: more than 100 mm'],
  ['plan.shims.stock[0]', 100_000, '200 mm: more than 100 mm'],
  ['plan.shims.most', 20, '40: more than 20'],
  ['plan.shims.flat', 10_000, '20 mm: more than 10 mm'],
  ['plan.sure.shim', 5000, '10 mm: more than 5 mm'],
  ['plan.sure.foot', 100, '200 mm: more than 100 mm'],
  ['states[0].load', 200, '400: more than 200'],
  ['states[0].tolerance', 10, '20: more than 10'],
  ['states[0].temperature', 600, '1200 °C: more than 600 °C'],
  ['checkEvery', 120, '240: more than 120'],
  ['surveys[0].points[0].z', 100_000, '200 mm: more than 100 mm'],
  ['surveys[0].u', 5000, '10 mm: more than 5 mm'],
  ['record.again[0].readings[0][1]', 10_000, '20 mm at the dial: more than 10 mm'],
  ['couplings[0].strain.flanges[0].y', 10_000, '20 mm: more than 10 mm'],
] as const

test.each(cases)('%s', (at, most, question) => {
  expect(questions(withAt(at, most))).toEqual([])
  const beyond = withAt(at, 2 * most)
  expect(questions(beyond)).toEqual([`${at}: ${question}. Is that right?`])
  // said to be right, it is not asked about again, in other units neither; another value is
  const right = askedOf(beyond).reduce(saidRight, beyond)
  expect(askedOf(right)).toEqual([])
  const inches = switchUnits(right, { length: 'in', fine: 'mil', temperature: 'F' })
  expect(questions(inches)).toEqual([])
  const other = withValue(right, pathFromPlace(at), 2.5 * most)
  expect(questions(other)).toHaveLength(1)
})

test('a hair over is asked about, and so is cold beyond liquid gas', () => {
  expect(questions(withAt('machines[0].feet[0].soft', 10_001))).toHaveLength(1)
  expect(questions(withAt('states[0].temperature', -200))).toEqual([])
  expect(questions(withAt('states[0].temperature', -201))).toEqual([
    'states[0].temperature: −201 °C: less than −200 °C. Is that right?',
  ])
})

test('a question is asked in the units of the document', () => {
  const inches = switchUnits(document(), { length: 'in', fine: 'mil', temperature: 'F' })
  const asked = (at: string, value: number) =>
    questions(withValue(inches, pathFromPlace(at), value)).join()
  expect(asked('states[0].temperature', 1112)).toBe('')
  expect(asked('states[0].temperature', 1200)).toBe(
    'states[0].temperature: 1200 °F: more than 1110 °F. Is that right?',
  )
  expect(asked('machines[0].mass', 3e6)).toBe(
    'machines[0].mass: 3000000 lb: more than 2200000 lb. Is that right?',
  )
  expect(asked('machines[0].feet[0].hole.clearance', 3000)).toBe(
    'machines[0].feet[0].hole.clearance: 3 in: more than 1.97 in. Is that right?',
  )
})

/** Numbers that are asked about in no size: bounded by the file itself, a name, an hour, or kept by the sheet. */
const never =
  /^plan\.(share|sure\.(chance|draws|seed))$|readings\.\*\.0$|^record\.(sure|work|gaps)|\.set$/

test('no number of the train file is left without a question', () => {
  const places = numberPlaces(trainDocument).filter(({ path }) => !never.test(path.join('.')))
  const whole = document()
  const left = places.flatMap(({ path }) => {
    // the first that stands there in the document of every field
    const at = firstAt(whole, path)
    if (at === undefined) return []
    const large = withValue(whole, at, 1e13)
    return askedOf(large).some(({ beyond }) => /more than/.test(beyond)) ? [] : [path.join('.')]
  })
  expect(left).toEqual([])
})

function firstAt(node: unknown, path: readonly string[]): (string | number)[] | undefined {
  const [key, ...rest] = path
  if (key === undefined) return typeof node === 'number' ? [] : undefined
  if (typeof node !== 'object' || node === null) return undefined
  for (const [own, next] of Object.entries(node)) {
    if (key !== '*' && own !== key) continue
    const found = firstAt(next, rest)
    if (found) return [Array.isArray(node) ? Number(own) : own, ...found]
  }
  return undefined
}
