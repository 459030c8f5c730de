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

test.each([
  ['one file', [left], /give two train files/],
  ['three', [left, found, left], /compares two files/],
  ['another train', [left, exampleFile('pump-and-motor')], /the machines are others/],
  ['one that is not there', ['nowhere.json', found], /no such file|does not exist|not there/],
  ['standard input twice', ['-', '-'], /one file/],
])('refused with exit 2: %s', (_, files, why) => {
  const { status, complaints } = holdfast(['since', ...files])
  expect(status).toBe(2)
  expect(complaints).toMatch(why)
})
