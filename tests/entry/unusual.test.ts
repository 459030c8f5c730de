import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { askedOf, askedWords, questionWords, saidRight } from '../../src/document/asked'
import { answersFollowed } from '../../src/document/edits/followed'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { pathFromPlace, withValue } from '../../src/document/place'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { unusualOf } from '../../src/document/unusual'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { checkText } from '../../src/text/checkText'
import { everyField } from './everyField'

// Values that look like a slip of the keyboard are asked about where they stand.

const read = (file: string) => JSON.parse(readFileSync(file, 'utf8')) as TrainDocument
const gear = () => read('examples/bolt-bound-gearbox.json')
const pump = () => read('examples/pump-and-motor.json')
const withAt = (document: TrainDocument, at: string, value: unknown) =>
  withValue(document, pathFromPlace(at), value)
/** The questions of a document in which one value is another. */
const asked = (document: TrainDocument, at: string, value: number) =>
  askedOf(withAt(document, at, value)).map((one) => [one.at, questionWords(one)])

const rim = 'couplings[0].found[0].readings[2][1]'
const x = 'machines[0].feet[0].x'

test.each([
  ...readdirSync('examples').flatMap((file) =>
    file.endsWith('.json') ? [`examples/${file}`] : [],
  ),
  'shared/refused/sound.json',
])('%s asks nothing', (file) => {
  expect(unusualOf(read(file))).toEqual([])
})
test('a train in which every number is given asks nothing', () => {
  expect(unusualOf(everyField())).toEqual([])
})

test('each limit is asked about above it, and not at it', () => {
  // [document, place, most that is not asked about, above it, the question]
  const cases = [
    [gear(), rim, 10_000, 12_700, '12.7 mm at the dial: more than 10 mm. Is that right?'],
    [gear(), rim, -10_000, -12_700, '−12.7 mm at the dial: more than 10 mm. Is that right?'],
    [pump(), rim, 393, 500, '0.5 in at the dial: more than 0.394 in. Is that right?'],
    [
      gear(),
      'machines[0].feet[0].pack.now',
      100_000,
      120_000,
      '120 mm under the foot: more than 100 mm. Is that right?',
    ],
    [gear(), 'machines[0].axis.z', 50_000, 60_000, '60 m: more than 50 m. Is that right?'],
    [pump(), 'machines[0].axis.z', 1900, 2400, '200 ft: more than 164 ft. Is that right?'],
    [
      gear(),
      x,
      -50_000,
      -60_000,
      '−60 m: more than 50 m from the rest of the train. Is that right?',
    ],
    [
      gear(),
      x,
      60_000,
      600_600,
      '600.6 m: more than 50 m from the rest of the train. Is that right?',
    ],
  ] as const
  for (const [document, at, usual, beyond, question] of cases) {
    expect(asked(document, at, usual).filter(([, words]) => /more than/.test(words ?? ''))).toEqual(
      [],
    )
    expect(asked(document, at, beyond)).toEqual([[at, question]])
  }
})

test('growth over 10 mm is asked about, whichever way', () => {
  const document = gear()
  const [state] = Object.keys(document.machines[0]?.growth ?? {})
  for (const way of ['rise', 'side', 'axial']) {
    const at = `machines[0].growth["${state ?? ''}"][0].${way}`
    const [one] = askedOf(withAt(document, at, 12_000))
    expect(one && questionWords(one)).toBe('12 mm of growth: more than 10 mm. Is that right?')
  }
})

test('growth from temperatures is asked about by what comes of it, in any units', () => {
  const at = 'machines[1].growth.winter[0].heat'
  // 120 in of cast iron, 90 degrees: 120 * 5.9e-6 * 90 = 0.0637 in; ten times that is 0.637 in
  const tall = withAt(pump(), `${at}.height`, 120)
  expect(askedOf(tall)).toEqual([])
  const hot = withAt(tall, `${at}.expansion`, 59)
  const [question, ...more] = askedOf(hot)
  expect(more).toEqual([])
  if (!question) throw new Error('nothing is asked')
  expect([question.at, questionWords(question)]).toEqual([
    at,
    '0.637 in of growth from temperatures: more than 0.394 in. Is that right?',
  ])
  const right = saidRight(hot, question)
  expect(askedOf(right)).toEqual([])
  expect(askedOf(switchUnits(right, { length: 'mm', fine: 'um', temperature: 'C' }))).toEqual([])
})

test('a train far from its origin, or longer than 50 m, asks nothing', () => {
  const far = gear()
  const shifted = JSON.parse(JSON.stringify(far), (key, value: unknown) =>
    typeof value === 'number' && ['x', 'at', 'plane'].includes(key) ? value + 200_000 : value,
  ) as TrainDocument
  for (const machine of shifted.machines)
    for (const foot of machine.feet) if (foot.hole?.x !== undefined) foot.hole.x -= 200_000
  expect(unusualOf(shifted)).toEqual([])
})

test('a gap between faces may be long: it is no travel of a dial', () => {
  const document = gear()
  const [coupling] = document.couplings
  if (!coupling) throw new Error('no coupling')
  coupling.found.push({
    kind: 'gap',
    diameter: 300,
    readings: [
      [12, 250_000],
      [6, 250_100],
    ],
  })
  expect(unusualOf(document)).toEqual([])
})

test('one value a hundred times the others of its column is asked about', () => {
  const document = gear()
  const feet = document.machines.flatMap(({ feet }) => feet)
  for (const foot of feet) if (foot.hole) foot.hole.clearance = 400
  const at = 'machines[2].feet[1].hole.clearance'
  expect(asked(document, at, 39_999)).toEqual([])
  expect(asked(document, at, 40_000)).toEqual([
    [at, '40000 µm: 100 times the largest of the others here, 400 µm, or more. Is that right?'],
  ])
})

test('hours of one set are compared with each other, and nought is no neighbour', () => {
  const document = gear()
  const set = document.couplings[0]?.found[0]
  if (!set || set.kind === 'line') throw new Error('no sweep')
  set.readings = [
    [12, 0],
    [3, 0],
    [6, 300],
    [9, 0],
  ]
  expect(unusualOf(document)).toEqual([])
  set.readings = [
    [12, 1],
    [3, 2],
    [6, 300],
    [9, 0],
  ]
  expect(unusualOf(document).map(({ at }) => at)).toEqual([rim])
})

test('a train that is not finished is looked at as far as it goes', () => {
  const document = withAt(withAt(gear(), x, undefined), rim, 20_000)
  expect(askedOf(document).map(({ at }) => at)).toEqual([rim])
})

test('who says that it is right is not asked again, until the value is another', () => {
  const document = withAt(gear(), rim, 12_700)
  const [question] = askedOf(document)
  if (!question) throw new Error('nothing is asked')
  const right = saidRight(document, question)
  expect(askedOf(right)).toEqual([])
  expect(askedOf(JSON.parse(JSON.stringify(right)) as TrainDocument)).toEqual([])
  expect(askedOf(withAt(right, rim, 12_800))).toHaveLength(1)
  // nor in other units, nor when machines are added before it
  const inches = switchUnits(right, { length: 'in', fine: 'mil', temperature: 'C' })
  expect(askedOf(inches)).toEqual([])
  expect(askedOf(switchUnits(inches, { length: 'mm', fine: 'um', temperature: 'C' }))).toEqual([])
  const turned = { ...right, couplings: [...right.couplings].reverse() }
  expect(askedOf(turned)).toHaveLength(1)
  expect(askedOf(answersFollowed(right, turned))).toEqual([])
})

test('what is read again after the work is asked about, and is no finding of the plan', () => {
  const document = {
    ...gear(),
    record: { again: [{ coupling: gear().couplings[0]?.id, set: 0, readings: [[6, 12_700]] }] },
  }
  expect(askedOf(document).map(({ at }) => at)).toEqual(['record.again[0].readings[0][1]'])
  const train = readTrain(document)
  expect(train.ok && train.train.asked).toEqual([])
})

test('the text of a train says what nobody has said is right, with its place', () => {
  const document = withAt(gear(), 'machines[0].feet[0].pack.now', 120_000)
  const before = readTrain(document)
  if (!before.ok) throw new Error('refused')
  const report = checkRead(before.train)
  const words =
    'Steam turbine, foot 1 lake, pack now: 120 mm under the foot, more than 100 mm; nobody has said that this is right'
  expect(report.findings[0]).toEqual({ where: 'machines[0].feet[0].pack.now', what: words })
  expect(checkText(before.train, report).replace(/\s+/g, ' ')).toContain(words)
  const [question] = askedOf(document)
  const after = question && readTrain(saidRight(document, question))
  if (!after?.ok) throw new Error('refused')
  expect(checkRead(after.train).findings.map(({ where }) => where)).not.toContain(
    'machines[0].feet[0].pack.now',
  )
  expect(question && askedWords(document, question)).toBe(words)
})
