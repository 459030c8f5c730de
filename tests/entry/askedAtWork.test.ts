import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { askedOf, askedWords, questionWords, saidRight } from '../../src/document/asked'
import type { TrainDocument } from '../../src/document/schema'

const example = (): TrainDocument =>
  JSON.parse(readFileSync('examples/bolt-bound-gearbox.json', 'utf8')) as TrainDocument

/** What is asked of a train with something written down at the machine: the question, and what the plan says of it. */
function told(record: object): string[][] {
  const train = { ...example(), record }
  return askedOf(train).map((one) => [questionWords(one), askedWords(train, one)])
}

const step = { step: 'gear:vertical', body: 'gear', done: true }

test('what was done at a foot is asked about beyond what feet are moved', () => {
  expect(
    told({ work: [{ ...step, foot: '1 lake', shim: 10_000, side: -9000, dial: 300 }] }),
  ).toEqual([])
  expect(told({ work: [{ ...step, foot: '1 lake', shim: 12_700 }] })).toEqual([
    [
      '12.7 mm under the foot: more than 10 mm. Is that right?',
      'record, Step-up gear, foot 1 lake, as done, shim: 12.7 mm under the foot, more than 10 mm; nobody has said that this is right',
    ],
  ])
  expect(told({ work: [{ ...step, foot: '1 lake', side: -12_700 }] })).toEqual([
    [
      '−12.7 mm of slide: more than 10 mm. Is that right?',
      'record, Step-up gear, foot 1 lake, as done, sideways: −12.7 mm of slide, more than 10 mm; nobody has said that this is right',
    ],
  ])
})

test('what dials showed and what was measured at a stop point is asked about too, until somebody says that it is right', () => {
  const coupling = example().couplings[0]?.id ?? ''
  const record = {
    work: [{ ...step, dial: 25_400, stays: [{ where: 'gear 1 lake', shows: -11_000 }] }],
    again: [
      {
        coupling,
        set: 0,
        readings: [
          [12, 0],
          [6, 30_000],
        ],
      },
    ],
    gaps: [{ coupling, step: 'gear:vertical', gap: 60_000 }],
  }
  const name = 'turbine to low stage'
  expect(told(record).map(([, words]) => words)).toEqual([
    'record, Step-up gear, as done, dial: 25.4 mm at the dial, more than 10 mm; nobody has said that this is right',
    'record, Step-up gear, as done, dial at gear 1 lake, shows: −11 mm at the dial, more than 10 mm; nobody has said that this is right',
    `record, ${name} read again, bottom: 30 mm at the dial, more than 10 mm; nobody has said that this is right`,
    `record, ${name}, gap: 60 m, more than 10 m; nobody has said that this is right`,
  ])
  const train = { ...example(), record }
  const [first] = askedOf(train)
  if (!first) throw new Error('nothing is asked')
  expect(askedOf(saidRight(train, first))).toHaveLength(3)
})
