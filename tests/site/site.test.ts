import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { dueLine, tightestWords } from '../../src/engine/fieldwork/site/dueWords'
import { bySite, trainState } from '../../src/engine/fieldwork/site/trainState'
import { datedIn, monthsLater } from '../../src/mechanics/day'
import { sitePaper } from '../../src/paper/sitePaper'
import { paperBody } from '../../src/paper/html'

const example = (name: string, change: Partial<TrainDocument> = {}) => {
  const read = readTrain({
    ...(JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as TrainDocument),
    ...change,
  })
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read
}
const page = (kind: string, when: string) => ({ kind, when, words: '', content: {}, seal: '' })
const inOrder = (change: Partial<TrainDocument> = {}) => example('leave-it-alone', change)

describe('a train on a day', () => {
  // examples/leave-it-alone.json stands at 61 % of its tolerance, 70 % asked for
  test('in order, and never written down: what is not known is said, and nothing else', () => {
    const state = trainState(inOrder(), '2026-11-30')
    expect(tightestWords(state)).toMatch(/^61 % \(/)
    expect(dueLine(state)).toBe('not known: when it was last aligned is not written down')
  })

  test('the newest page that says how it was left counts, not one that says how it was found', () => {
    const record = {
      pages: [
        page('as left', '2024-02-10T08:00:00Z'),
        page('nothing moved', '2025-03-01T10:00:00Z'),
        page('as found', '2026-01-01T10:00:00Z'),
      ],
    }
    const state = trainState(inOrder({ record, checkEvery: 24 }), '2026-11-30')
    expect([state.aligned?.said, state.next, dueLine(state)]).toEqual([
      '2025-03-01',
      '2027-03-01',
      'nothing is due before 2027-03-01',
    ])
    expect(dueLine(trainState(inOrder({ record }), '2026-11-30'))).toBe(
      'nothing is due; how often it is looked at is not entered',
    )
  })

  test('an interval is over on its day, not the day before', () => {
    const record = { pages: [page('as left', '2025-08-31T10:00:00Z')] }
    const due = (today: string) => dueLine(trainState(inOrder({ record, checkEvery: 6 }), today))
    expect(due('2026-02-27')).toBe('nothing is due before 2026-02-28')
    expect(due('2026-02-28')).toBe('now: to be looked at every 6 months: due since 2026-02-28')
  })

  test('beyond tolerance is due now, over the share asked for at the next stop; work begun comes with it', () => {
    const over = trainState(example('piped-compressor'), '2026-11-30')
    expect(dueLine(over)).toBe('now: beyond its tolerance by the readings entered: 388 %')
    const record = { work: [{ step: 'a', body: 'motor', done: true }] }
    expect(dueLine(trainState(example('piped-compressor', { record }), '2026-11-30'))).toContain(
      '; work is begun and not read to its end: 1 entry after the readings entered',
    )
    expect(dueLine(trainState(inOrder({ plan: { share: 0.5 } }), '2026-11-30'))).toBe(
      'at the next stop: over the 50 % that is asked for, by the readings entered: 61 %',
    )
  })

  test('a hot check asks for its trim until the train is aligned after it', () => {
    const { hotChecks: [check] = [] } = example('hot-check').document
    const due = (left: string, ran = '2025-06-12') =>
      dueLine(
        trainState(
          example('hot-check', {
            record: { pages: [page('as left', left)] },
            ...(check && { hotChecks: [{ ...check, when: ran }] }),
          }),
          '2026-11-30',
        ),
      )
    expect(due('2025-06-01')).toMatch(
      /^now: the hot check ".*" found 161 % of the tolerance used as it ran$/,
    )
    expect(due('2025-06-13')).not.toContain('hot check')
    // a check without a date may have been after it
    expect(due('2025-06-13', 'in June')).toContain('hot check')
  })

  test('sites in their order, trains without one last, the most urgent first', () => {
    const today = '2026-11-30'
    const states = [
      trainState(inOrder(), today),
      trainState(inOrder({ site: 'Pump house' }), today),
      trainState(example('piped-compressor', { site: 'Pump house' }), today),
      trainState(example('piped-compressor', { site: 'Blower hall' }), today),
    ]
    expect(bySite(states).map(([site, here]) => [site, here.map(({ name }) => name)])).toEqual([
      ['Blower hall', ['Blast air train']],
      ['Pump house', ['Blast air train', 'Water injection train']],
      ['', ['Water injection train']],
    ])
    const paper = sitePaper(states, [{ name: 'Spoilt', why: 'no train' }], {
      ...{ size: 'a4', today, date: 'printed 2026-11-30' },
    })
    const text = paperBody(paper)
      .replace(/<[^>]+>/g, ' ')
      .replace(/[\s\u00a0]+/g, ' ')
    expect(text).toContain('Every train 5 trains As they stood on 2026-11-30')
    for (const state of states) expect(text).toContain(dueLine(state))
    expect(text).toContain('Spoilt: no train')
  })
})

test.each([
  [6.5, '6.5 is not a whole number: give a whole number'],
  [0, '0 is out of range: it must be at least 1'],
  [241, '241 is out of range: it must be at most 240'],
])('%d months are refused in words', (checkEvery, why) => {
  const { document } = example('leave-it-alone')
  const read = readTrain({ ...document, checkEvery })
  expect(read.ok ? [] : read.refused).toEqual([{ at: 'checkEvery', why }])
})

test.each([
  ['2025-08-31', 6, '2026-02-28'],
  ['2023-08-31', 6, '2024-02-29'],
  ['2025-12-15', 1, '2026-01-15'],
  ['2025-01-31', 240, '2045-01-31'],
])('%s and %i months is %s', (day, months, later) => {
  expect(monthsLater(day, months)).toBe(later)
})

test.each([
  ['2025-08-31T23:10:00+02:00', '2025-08-31', '2025-08-31'],
  ['2019', '2019', '2019-01-01'],
  ['2019-05, spring', '2019-05', '2019-05-01'],
  ['2025-02-30', undefined, undefined],
  ['spring 2019', undefined, undefined],
  ['20190', undefined, undefined],
])('"%s" begins with the date %s', (text, said, day) => {
  expect([datedIn(text)?.said, datedIn(text)?.day]).toEqual([said, day])
})
