import { readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { csvText } from '../../src/document/tables/csv'
import { readTrain, readTrainText } from '../../src/document/readTrain'
import { firstRefusals } from '../../src/document/refusal'
import type { TrainDocument } from '../../src/document/schema'
import { firstUnseen, harmless, harmlessJson, harmlessLine } from '../../src/language/harmless'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { checkText } from '../../src/text/checkText'
import { fold, table } from '../../src/text/layout'

const sound = (): TrainDocument =>
  JSON.parse(
    readFileSync(new URL('../../shared/refused/sound.json', import.meta.url), 'utf8'),
  ) as TrainDocument

/**
 * Control characters (ECMA-48), marks of direction (Unicode Standard Annex 9, table of explicit formatting characters and
 * implicit marks), separators of lines, the byte order mark, and what XML 1.0 (production 2, Char) may not hold.
 */
const unseen = [
  ...['\u0000', '\u0007', '\u0008', '\u001b', '\u007f', '\u0085', '\u009b', '\u009f'],
  ...['\u061c', '\u200e', '\u200f', '\u202a', '\u202b', '\u202c', '\u202d', '\u202e'],
  ...['\u2066', '\u2067', '\u2068', '\u2069', '\u2028', '\u2029', '\ufeff', '\ufffe', '\uffff'],
  ...['\ud800', '\udfff'],
]
/** Letters of other scripts, signs over several codes, joiners that words need. */
const seen = ['Gehäuse', 'насос', '泵', 'پمپ\u200cها', '👷🏽\u200d♂️', 'e\u0301', '½″', '\u00a0']

describe('what nobody sees', () => {
  it.each(unseen)('%j is found, replaced where it is shown, escaped in JSON', (sign) => {
    expect(firstUnseen(`ab${sign}c`)?.place).toBe(3)
    expect(harmless(`ab${sign}c`)).toBe('ab\ufffdc')
    const json = harmlessJson(JSON.stringify({ [`a${sign}`]: sign }))
    expect(firstUnseen(json)).toBeUndefined()
    expect(JSON.parse(json)).toEqual({ [`a${sign}`]: sign })
  })
  it.each(seen)('%j stays as it is', (text) => {
    expect(firstUnseen(text)).toBeUndefined()
    expect(harmless(text)).toBe(text)
  })
  it('is no line end and no tab, which a note may have', () => {
    expect(harmless('one\r\ntwo\rthree\n\tfour')).toBe('one\ntwo\nthree\n\tfour')
    expect(harmlessLine('one\r\ntwo\tthree')).toBe('one two three')
    expect(readTrain({ ...sound(), note: 'one\ntwo' }).ok).toBe(true)
  })

  const attack = 'red \u001b[31m\u009b2J\u202egnorw\ufffe\rover'
  function attacked(): TrainDocument {
    const train = sound()
    const [machine] = train.machines
    const [coupling] = train.couplings
    if (!machine || !coupling) throw new Error('the sound train lacks parts')
    machine.anchored = attack
    machine.held = true
    coupling.tolerance.basis = attack
    for (const set of coupling.found) set.why = attack
    return { ...train, note: attack, site: attack }
  }
  const only = (text: string) => text.replaceAll('\n', '')

  test('in a train that is read, in its text, in CSV and in a refusal: nothing of it is left', () => {
    const read = readTrain(attacked())
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    expect(firstUnseen(only(harmless(JSON.stringify(read.train))))).toBeUndefined()
    expect(JSON.stringify(read.train)).toContain('red \ufffd[31m')
    expect(firstUnseen(only(checkText(read.train, checkRead(read.train))))).toBeUndefined()
    expect(firstUnseen(csvText([[attack]]).replaceAll(/[\r\n]/g, ''))).toBeUndefined()
    const refused = readTrainText(JSON.stringify({ ...sound(), units: { length: attack } }))
    if (refused.ok) throw new Error('it was read')
    for (const { why } of refused.refused) expect(firstUnseen(why)).toBeUndefined()
    const named = readTrain({ ...sound(), [attack]: attack })
    if (named.ok) throw new Error('it was read')
    expect(firstUnseen(named.refused[0]?.why ?? '')).toBeUndefined()
  })
})

describe('texts of any length', () => {
  const long = 'x'.repeat(1_000_000)
  /** Cut anew after every piece, a million characters would take minutes. */
  test('are folded in one go', { timeout: 5000 }, () => {
    expect(fold(long, 80)).toHaveLength(12_500)
    expect(fold(long.replaceAll('xx', 'x '), 80)).toHaveLength(12_500)
    expect(table([{ head: 'a' }, { head: 'b' }], [[long.slice(0, 10_000), 'y']])[0]).toMatch(
      /^ {2}a +b$/,
    )
  })
  test('are refused with their length, and are told short', () => {
    const answer = readTrain({ ...sound(), name: long })
    expect(answer).toEqual({
      ok: false,
      refused: [{ at: 'name', why: 'the text has 1000000 characters: it needs at most 200' }],
    })
    const places = readTrain({ ...sound(), [long]: long })
    if (places.ok) throw new Error('it was read')
    expect(JSON.stringify(places.refused).length).toBeLessThan(500)
  })
})

describe('documents that no person wrote', () => {
  const nested = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels)
  test('nested ever deeper: read, or refused with the place, never thrown', () => {
    for (const levels of [90, 5_000, 1_000_000]) {
      const text = JSON.stringify(sound()).replace('{', `{"record":{"facts":${nested(levels)}},`)
      const answer = readTrainText(text)
      expect(answer.ok).toBe(levels === 90)
      if (!answer.ok)
        expect(answer.refused[0]?.why).toMatch(/line 1, column \d+: nested deeper than 100/)
    }
    let deep: unknown = 1
    for (let i = 0; i < 100_000; i++) deep = { deep }
    const answer = readTrain({ ...sound(), record: deep })
    expect(answer).toMatchObject({ ok: false, refused: [{ at: '' }] })
  })

  test('fields that stand twice, however they are written and wherever', () => {
    const answer = readTrainText('{"a": 1,\n "b": {"c": [{"d": 1, "\\u0064": 2}]}, "a": 3}')
    if (answer.ok) throw new Error('it was read')
    expect(answer.refused).toEqual([
      {
        at: 'b.c[0].d',
        why: 'field “d” stands twice in one group, at line 2, column 15 and at line 2, column 23: keep the one that is right',
      },
      {
        at: 'a',
        why: 'field “a” stands twice in one group, at line 1, column 2 and at line 2, column 39: keep the one that is right',
      },
    ])
  })

  test('a hundred refusals are told, then how many more', () => {
    const unknown = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`field${i}`, i]))
    const answer = readTrain({ ...sound(), ...unknown })
    if (answer.ok) throw new Error('it was read')
    const told = firstRefusals(answer.refused)
    expect(told).toHaveLength(101)
    expect(told.at(-1)).toEqual({ at: '', why: 'and 4900 more: repair these first' })
    expect(firstRefusals(answer.refused.slice(0, 100))).toHaveLength(100)
  })

  test('keys that objects have of themselves are fields like others', () => {
    for (const key of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      const answer = readTrainText(JSON.stringify(sound()).replace('{', `{"${key}":{},`))
      expect(answer.ok, key).toBe(false)
      const [first] = answer.ok ? [] : answer.refused
      expect(first?.at).toBe(key)
    }
  })
})
