import { describe, expect, test } from 'vitest'
import type { Block, Page } from '../../src/paper/page'
import { paginate } from '../../src/paper/paginate'

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

describe('pages are cut', () => {
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
