import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { materialCatalogue, toleranceCatalogue } from '../../src/document/catalogues'
import { materialRows } from '../../src/document/tables/materialRows'
import { surfaceSpeed, toleranceRows } from '../../src/document/tables/toleranceRows'

const load = (file: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../shared/catalogues/${file}`, import.meta.url), 'utf8'))
const tolerances = toleranceCatalogue.parse(load('tolerances.json'))
const materials = materialCatalogue.parse(load('materials.json'))
const mils = { length: 'in', fine: 'mil', temperature: 'F' } as const
const metric = { length: 'mm', fine: 'mm', temperature: 'C' } as const

const row = (
  facts: Parameters<typeof toleranceRows>[1],
  id: string,
  units: typeof mils | typeof metric = mils,
) => toleranceRows(tolerances, facts, units).find((one) => one.id === id)

describe('published tolerances for a coupling', () => {
  // City of San Diego, CWP Guideline, section 11005 (November 2000): rpm, offset (mil), angle (mil/in), spacer (mil/in)
  const printed = [
    [600, 5, 1, 1.8],
    [1200, 2.5, 0.5, 0.9],
    [1800, 2, 0.3, 0.6],
    [3600, 1, 0.2, 0.3],
    [7200, 0.5, 0.1, 0.15],
  ] as const

  it.each(printed)(
    'at %d rpm: short %d mil and %d mil/in, spacer %d mil/in',
    (rpm, offset, angle, flex) => {
      expect(row({ planes: 1, speed: rpm }, 'short by speed')).toMatchObject({ offset, angle })
      expect(row({ planes: 2, speed: rpm }, 'spacer by speed')).toMatchObject({ flex })
      expect(row({ planes: 1, speed: rpm }, 'short by speed', metric)?.offset).toBeCloseTo(
        offset * 0.0254,
        12,
      )
    },
  )

  it('takes the stricter row between two speeds, and none above the last', () => {
    expect(row({ planes: 1, speed: 1490 }, 'short by speed')).toMatchObject({
      offset: 2,
      angle: 0.3,
    })
    expect(row({ planes: 1, speed: 7201 }, 'short by speed')).toBeUndefined()
    // the doubtful offset printed for 900 rpm is not offered: the next row is
    expect(row({ planes: 1, speed: 900 }, 'short by speed')).toMatchObject({ offset: 2.5 })
    expect(row({ planes: 2, speed: 900 }, 'spacer by speed')).toMatchObject({ flex: 1.2 })
  })

  it('offers 0.5 mrad at flex planes only where there are two (API RP 686, chapter 7, 5.4.6.2)', () => {
    const api = row({ planes: 2 }, 'flex 0')
    expect(api).toMatchObject({ flex: 0.5 })
    expect(api?.basis).toBe(
      'API RP 686, 2nd edition (2009), chapter 7, 5.4.6.2: 0.5 mrad at each flex plane (secondary)',
    )
    expect(row({ planes: 1 }, 'flex 0')).toBeUndefined()
  })

  it('halves the total of gear couplings: 6 in at 3600 rpm is 1 mil and 0.4 mil/in (Bloch & Geitner, table 6-1)', () => {
    expect(surfaceSpeed(6, 3600)).toBeCloseTo(5654.9, 1)
    const fast = row({ planes: 2, speed: 3600, shaftDiameter: 6 }, 'gear coupling by surface speed')
    expect(fast).toMatchObject({ offset: 1, angle: 0.4 })
    // on the boundary of two rows the stricter, upper one
    const rpm = (5000 * 12) / (Math.PI * 6)
    expect(
      row(
        { planes: 2, speed: rpm * (1 + 1e-12), shaftDiameter: 6 },
        'gear coupling by surface speed',
      ),
    ).toMatchObject({ offset: 1 })
    expect(
      row({ planes: 2, speed: rpm * 0.99, shaftDiameter: 6 }, 'gear coupling by surface speed'),
    ).toMatchObject({ offset: 2, angle: 0.5 })
  })

  it('takes half of a total reading and the lower end of a range', () => {
    const rows = toleranceRows(tolerances, { planes: 1, speed: 1500 }, metric)
    const offset = (start: string) => rows.find(({ name }) => name.startsWith(start))?.offset
    expect(offset('Mackay')).toBeCloseTo(4 * 0.0254, 12)
    expect(offset('BS 3170')).toBe(0.05)
    expect(offset('a chiller')).toBeCloseTo(0.0254, 12)
  })

  it('names source and certainty in every basis, and gives every row a limit above 0', () => {
    for (const planes of [1, 2] as const)
      for (const one of toleranceRows(
        tolerances,
        { planes, speed: 3000, shaftDiameter: 4 },
        mils,
      )) {
        expect(one.basis).toMatch(/: .+ \((read in a copy|secondary|from memory|computed|common)/)
        expect(Math.max(one.flex ?? 0, one.offset ?? 0, one.angle ?? 0)).toBeGreaterThan(0)
      }
  })
})

describe('published materials', () => {
  it('give the printed coefficient per degree of the document', () => {
    const cast = (units: typeof mils | typeof metric) =>
      materialRows(materials, units).find(({ name }) => name.startsWith('grey cast iron G1800'))
    // Callister, table B.6: 11.4e-6 per degree C, 6.3e-6 per degree F
    expect(cast(metric)).toMatchObject({ expansion: 11.4 })
    expect(cast(mils)).toMatchObject({ expansion: 6.3 })
    expect(cast(metric)?.material).toContain('Callister')
  })

  it('offer a dozen usual ones first, one row each, in the degrees of the sheet', () => {
    const usual = (units: typeof mils | typeof metric) =>
      materialRows(materials, units).flatMap((row) => (row.usual === undefined ? [] : [row.usual]))
    expect(usual(metric)).toHaveLength(12)
    const names = usual(metric).map((text) => text.replace(/(, \d+ to \d+ °C)?: [\d.]+$/, ''))
    expect(new Set(names).size).toBe(12)
    // 70 to 200 F is 21.1 to 93.3 C; the code prints 6.7 a degree F, 12.06 a degree C
    expect(usual(metric)).toContain('carbon steel, 21 to 93 °C: 12.06')
    expect(usual(mils)).toContain('carbon steel, 70 to 200 °F: 6.7')
    // 20 to 100 C is 68 to 212 F
    expect(usual(mils)).toContain('grey cast iron, 68 to 212 °F: 6.3')
    expect(usual(metric)).toContain('copper: 16.6')
  })

  it('give the middle of a range and say so', () => {
    const concrete = materialRows(materials, metric).find(({ name }) => name.startsWith('concrete'))
    expect(concrete?.expansion).toBe(12.15)
    expect(concrete?.material).toContain('middle of 9.8 to 14.5')
  })
})
