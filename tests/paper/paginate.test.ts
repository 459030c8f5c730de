import { describe, expect, test } from 'vitest'
import type { Block, Page } from '../../src/paper/page'
import { paginate } from '../../src/paper/paginate'
import { isWhole } from '../counts'

const heading = (text: string): Block => ({ kind: 'heading', text })
const drawing: Block = {
  kind: 'figures',
  leads: true,
  figures: [{ width: 40, height: 40, name: 'a dial', marks: [] }],
}
const table = (rows: number): Block => ({
  kind: 'table',
  columns: [{ head: "o'clock", width: 1 }],
  rows: Array.from({ length: rows }, (_, i) => [`row ${i + 1}`]),
})
const cut = (...blocks: Block[]): Page[] =>
  paginate([{ section: 'readings', title: 'Readings', blocks }], 'a4')
const shape = ({ blocks }: Page): string[] =>
  blocks.map((block) => {
    if (block.kind === 'heading') return `${block.text}${block.aside ? `, ${block.aside}` : ''}`
    return block.kind === 'table' ? `${block.rows.length} rows` : block.kind
  })

const step = (id: string, lines: number): Block => ({
  kind: 'step',
  step: {
    ...{ id, number: 1, words: 'Shim the motor.', breaks: [], before: [], cautions: ['Isolate.'] },
    lifts: Array.from({ length: lines }, () => 'Right end up to +500 um. '.repeat(5)),
    dials: [],
    expected: Array.from({ length: 2 * lines }, () => 'At 3 +10 (+5 to +15). '.repeat(4)),
    stop: 'Read and compare.',
    sign: ['done', 'time', 'by'],
  },
})
const feet: Block = { kind: 'feet', columns: 2, cards: [] }
const signs: Block = { kind: 'blanks', columns: 2, labels: ['Checked by', 'date'] }

describe('pages are cut', () => {
  test('shorter under a title that folds, or that has more than two lines beside it', () => {
    const rows = table(60)
    const first = (title: string, aside?: string) => {
      const [page] = paginate([{ section: 'readings', title, blocks: [rows] }], 'a4', aside)
      return Number.parseInt(page ? (shape(page)[0] ?? '') : '', 10)
    }
    const most = first('Readings')
    expect(first('Readings', 'a train of a short name')).toBe(most)
    expect(first('High-stage compressor with its oil console: step 7, '.repeat(3))).toBeLessThan(
      most,
    )
    expect(first('Readings', 'a train of a name '.repeat(8))).toBeLessThan(most)
  })

  test.runIf(isWhole)(
    'so that a step with what must be seen after it on the next page says so, and is signed there',
    () => {
      const steps = Array.from({ length: 12 }, (_, k) =>
        cut(...[1, 2, 3].map((n) => step(`${k} ${n}`, 2 + k))).flatMap(({ blocks }, p) =>
          blocks.flatMap((block) => (block.kind === 'step' ? [{ ...block.step, p }] : [])),
        ),
      ).flat()
      const parted = steps.filter(({ over }) => over !== undefined)
      expect(parted.length).toBeGreaterThan(0)
      for (const act of parted) {
        const rest = steps.find(({ id, over }) => id === act.id && over === undefined)
        expect(rest?.p).toBe(act.p + 1)
        expect(act).toMatchObject({ cautions: ['Isolate.'], expected: [], sign: [] })
        expect(act.stop).toBeUndefined()
        expect(rest).toMatchObject({ lifts: [], stop: 'Read and compare.' })
        expect(rest?.sign).toHaveLength(3)
      }
    },
  )

  test('never between what is signed and the lines to sign on', () => {
    for (let rows = 20; rows <= 60; rows++) {
      const last = cut(heading('Left'), table(rows), signs).map(shape).at(-1) ?? []
      expect(last.at(-1)).toBe('blanks')
      expect(last.at(-2), `${rows} rows`).toMatch(/rows$/)
    }
  })

  test('with the map once more over feet that begin a page', () => {
    for (let rows = 4; rows <= 36; rows++) {
      const map: Block = { ...drawing, leads: false }
      const pages = cut(table(rows), feet, map, feet, step('a', 1)).map(shape)
      for (const page of pages)
        page.forEach((kind, i) => {
          if (kind === 'feet') expect([page[i - 1], page[i + 1]]).toContain('figures')
        })
    }
  })

  test('never between a heading, its drawing and the table under it', () => {
    // what is left under the first table takes heading and drawing, and no row
    for (let rows = 20; rows <= 36; rows++) {
      const pages = cut(heading('Set 1'), table(rows), heading('Set 2'), drawing, table(5))
      const [second] = pages.filter((page) => shape(page).includes('figures')).map(shape)
      const at = second?.indexOf('figures') ?? -1
      expect(second?.[at - 1]).toBe('Set 2')
      expect(second?.[at + 1], `${rows} rows before`).toMatch(/^\d rows$/)
    }
  })

  test('so that what goes on says what it is, and no row stands alone', () => {
    const seen = new Set<number>()
    for (let rows = 2; rows <= 90; rows++) {
      const pages = cut(heading('Growth'), table(rows)).map(shape)
      pages.forEach((page, i) => {
        expect(page[0]).toBe(i === 0 ? 'Growth' : 'Growth, continued')
        const count = Number.parseInt(page[1] ?? '', 10)
        expect(count, `${rows} rows in all`).toBeGreaterThanOrEqual(2)
      })
      expect(pages.reduce((sum, page) => sum + Number.parseInt(page[1] ?? '', 10), 0)).toBe(rows)
      seen.add(pages.length)
    }
    expect([...seen]).toEqual([1, 2, 3])
  })
})
