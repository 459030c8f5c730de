import fc from 'fast-check'
import { expect, test } from 'vitest'
import { modulesOf } from '../../src/paper/modules'
import { paperHtml } from '../../src/paper/html'
import { codeText, readCode } from '../../src/document/typedCode'
import type { TrainDocument } from '../../src/document/schema'
import { isWhole, firstOf } from '../counts'
import { blocksOf, exampleNames, exampleOf, made, someExamples, type Made } from './sheets'
import { painted, readQr, type Squares } from './qrReader'

// The code on the paper: what is printed is read as the standard says, and is what a person would type.

const withQuiet = (rows: Squares): Squares => {
  const side = rows.length + 8
  return Array.from({ length: side }, (_, r) =>
    Array.from({ length: side }, (_, c) => rows[r - 4]?.[c - 4] === true),
  )
}

test('the example that ISO/IEC 18004 works out has the codewords it prints', () => {
  // Annex I: "01234567", version 1, correction M
  const { codewords, text, level } = readQr(withQuiet(modulesOf('01234567')))
  const hex = codewords.map((word) => word.toString(16).padStart(2, '0')).join(' ')
  expect(hex).toBe('10 20 0c 56 61 80 ec 11 ec 11 ec 11 ec 11 ec 11 a5 24 d4 c1 ed 36 c7 87 2c 55')
  expect([text, level]).toEqual(['01234567', 'M'])
})

/** The codes of a print, as they are drawn and as they are written beside it. */
function codesOf({ paper }: Made) {
  const html = paperHtml(paper)
  const all = [...html.matchAll(/<div class="code"><svg width="([\d.]+)mm"[^]*?<\/b><\/div>/g)]
  return all.map(([text, width]) => {
    const side = Number(/viewBox="0 0 (\d+) \1"/.exec(text)?.[1])
    const d = /<path class="solid" d="([^"]+)"/.exec(text)?.[1] ?? ''
    const written = (/<b>([^]*?)<\/b>/.exec(text)?.[1] ?? '').replace(/<br>/g, '')
    return { ...readQr(painted(d, side)), square: Number(width) / side, written }
  })
}

test.each(someExamples)(
  'the code of %s is read from its squares, and is the one written beside it',
  async (name) => {
    for (const size of ['a4', 'letter'] as const)
      for (const print of ['crew', 'shift', 'office'] as const) {
        const sheet = await made(exampleOf(name), size, print)
        const codes = codesOf(sheet)
        expect(codes).toHaveLength(print === 'office' ? 0 : 1)
        for (const { text, level, square, written } of codes) {
          expect(text).toBe(sheet.paper.code)
          expect(written).toBe(text)
          expect(level).toBe('M')
          expect(square).toBeGreaterThanOrEqual(0.5)
          expect(readCode(text)).toMatchObject({ is: 'code' })
        }
      }
  },
)

test('the code stands on the first page of the crew, however long the table of feet', async () => {
  for (const name of firstOf(exampleNames, 0, exampleNames.length).concat('five-in-a-line'))
    for (const size of firstOf(['letter', 'a4'] as const, 1, 2)) {
      const { paper } = await made(exampleOf(name), size, 'crew')
      const [first] = paper.pages
      if (!first) throw new Error('no page')
      const kinds = blocksOf({ ...paper, pages: [first] }).map(({ kind }) => kind)
      expect(kinds, `${name}, ${size}`).toContain('code')
    }
})

test.runIf(isWhole)(
  'the code names the step that comes next, and another sheet once something is done',
  async () => {
    const example = exampleOf('bolt-bound-gearbox')
    const first = await made(example, 'a4', 'shift')
    const begun: TrainDocument = {
      ...example,
      record: { work: [{ step: 'gear:vertical', body: 'gear', foot: '1 lake', done: true }] },
    }
    const second = await made(begun, 'a4', 'shift')
    const [one, other] = [first, second].map(({ paper }) => readCode(paper.code ?? ''))
    if (one?.is !== 'code' || other?.is !== 'code') throw new Error('no code')
    expect(other.place.train).toBe(one.place.train)
    expect(other.place.sheet).not.toBe(one.place.sheet)
    expect([one.place.step, other.place.step]).toEqual([1, 1])
    expect(second.paper.revision).toBe(first.paper.revision)
    const still = await made(exampleOf('leave-it-alone'), 'a4', 'shift')
    expect(readCode(still.paper.code ?? '')).toMatchObject({ place: { step: 0 } })
  },
)

const letters = '23456789ABCDEFGHJKMNPQRSTUVWXYZ'
const some = (length: number) =>
  fc.string({ unit: fc.constantFrom(...letters.split('')), minLength: length, maxLength: length })
const places = fc.record({ train: some(4), sheet: some(5), step: fc.nat(960) })

test('what was typed is read as it was printed, whatever its letters, blanks and dashes', () => {
  fc.assert(
    fc.property(places, (place) => {
      const text = codeText(place)
      expect(text).toMatch(/^[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}$/)
      const read = { is: 'code', place }
      for (const typed of [text, text.toLowerCase(), text.replaceAll('-', ' '), ` ${text} `])
        expect(readCode(typed)).toEqual(read)
      expect(readCode(text.replaceAll('-', ''))).toEqual(read)
      expect(readCode(text.replaceAll('-', '\u2212'))).toEqual(read)
    }),
  )
})

test('one wrong letter, or two that changed places, is told in every case', () => {
  fc.assert(
    fc.property(places, fc.nat(11), fc.nat(11), fc.nat(30), (place, i, j, n) => {
      const bare = codeText(place).replaceAll('-', '').split('')
      const grouped = (all: string[]) => all.join('').replace(/(.{4})(?=.)/g, '$1-')
      const wrong = bare.with(i, letters.charAt(n))
      if (wrong.join() !== bare.join()) expect(readCode(grouped(wrong))).toEqual({ is: 'wrong' })
      const turned = bare.with(i, bare[j] ?? '').with(j, bare[i] ?? '')
      if (turned.join() !== bare.join()) expect(readCode(grouped(turned))).toEqual({ is: 'wrong' })
    }),
  )
})

test('a search is no code', () => {
  for (const typed of ['', 'gearbox', 'pump', '7KQ2-M4XD', 'compressor 2', 'air compressors west'])
    expect(readCode(typed)).toEqual({ is: 'none' })
  // a letter that no code has, where a code stands in its groups
  expect(readCode('7KQ2-M4XD-9R20')).toEqual({ is: 'wrong' })
})
