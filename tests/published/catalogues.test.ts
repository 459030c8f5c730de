import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

type Json = Record<string, unknown>

const folder = new URL('../../shared/catalogues/', import.meta.url)
const load = (file: string) => JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Json

/** The rows of every list in a file. */
function rowsOf(value: unknown): Json[] {
  if (typeof value !== 'object' || value === null) return []
  if (Array.isArray(value))
    return value.filter((row): row is Json => typeof row === 'object' && row !== null)
  return Object.values(value).flatMap(rowsOf)
}

const files = readdirSync(folder).filter((file) => file.endsWith('.json'))

describe('catalogues', () => {
  it('are the four', () => {
    expect(files.sort()).toEqual(['limits.json', 'materials.json', 'shims.json', 'tolerances.json'])
  })

  it.each(files)('%s names a source and a certainty on every row', (file) => {
    const { certainties, notOffered, ...rest } = load(file)
    const rows = rowsOf(rest)
    expect(rows.length).toBeGreaterThan(10)
    for (const row of rows) {
      expect(row['source'], JSON.stringify(row)).toMatch(/\w{3}/)
      expect(Object.keys(certainties as Json), JSON.stringify(row)).toContain(row['certainty'])
    }
    for (const row of (notOffered ?? []) as Json[]) expect(row['why']).toMatch(/\w{3}/)
  })

  it('offers no number of a standard that was not obtained', () => {
    const { notOffered, ...rest } = load('tolerances.json')
    expect(JSON.stringify(notOffered)).toContain('S2.75')
    expect(JSON.stringify(rest)).not.toContain('S2.75')
  })

  it('has coefficients that agree in both units: 1.8 per degree C to 1 per degree F', () => {
    const rows = load('materials.json')['rows'] as {
      perC: number | number[]
      perF: number | number[]
    }[]
    expect(rows.length).toBeGreaterThan(30)
    const list = (value: number | number[]) => [value].flat()
    for (const { perC, perF } of rows) {
      expect(list(perC).length).toBe(list(perF).length)
      // both columns are rounded to 0.1
      for (const [i, c] of list(perC).entries())
        expect(Math.abs(c - 1.8 * (list(perF)[i] ?? 0))).toBeLessThan(0.15)
    }
  })

  it('tightens with speed, and leaves out the one printed offset that does not', () => {
    const { bySpeed, gearCouplingsBySurfaceSpeed } = load('tolerances.json') as Record<
      string,
      { rows: Record<string, number | string>[] }
    >
    const falling = (rows: Record<string, number | string>[] | undefined, key: string) => {
      const values = (rows ?? []).flatMap((row) => (key in row ? [Number(row[key])] : []))
      expect(values.length).toBeGreaterThan(4)
      expect([...values].sort((a, b) => b - a)).toEqual(values)
    }
    for (const key of ['shortOffset', 'shortAngle', 'spacerOffsetPerLength'])
      falling(bySpeed?.rows, key)
    const doubtful = bySpeed?.rows.filter((row) => !('shortOffset' in row))
    expect(doubtful?.map(({ rpm }) => rpm)).toEqual([900])
    // slowest last: V22, 6 in at 3600 rpm, 5655 ft/min, is in the first row
    falling(gearCouplingsBySurfaceSpeed?.rows, 'from')
    const speed = (Math.PI * 6 * 3600) / 12
    expect(speed).toBeCloseTo(5654.9, 1)
    const row = gearCouplingsBySurfaceSpeed?.rows.find(({ from }) => speed >= Number(from))
    expect([row?.['rimReading'], row?.['facePerRadius']]).toEqual([0.002, 0.0004])
  })

  it('makes every whole mil to 150 of three shims and to 200 of four', () => {
    const sets = load('shims.json')['sets'] as { name: string; stock: number[] }[]
    const stock = sets.find(({ name }) => name === 'inch')?.stock ?? []
    /** Fewest pieces for each whole mil up to the end. */
    const fewest = [0]
    for (let mil = 1; mil <= 200; mil += 1)
      fewest[mil] = 1 + Math.min(...stock.map((piece) => fewest[mil - piece] ?? Infinity))
    expect(Math.max(...fewest.slice(1, 151))).toBe(3)
    expect(Math.max(...fewest)).toBe(4)
    expect(fewest.indexOf(4)).toBe(156)
  })
})
