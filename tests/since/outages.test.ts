import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { withOutageKept, withOutagesOf } from '../../src/document/edits/outageEdits'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { addPage } from '../../src/engine/fieldwork/loop/record'
import { recordAsLeft, asFoundPage } from '../../src/engine/fieldwork/loop/pages'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { historyOf, trendsOf } from '../../src/engine/fieldwork/since/history'
import { sinceOf } from '../../src/engine/fieldwork/since/since'
import { trendChart } from '../../src/scene/trendChart'
import { Random } from '../second/random'
import { readAfter } from './walking'

const example = () =>
  JSON.parse(readFileSync('examples/over-the-years.json', 'utf8')) as TrainDocument
const read = (document: TrainDocument) => {
  const result = readTrain(document)
  if (!result.ok) throw new Error(JSON.stringify(result.refused))
  return result.train
}

/** A train kept over outages: as left of one file, as found of the next one, both read by `readAfter`. */
const withHistory = (random: Random, sinks: number): TrainDocument => {
  const walk = { machine: 2, left: { y: 0, z: -sinks }, right: { y: 0, z: -sinks } }
  const one = (when: string, found: TrainDocument, left: TrainDocument) => ({
    id: when,
    when,
    couplings: found.couplings.map(({ id, found: sets, left: l, right: r }, c) => ({
      coupling: id,
      planes: [l.plane, r.plane] as [number, number],
      found: sets,
      left: left.couplings[c]?.found ?? sets,
    })),
  })
  const by = sinks === 0 ? undefined : walk
  return {
    ...readAfter(random, by),
    outages: ['2019', '2021', '2023'].map((when) =>
      one(when, readAfter(random, by), readAfter(random)),
    ),
  }
}

describe('outages kept in the file', () => {
  test('one file tells what the files of then would', () => {
    const [a, b] = [
      readAfter(new Random(5)),
      readAfter(new Random(6), { machine: 2, left: { y: 0, z: -150 }, right: { y: 40, z: -150 } }),
    ]
    const kept: TrainDocument = {
      ...b,
      outages: [
        {
          id: 'then',
          when: '2020',
          couplings: a.couplings.map(({ id, found, left, right }) => ({
            coupling: id,
            planes: [left.plane, right.plane],
            left: found,
          })),
        },
      ],
    }
    const history = historyOf(read(kept))
    expect(history.times.map(({ name }) => name)).toEqual(['2020 to now'])
    expect(history.times[0]?.since).toEqual(sinceOf(read(a), read(b)))
  })

  test('one that sinks every time is named over all, and nobody where none does', () => {
    let [named, quiet] = [0, 0]
    for (let seed = 1; seed <= 20; seed++) {
      const { together } = historyOf(read(withHistory(new Random(seed), 45)))
      const [first] = together?.causes ?? []
      if (first?.suspect.kind === 'body' && first.suspect.body === 2 && first.explains) named++
      if (historyOf(read(withHistory(new Random(seed + 500), 0))).together?.differs === false)
        quiet++
    }
    expect(named).toBeGreaterThanOrEqual(19)
    expect(quiet).toBeGreaterThanOrEqual(19)
  })

  test('a time without readings of a coupling is told apart, and what the train no longer has', () => {
    const document = example()
    const [first, second] = document.outages ?? []
    if (!first || !second) throw new Error('the example has lost its outages')
    const [one, two] = first.couplings
    if (!one || !two) throw new Error('no couplings')
    const bare = (from: typeof first) => ({ ...from, seal: undefined })
    const open = read({
      ...document,
      outages: [{ ...bare(first), couplings: [one, { ...two, coupling: 'gone' }] }, second],
    })
    expect(historyOf(open).open).toEqual(['2020-05-12 to 2022-06-03'])
    expect(
      checkRead(open)
        .findings.map(({ what }) => what)
        .join(' '),
    ).toContain('"gone"')
  })

  test('a seal holds in any units and shows a change', () => {
    const document = example()
    const unsound = (one: TrainDocument) =>
      read(one)
        .outages.filter(({ sealed }) => sealed !== true)
        .map(({ id }) => id)
    expect(unsound(document)).toEqual([])
    expect(unsound(switchUnits(document, { length: 'in', fine: 'mil', temperature: 'F' }))).toEqual(
      [],
    )
    const [first] = document.outages ?? []
    if (first) first.work = 'something else'
    expect(unsound(document)).toEqual(['2020-05-12'])
    expect(checkRead(read(document)).findings.map(({ where }) => where)).toContain('outages[0]')
  })

  test('keeps what the pages of the record have, sealed', () => {
    const before = example()
    const [c0] = before.couplings
    if (!c0) throw new Error('no coupling')
    const after: TrainDocument = {
      ...before,
      couplings: before.couplings.map((c) => ({
        ...c,
        found: c.found.map((set) => ({ ...set, by: 'after' })),
      })),
    }
    const standing = { standingShare: 1, share: 0.7, asFound: [] }
    const pages = addPage(
      addPage([], asFoundPage(before, standing, { when: '2026-11-29' })),
      recordAsLeft(after, standing, { when: '2026-11-30' }),
    )
    const kept = withOutageKept({ ...after, record: { pages } }, { when: '2026-11-30', by: 'A' })
    const last = kept.outages?.at(-1)
    expect(last?.couplings[0]?.found).toEqual(c0.found)
    expect(last?.couplings[0]?.left?.map(({ by }) => by)).toEqual(['after', 'after'])
    expect(last?.plan).toContain('As found.')
    expect(read(kept).outages.at(-1)?.sealed).toBe(true)
    // without a record the readings of the sheet are how it was found
    const plain = withOutageKept(before, { when: '2027-01-01' }).outages?.at(-1)
    expect([plain?.couplings[0]?.found, plain?.couplings[0]?.left]).toEqual([c0.found, undefined])
  })

  test('two histories of one train are merged by date, told apart where they differ', () => {
    const [mine, theirs] = [example(), example()]
    const [first, second, third] = mine.outages ?? []
    if (!first || !second || !third) throw new Error('the example has lost its outages')
    const other = { ...second, seal: undefined, work: 'told otherwise' }
    const merged = withOutagesOf(
      { ...mine, outages: [first, third] },
      { ...theirs, outages: [first, second, { ...third, seal: undefined, note: 'another' }] },
    )
    expect([merged.same, merged.added, merged.apart]).toEqual([
      ['2020-05-12'],
      ['2022-06-03'],
      ['2024-05-21'],
    ])
    expect(merged.document.outages?.map(({ when }) => when)).toEqual([
      '2020-05-12',
      '2022-06-03',
      '2024-05-21',
      '2024-05-21',
    ])
    expect(new Set(merged.document.outages?.map(({ id }) => id)).size).toBe(4)
    expect(read(merged.document).outages.filter(({ sealed }) => sealed === false)).toEqual([])
    expect(
      withOutagesOf({ ...mine, outages: [second] }, { ...mine, outages: [other] }).apart,
    ).toEqual(['2022-06-03'])
  })

  test('the chart has all on one scale, and lies within its frame', () => {
    const train = read(example())
    const trends = trendsOf(train)
    const [all, one] = [trendChart(train, trends, 500), trendChart(train, trends, 500, 1)]
    expect(all.height).toBe(2 * one.height)
    const scaleOf = ({ labels }: typeof all) =>
      labels.filter(({ anchor }) => anchor === 'end').map(({ text }) => text)
    expect(scaleOf(all)).toEqual(expect.arrayContaining(scaleOf(one)))
    expect(all.labels.every(({ x, y }) => x >= 0 && x <= 500 && y >= 0 && y <= all.height)).toBe(
      true,
    )
    // half an em a letter, in type of 16 px: what is wide in figures and signs
    for (const { x, text, anchor } of all.labels)
      if (anchor === 'end' && x < 250) expect(x, text).toBeGreaterThanOrEqual(text.length * 8)
    for (const mark of all.marks)
      if (mark.kind === 'circle')
        expect(mark.y > 0 && mark.y < all.height && mark.x < 500).toBe(true)
  })
})
