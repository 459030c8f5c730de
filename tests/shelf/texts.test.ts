import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fileNameOf } from '../../src/app/services/handOver'
import { fileText } from '../../src/app/shelf/fileText'
import { answers, freeMark, labelOf, labelOfText } from '../../src/app/shelf/label'
import { contentOf, printOf } from '../../src/document/contentPrint'
import { onSheet } from '../../src/app/shelf/sheet'
import { clockOf, dayOf } from '../../src/app/shelf/times'
import { goesOn, numberAfter, versionOf } from '../../src/app/shelf/versions'

const folder = new URL('../../examples/', import.meta.url)
const texts = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => readFileSync(new URL(file, folder), 'utf8'))

test('a saved file says what the document says, in lines that fit a page', () => {
  expect(texts.length).toBeGreaterThan(4)
  for (const text of texts) {
    const saved = fileText(JSON.parse(text))
    expect(JSON.parse(saved)).toEqual(JSON.parse(text))
    const [longest = ''] = saved.split('\n').sort((a, b) => b.length - a.length)
    // only a text of its own can be longer than a line
    if (longest.length > 101) expect(longest).toMatch(/^ *"\w+": ".*",?$/)
    expect(saved.split('\n').length).toBeGreaterThan(20)
  }
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.stringify(JSON.parse(fileText(value)))).toBe(JSON.stringify(value))
    }),
  )
})

test('a print is of what is said, not of how it is laid out', () => {
  const one = '{"a": 1, "b": {"c": [1, 2], "d": null}}'
  const other = '{ "b": { "d": null, "c": [1,2] },\n"a":1 }'
  expect(contentOf(one)).toBe(contentOf(other))
  expect(printOf(one)).toBe(printOf(other))
  expect(printOf(one)).not.toBe(printOf(one.replace('[1, 2]', '[2, 1]')))
  expect(new Set(texts.map(printOf)).size).toBe(texts.length)
})

test('a file is known by name, site and the ids of its machines', () => {
  const train = { name: ' Air', site: 'North', machines: [{ id: 'm', name: 'Motor' }, { id: 'c' }] }
  const { match } = labelOf(train)
  expect(labelOf({ ...train, name: 'Air', plan: { share: 0.5 } }).match).toBe(match)
  for (const other of [
    { ...train, name: 'Gas' },
    { ...train, site: undefined },
    { ...train, machines: [...train.machines].reverse() },
  ])
    expect(labelOf(other).match).not.toBe(match)
  expect(labelOfText('no JSON')).toEqual(labelOf({}))
  expect(labelOf(train)).toMatchObject({ name: ' Air', machines: ['Motor', ''] })
})

test('a search wants every word, in name, mark, site or machines', () => {
  const job = { name: 'Blast air', mark: 'copy', site: 'North yard', machines: ['Motor', 'Gear'] }
  for (const query of ['', 'gear', 'NORTH motor', ' blast  copy ', 'yar'])
    expect(answers(job, query)).toBe(true)
  for (const query of ['pump', 'north pump']) expect(answers(job, query)).toBe(false)
})

test('marks tell jobs of one name apart', () => {
  const jobs = [
    { name: 'Air', mark: '' },
    { name: 'Air', mark: '2' },
    { name: 'Air', mark: 'copy' },
  ]
  expect(freeMark(jobs, 'Gas', '')).toBe('')
  expect(freeMark(jobs, 'Air', '')).toBe('3')
  expect(freeMark(jobs, 'Air', 'copy')).toBe('copy 2')
})

test('typing on within two seconds is one version', () => {
  const first = { what: 'typed pack', when: 10_000 }
  expect(goesOn(first, { what: 'typed pack', when: 11_999 })).toBe(true)
  expect(goesOn(first, { what: 'typed pack', when: 12_000 })).toBe(false)
  expect(goesOn(first, { what: 'typed lift', when: 10_100 })).toBe(false)
  const version = versionOf('job', 7, { text: '{}', entries: {}, ...first })
  expect(numberAfter(undefined, first)).toBe(1)
  expect(numberAfter(version, { what: 'typed pack', when: 10_500 })).toBe(7)
  expect(numberAfter(version, { what: 'typed lift', when: 10_500 })).toBe(8)
})

test('times are of the day, and days are named unless it is today', () => {
  const when = new Date(2026, 10, 5, 4, 2, 9).getTime()
  expect(clockOf(when)).toBe('04:02:09')
  expect(dayOf(when)).toBe('5 Nov 2026 04:02')
  expect(dayOf(when, when + 3600_000)).toBe('today 04:02')
  expect(dayOf(when, when + 24 * 3600_000)).toBe('5 Nov 2026 04:02')
})

test('a file is named after its train', () => {
  expect(fileNameOf('Blast air, north / 2', 'json')).toBe('blast-air-north-2.json')
  expect(fileNameOf('Grüne Pumpe', 'json')).toBe('grüne-pumpe.json')
  expect(fileNameOf('///', 'json')).toBe('train.json')
})

test('numbers that are not entered yet come back as missing, whatever a record holds', () => {
  const typed = {
    units: { length: 'mm', fine: 'mm' },
    machines: [{ feet: [{ gaps: [1, undefined, 2, undefined] }], restraints: [{ side: [-3] }] }],
    couplings: [{ found: [{ readings: [[12, undefined]] }] }],
    record: { pages: [null, { judged: [null] }] },
  }
  const { document } = onSheet({ text: JSON.stringify(typed), entries: {} })
  expect(document).toStrictEqual(typed)
  expect(JSON.stringify(document)).toBe(JSON.stringify(typed))
})
