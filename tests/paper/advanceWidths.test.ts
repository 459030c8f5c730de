import { Encodings, Font } from '@pdf-lib/standard-fonts'
import { describe, expect, test } from 'vitest'
import { advance } from '../../src/paper/advanceWidths'
import { folded, linesOf, textLength } from '../../src/paper/textSize'

// Reference: the published metrics of PDF's standard fonts, as @pdf-lib/standard-fonts carries them.
const published = (name: 'Helvetica' | 'Helvetica-Bold') => {
  const font = Font.load(name)
  return (letter: string) =>
    font.getWidthOfGlyph(Encodings.WinAnsi.encodeUnicodeCodePoint(letter.codePointAt(0) ?? 0).name)
}
const letters = [
  ...Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)),
  ...Array.from('µ°·×±–’'),
]

describe('widths of letters', () => {
  test('are the published ones, plain and bold', () => {
    const [plain, bold] = [published('Helvetica'), published('Helvetica-Bold')]
    // WinAnsi has no minus; the fonts have one, as wide as their plus
    for (const isBold of [false, true]) expect(advance('\u2212', isBold)).toBe(advance('+', isBold))
    for (const letter of letters) {
      expect(advance(letter, false) * 1000, `plain ${letter}`).toBeCloseTo(plain(letter) ?? 0, 9)
      expect(advance(letter, true) * 1000, `bold ${letter}`).toBeCloseTo(bold(letter) ?? 0, 9)
    }
  })

  test('add up, and an accent takes no room', () => {
    expect(advance('0.25 mm', false)).toBeCloseTo(3 * 0.556 + 2 * 0.278 + 2 * 0.833, 9)
    expect(advance('über', false)).toBe(advance('uber', false))
    expect(advance('軸', false)).toBe(1)
  })
})

describe('text is folded by them', () => {
  test('so that narrow letters take fewer lines than wide ones', () => {
    // 40 words of 4 letters of 8 pt on 60 mm: i is 222, w 722, space 278 thousandths
    const of = (word: string) => linesOf(Array(40).fill(word).join(' '), 8, 60)
    expect(of('iiii')).toBe(Math.ceil(40 / Math.floor((60 / (8 * (25.4 / 72)) + 0.278) / 1.166)))
    expect(of('wwww')).toBe(Math.ceil(40 / Math.floor((60 / (8 * (25.4 / 72)) + 0.278) / 3.166)))
  })

  test('no line wider than its room, no letter lost, long words broken', () => {
    const text = 'gear to compressor 0.123456789012345678901234567890 W'
    const lines = folded(text, 10, 60)
    for (const line of lines) expect(advance(line, true) * 10).toBeLessThanOrEqual(60)
    expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''))
    expect(folded('', 10, 60)).toEqual([''])
    expect(textLength('mm', 10)).toBeCloseTo(2 * 0.833 * 10 * (25.4 / 72), 9)
  })
})
