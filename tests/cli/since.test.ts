import { expect, test } from 'vitest'
import { Random } from '../second/random'
import { readAfter } from '../since/walking'
import { fileWith, holdfast } from './shell'
import { exampleFile } from './trains'

const random = new Random(11)
const left = fileWith(JSON.stringify(readAfter(random)))
const found = fileWith(
  JSON.stringify(
    readAfter(random, { machine: 2, left: { y: 0, z: -160 }, right: { y: 120, z: -140 } }),
  ),
)

test('says which machine walked, which way and how surely, in lines that fit', () => {
  const { status, out, complaints } = holdfast(['since', left, found])
  expect([status, complaints]).toEqual([0, ''])
  expect(Math.max(...out.split('\n').map((line) => Array.from(line).length))).toBeLessThan(81)
  const flat = out.replace(/\s+/g, ' ')
  expect(flat).toContain('One thing explains all that changed.')
  expect(flat).toMatch(
    /- The machine 2 walked: left feet 1\d\d µm \(±\d+ µm\) lower and \d+ µm \(±\d+ µm\) toward 3 o'clock; right feet 1\d\d µm \(±\d+ µm\) lower/,
  )
  expect(flat).toContain('It is fixed, so that its dowels, bolts or grout let go.')
  expect(flat).toContain('Planning aid.')
})

test('the other way round the machine walked the other way', () => {
  const { out } = holdfast(['since', found, left])
  expect(out.replace(/\s+/g, ' ')).toMatch(
    /The machine 2 walked: left feet 1\d\d µm \(±\d+ µm\) higher/,
  )
})

test('--json has every amount in the units of the file', () => {
  const { status, out } = holdfast(['since', left, found, '--json'])
  const answer = JSON.parse(out) as {
    differs: boolean
    causes: { kind: string; body?: string; odds: number; explains: boolean }[]
    places: { body: string; x: number }[]
    stayed: string
  }
  expect([status, answer.differs]).toEqual([0, true])
  expect(answer.causes[0]).toMatchObject({ kind: 'body', body: 'm2', odds: 1, explains: true })
  expect(answer.stayed).toBe('m0')
  expect(answer.places.filter(({ body }) => body === 'm2').map(({ x }) => x)).toEqual([6300, 8100])
})

test('of several times it tells each and all together', () => {
  const { status, out } = holdfast(['since', left, found, found, left])
  const flat = out.replace(/\s+/g, ' ')
  expect(status).toBe(0)
  expect(flat).toMatch(/All 2 times together\. Nothing walked that these readings can tell/)
  expect(flat).toMatch(/TIME BY TIME.* - .*One thing explains all that changed\./)
  const { times, together } = JSON.parse(
    holdfast(['since', left, found, left, found, '--json']).out,
  ) as Record<'times', { differs: boolean }[]> & { together: { causes: { body?: string }[] } }
  expect(times.map(({ differs }) => differs)).toEqual([true, true])
  expect(together.causes[0]?.body).toBe('m2')
})

test.each([
  ['one file without outages', [left], /keeps no outages: give two files/],
  ['three', [left, found, left], /two train files for each time.*; 3 are given/],
  ['another train', [left, exampleFile('pump-and-motor')], /the machines are others/],
  ['one that is not there', ['nowhere.json', found], /no such file|does not exist|not there/],
  ['standard input twice', ['-', '-'], /standard input is one file/],
])('refused with exit 2: %s', (_, files, why) => {
  const { status, complaints } = holdfast(['since', ...files])
  expect(status).toBe(2)
  expect(complaints).toMatch(why)
})

test('one file that keeps its outages tells them all, and every coupling over the years', () => {
  const file = 'examples/over-the-years.json'
  const { status, out } = holdfast(['since', file])
  const flat = out.replace(/\s+/g, ' ')
  expect(status).toBe(0)
  expect(Math.max(...out.split('\n').map((line) => Array.from(line).length))).toBeLessThan(81)
  expect(flat).toContain('All 3 times together. One thing explains all that changed.')
  expect(flat).toContain('The gear walked')
  expect(flat).toContain('OVER THE YEARS')
  const { trend, times, open } = JSON.parse(holdfast(['since', file, '--json']).out) as {
    trend: { coupling: string; points: { at: string }[] }[]
    times: unknown[]
    open: string[]
  }
  expect([times.length, open, trend.length]).toEqual([3, [], 2])
  expect(trend[0]?.points.map(({ at }) => at).join(' ')).toBe('left found left found left now')
  expect(holdfast(['since', left]).status).toBe(2)
})
