import { describe, expect, it } from 'vitest'
import { recordJson, recordText } from '../../src/text/recordText'
import { acceptanceMissing, openItems } from '../../src/engine/fieldwork/loop/acceptance'
import { addPage, verifyRecord, type PageDraft } from '../../src/engine/fieldwork/loop/record'
import {
  asFoundPage,
  recordAsLeft,
  nothingMovedPage,
  stepPage,
} from '../../src/engine/fieldwork/loop/pages'
import { canonicalJson } from '../../src/document/canonicalJson'
import { fnv32, fnv64, pointsOf, utf16Of } from '../../src/document/fingerprint'
import { readTrain } from '../../src/document/readTrain'
import { workRecordOf, type RecordPage } from '../../src/document/work'
import { at, given, pair, planOf } from '../engine/pair'

const drafts: PageDraft[] = [
  {
    kind: 'as found',
    when: '2031-04-02T07:10',
    by: 'Ada',
    words: 'As found.',
    content: { a: 1, b: [1, null, 'ä'] },
  },
  {
    kind: 'step',
    when: '2031-04-02T09:40',
    words: 'Two moves.',
    content: { work: [{ shim: 0.25 }] },
  },
  { kind: 'as left', when: '2031-04-02T11:00', words: 'As left.', content: null },
]
const pages = drafts.reduce<RecordPage[]>((all, draft) => addPage(all, draft), [])

describe('the digest', () => {
  it('is 64-bit FNV-1a', () => {
    // offset basis, and "a" and "foobar" as the reference tables of the hash have them (from memory)
    expect(fnv64('')).toBe('cbf29ce484222325')
    expect(fnv64('a')).toBe('af63dc4c8601ec8c')
    expect(fnv64('foobar')).toBe('85944171f73967e8')
    expect(fnv32(utf16Of(''))).toBe('811c9dc5')
    expect(fnv32(pointsOf('a'))).toBe('e40c292c')
    expect(fnv32(utf16Of('foobar'))).toBe('bf9cf968')
  })

  it('counts the bytes of UTF-8', () => {
    for (const text of ['é', '漢', '😀', 'µm'])
      expect(fnv64(text)).toBe(digestOf([...new TextEncoder().encode(text)]))
  })

  it('is of one text, however the keys stand', () => {
    expect(canonicalJson({ b: 1, a: { d: undefined, c: [2, undefined] } })).toBe(
      '{"a":{"c":[2,null]},"b":1}',
    )
    expect(canonicalJson({ a: { c: [2, null] }, b: 1 })).toBe(
      canonicalJson({ b: 1, a: { c: [2, undefined] } }),
    )
  })
})

describe('the record', () => {
  it('is sound as it was written, and after a trip through a file', () => {
    expect(verifyRecord(pages)).toEqual({ sound: true })
    expect(verifyRecord([])).toEqual({ sound: true })
    const document = { ...pair(), record: JSON.parse(JSON.stringify({ pages })) as unknown }
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    expect(verifyRecord(workRecordOf(read.document.record)?.pages ?? [])).toEqual({ sound: true })
  })

  it.each([
    ['a word', 0, (page: RecordPage) => ({ ...page, words: 'As  found.' })],
    ['a name', 0, (page: RecordPage) => ({ ...page, by: 'Eve' })],
    ['a time', 1, (page: RecordPage) => ({ ...page, when: '2031-04-03T09:40' })],
    ['a number', 1, (page: RecordPage) => ({ ...page, content: { work: [{ shim: 0.2501 }] } })],
    ['what it is', 2, (page: RecordPage) => ({ ...page, kind: 'note' as const })],
    ['a seal', 1, (page: RecordPage) => ({ ...page, seal: '0000000000000000' })],
  ])('shows the first page on which %s was changed', (_, index, change) => {
    const changed = pages.map((page, i) => (i === index ? change(page) : page))
    expect(verifyRecord(changed)).toMatchObject({ sound: false, page: index })
  })

  it('shows a page taken out, put in between, or moved', () => {
    expect(verifyRecord([at(pages, 0), at(pages, 2)])).toMatchObject({ page: 1 })
    expect(verifyRecord([at(pages, 1), at(pages, 0), at(pages, 2)])).toMatchObject({ page: 0 })
    expect(verifyRecord([at(pages, 0), at(pages, 0), at(pages, 1)])).toMatchObject({ page: 1 })
  })

  it('shows that a page was sealed again, by the page after it', () => {
    const forged = addPage([], { ...at(drafts, 0), by: 'Eve' })
    expect(verifyRecord([...forged, ...pages.slice(1)])).toMatchObject({ sound: false, page: 1 })
  })

  it('is exported as text that says whether it is sound', () => {
    const text = recordText('pair', pages)
    expect(text).toContain('3 pages, each as it was written.')
    expect(text).toContain('Page 1: as found, 2031-04-02T07:10, Ada')
    for (const { seal } of pages) expect(text).toContain(`Seal ${seal}`)
    const bad = pages.map((page, i) => (i === 1 ? { ...page, words: 'x' } : page))
    expect(recordText('pair', bad)).toContain(
      'Page 2 (step, 2031-04-02T09:40) is not as it was written',
    )
  })
})

describe('a record to read', () => {
  it('has every coupling in every state with its limit and pass or fail, readings, packs and facts', () => {
    const document = pair({
      found: [given(0, 80)],
      rest: { plan: { share: 0.7 }, site: 'North shed' },
    })
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    const facts = { workOrder: 'WO 12', acceptedBy: 'B. Owner', acceptance: 'until the shutdown' }
    const answer = planOf(document)
    const open = openItems(answer)
    const sign = { when: '2031-04-02', by: 'Ada' }
    const text = (more: Parameters<typeof recordAsLeft>[3]) =>
      recordText('pair', addPage([], recordAsLeft(read.document, answer, sign, more)))
    const told = text({ facts, open })
    // 80 um of the 100 that are allowed
    expect(told).toMatch(/: 80 % of the limit: pass, but over the 70 % asked for/)
    expect(told).toContain('Work order: WO 12')
    expect(told).toContain('Site: North shed')
    expect(told).toContain('over the 70 % asked for. ')
    expect(told).toContain('Accepted by B. Owner: until the shutdown.')
    expect(told).not.toContain('{')
    const bad = pair({ found: [given(0, 130)] })
    const worse = readTrain(bad)
    if (!worse.ok) throw new Error('refused')
    expect(
      recordText('pair', addPage([], asFoundPage(worse.document, planOf(bad), sign))),
    ).toContain(': 130 % of the limit: FAIL')
    const pages = addPage([], recordAsLeft(read.document, answer, sign, { facts, open }))
    const kept = JSON.parse(recordJson('pair', pages)) as { pages: RecordPage[] }
    expect(verifyRecord(kept.pages)).toEqual({ sound: true })
  })

  it('has the numbers of a line that was given, and which way a flange drew the shaft', () => {
    const flanges = [
      { name: 'suction', y: -12, z: -30 },
      { name: 'discharge', y: 8 },
    ]
    const document = pair({
      found: [given(-40, 80, 0.05, -0.12)],
      coupling: { strain: { flanges } },
      rest: { sides: { three: 'toward the river', nine: 'toward the road' } },
    })
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    const sign = { when: '2031-04-02', by: 'Ada' }
    const told = recordText(
      'pair',
      addPage([], asFoundPage(read.document, planOf(document), sign)),
    ).replace(/\s+/g, ' ')
    expect(told).toContain(
      'Set 1, offset and slope at x 100 mm: the pump 80 µm high, 40 µm toward the road, falling 0.12 mrad to the right, running 0.05 mrad toward the river',
    )
    expect(told).toContain(
      'Pipe strain at Motor to Pump, suction: 30 µm down, 12 µm toward the road',
    )
    expect(told).toContain('discharge: up or down not read, 8 µm toward the river')
    const upright = { kind: 'line', at: 100, offset: { z: 80 }, slope: { z: -0.12 } }
    const half = { ...upright, offset: { y: 5 }, slope: { y: 0.05 } }
    const two = readTrain(pair({ found: [upright, half] }))
    if (!two.ok) throw new Error(JSON.stringify(two.refused))
    const parts = recordText(
      'pair',
      addPage([], { ...sign, kind: 'as found', words: '', content: { job: two.document } }),
    ).replace(/\s+/g, ' ')
    expect(parts).toContain('falling 0.12 mrad to the right; not read: side and slope aside')
    expect(parts).toContain("toward 3 o'clock; not read: rise and slope up")
  })

  it('tells a round in words: what was done, and each reading beside its target, in the units it was written in', () => {
    const document = pair({ found: [given(0, 80)] })
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    const meaning = { kind: 'within doubt' as const, words: 'alike', causes: [] }
    const compared = { meaning, words: 'Alike.' }
    const sets = [
      { set: 1, rows: [{ hour: 6, expected: 0.097, measured: 0.098, difference: 0.001 }] },
    ]
    const page = stepPage(
      {
        work: [{ step: 's', body: 'B', foot: '1', shim: -0.25, done: true, note: 'two plates' }],
        read: [
          {
            coupling: 'c',
            set: 0,
            step: 's',
            readings: [
              [12, 0],
              [6, -0.05],
            ],
          },
        ],
        steps: { done: 1, of: 1 },
        units: { length: 'mm', fine: 'mm', temperature: 'C' },
      },
      { ...compared, couplings: [{ ...{ coupling: 'c', line: null, meaning }, sets }] },
      { when: '2031-04-02' },
    )
    const found = asFoundPage(read.document, planOf(document), { when: '2031-04-01' })
    const text = recordText('pair', addPage(addPage([], found), page))
    expect(text).toContain("Done, in mm, + up, toward 3 o'clock and to the right:\n")
    expect(text).toContain('  Pump, foot 1: shim \u22120.25, two plates\n')
    expect(text).toContain('set 1, at s: at 12: 0, at 6: \u22120.05\n')
    expect(text).toContain('set 2: at 6: +0.10, target +0.10, apart 0\n')
    expect(text).not.toContain('{')
  })

  it('has soft feet as they were read, corner by corner', () => {
    const soft = {
      feet: [
        { id: '1', x: 1000, soft: 60, gaps: [0, 10, 20, 60] },
        { id: '2', x: 2000 },
      ],
    }
    const document = pair({ found: [given(0, 80)], right: soft })
    const read = readTrain(document)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const text = recordText(
      'p',
      addPage([], asFoundPage(read.document, planOf(document), { when: '2031' })),
    )
    expect(text).toContain('Soft foot, each bolt loosened by itself:\n')
    expect(text).toMatch(
      /foot 1: rose 60 µm; gaps left end .+ 0 µm, left end .+ 10 µm, right end .+ 20 µm, right end .+ 60 µm\n/,
    )
  })

  it('is not written over something open without words and a name', () => {
    const open = openItems({ standingShare: 0.8, share: 0.7 })
    expect(open[0]).toBe(
      'The tightest coupling uses 80 % of its tolerance, over the 70 % asked for.',
    )
    expect(acceptanceMissing(open, undefined)).toEqual([
      'Not written down: 2 things are open. Enter why it is accepted, in words, and who accepts it for operations.',
      ...open,
    ])
    expect(acceptanceMissing(['A.'], undefined)[0]).toMatch(
      /^Not written down: one thing is open\./,
    )
    expect(acceptanceMissing(['A.', 'B.'], { acceptance: 'as agreed' })).toEqual([
      'Not written down: 2 things are open. Enter who accepts it for operations.',
      ...['A.', 'B.'],
    ])
    expect(acceptanceMissing(open, { acceptance: 'as agreed', acceptedBy: 'B' })).toEqual([])
    expect(acceptanceMissing([], undefined)).toEqual([])
    const ready = {
      ...{ ready: true, provisional: false, sentence: 'Ready.', provisionalSentence: '' },
      ...{ softFoot: [], strain: [], closure: [], signs: [] },
    }
    const waived = {
      ...{ what: 'soft foot' as const, where: 'a', state: 'waived' as const },
      ...{ words: 'not measured', by: 'A. Engineer', why: 'rigid base' },
    }
    expect(openItems({ standingShare: 0.6, share: 0.7, ready: { ...ready, items: [] } })).toEqual(
      [],
    )
    expect(
      openItems({ standingShare: 0.6, share: 0.7, ready: { ...ready, items: [waived] } }),
    ).toEqual(['Not measured: accepted without, by A. Engineer: rigid base.'])
  })
})

describe('pages', () => {
  const sign = { when: '2031-04-02', by: 'Ada' }

  it('hold the whole job, without the record they go into', () => {
    const document = { ...pair({ found: [given(0, 300)] }), record: { pages } }
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    const page = asFoundPage(read.document, planOf(document), sign)
    expect(page.words).toBe(
      'As found. The tightest coupling uses 300 % of its tolerance; 100 % was asked for.',
    )
    expect(page.content).toMatchObject({ job: { name: 'pair' }, standingShare: 3 })
    expect(JSON.stringify(page.content)).not.toContain('record')
    expect(recordAsLeft(read.document, planOf(document), sign).kind).toBe('as left')
  })

  it('say that nothing was moved', () => {
    const document = pair({ found: [given(0, 20)] })
    const read = readTrain(document)
    if (!read.ok) throw new Error('refused')
    const page = nothingMovedPage(read.document, planOf(document), sign)
    expect(page.kind).toBe('nothing moved')
    expect(page.words).toContain('20 % of its tolerance')
  })

  it('count what was done', () => {
    const page = stepPage(
      {
        work: [{ step: 'B:vertical', body: 'B', foot: '1', shim: 100, done: true }],
        read: [{ coupling: 'AB', set: 0, step: 'B:vertical', readings: [[12, 0]] }],
        steps: { done: 1, of: 2 },
        units: { length: 'mm', fine: 'um', temperature: 'C' },
      },
      undefined,
      sign,
    )
    expect(page).toMatchObject({ kind: 'step', words: '1 of 2 steps done.', by: 'Ada' })
    expect(page.content).toMatchObject({ read: [{ step: 'B:vertical' }] })
  })
})

/** The same hash of plain bytes, written once more. */
function digestOf(bytes: number[]): string {
  let hash = 14695981039346656037n
  for (const byte of bytes) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 1099511628211n)
  return hash.toString(16).padStart(16, '0')
}
