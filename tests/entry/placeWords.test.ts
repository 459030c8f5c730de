import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { faultWords } from '../../src/document/words/faultWords'
import { withValue } from '../../src/document/place'
import { placeWords } from '../../src/document/placeWords'
import { pathFromPlace } from '../../src/document/place'
import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import { placeOf } from '../../src/document/refusal'

const train = JSON.parse(
  readFileSync(new URL('../../examples/bolt-bound-gearbox.json', import.meta.url), 'utf8'),
) as TrainDocument

test.each([
  ['', 'the train'],
  ['name', 'name'],
  ['machines[2].feet[0].x', 'Step-up gear, foot 1 lake, x'],
  ['machines[2].feet[0].pack.now', 'Step-up gear, foot 1 lake, pack now'],
  ['machines[2].feet[3].hole.y', 'Step-up gear, foot 2 workshop, hole centre sideways'],
  ['machines[2].feet[3].gaps[2]', 'Step-up gear, foot 2 workshop, gap under corner 3'],
  ['machines[2].axis.right.z', 'Step-up gear, axis, right end, height'],
  ['machines[0].axis.z', 'Steam turbine, axis, height'],
  [
    'machines[1].restraints[0].side[1]',
    'Low-stage compressor, point inlet flange, sideways, high end',
  ],
  ['machines[0].growth["hot-summer"][1].rise', 'Steam turbine, growth, hot summer, point 2, rise'],
  ['couplings[0].left.plane', 'turbine to low stage, left plane'],
  ['couplings[1].tolerance.flex', 'low stage to gear, tolerance, angle at each plane'],
  ['couplings[1].aim["cold-start"].offset.z', 'low stage to gear, aim, cold start, offset up'],
  ['couplings[1].axial.want', 'low stage to gear, axial gap, wanted'],
  ['couplings[0].found[0].readings[1][1]', 'turbine to low stage, set 1, toward the lake'],
  ['couplings[0].found[0].readings', 'turbine to low stage, set 1, readings'],
  ['states[1].tolerance', 'hot summer, times the tolerance'],
  ['plan.shims.stock[3]', 'shims in stock, thickness 4'],
  ['plan.reserve', 'room to keep between bolt and hole'],
  ['machines', 'the machines'],
])('%s is said as "%s"', (at, words) => {
  expect(placeWords(train, at)).toBe(words)
})

test('things without a name are counted', () => {
  const nameless = withValue(train, ['machines', 2, 'name'], '')
  expect(placeWords(nameless, 'machines[2].feet[0].x')).toBe('machine 3, foot 1 lake, x')
  expect(placeWords(nameless, 'machines[9].axis.z')).toBe('machine 10, axis, height')
})

/** Places of everything in a document that is no group and no list. */
function placesOf(value: unknown, path: readonly (string | number)[] = []): string[] {
  if (Array.isArray(value)) return value.flatMap((item, i) => placesOf(item, [...path, i]))
  if (typeof value === 'object' && value !== null)
    return Object.entries(value).flatMap(([key, inside]) => placesOf(inside, [...path, key]))
  return [placeOf(path)]
}

test('every place of an example has words without brackets, and figures of one thing have different ones', () => {
  const places = placesOf(train).filter((at) => !at.startsWith('record'))
  expect(places.length).toBeGreaterThan(300)
  const seen = new Map<string, string>()
  for (const at of places) {
    const words = placeWords(train, at)
    expect(words, at).not.toMatch(/[[\]_]|^$/)
    // who is named already says which of them is meant
    const alone = /\.(id|machine|name)$|^(name|format|version|units|clock)|carries/.test(at)
    if (!alone) expect(seen.get(words) ?? at, words).toBe(at)
    seen.set(words, at)
  }
})

const faultAt = (document: TrainDocument, at: string): string => {
  const read = readTrain(document)
  const fault = read.ok ? undefined : read.refused.find((one) => one.at === at)
  if (!fault) throw new Error(`nothing is refused at ${at}`)
  return faultWords(document, fault)
}

test.each([
  ['machines[1].restraints[0].side', [-200, undefined], 1, /^the high end is missing/],
  ['machines[1].restraints[0].side', [undefined, 200], 0, /^the low end is missing/],
  // as a file has it
  ['machines[1].restraints[0].rise', [null, 200], 0, /^the low end is missing/],
  ['machines[2].feet[0].gaps', [1, undefined, 1, 1], 1, /all four/],
] as const)('half of a pair at %s asks for the other half', (at, value, index, words) => {
  const document = withValue(train, pathFromPlace(at), value)
  expect(faultAt(document, `${at}[${index}]`)).toMatch(words)
})

test('an axis at one end asks for the other, and what is not missing keeps its reason', () => {
  const one = withValue(train, ['machines', 2, 'axis', 'right', 'z'], undefined)
  expect(faultAt(one, 'machines[2].axis.right.z')).toMatch(
    /^the height at the right end is missing/,
  )
  const wrong = withValue(train, ['machines', 1, 'restraints', 0, 'side'], [5, 9])
  expect(faultAt(wrong, 'machines[1].restraints[0].side')).toMatch(/does not contain 0/)
})
