import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { aimsTable } from '../../src/document/tables/aimsTable'
import { gapsTable } from '../../src/document/tables/gapsTable'
import {
  exported,
  placeRows,
  readingOf,
  readRows,
  type PastedValues,
  type PasteTarget,
} from '../../src/document/tables/pasted'
import { readingsTarget } from '../../src/document/tables/readingsTable'
import { settingsTable } from '../../src/document/tables/settingsTable'
import { skidsTable } from '../../src/document/tables/skidsTable'
import { strainTable } from '../../src/document/tables/strainTable'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'

const load = (file: string) =>
  JSON.parse(
    readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8'),
  ) as TrainDocument

const five = load('five-in-a-line.json')
/** Every figure of a coupling that no example has: aims, a gap, pipe strain, a cold setting, unsure brackets. */
const full: TrainDocument = {
  ...five,
  couplings: five.couplings.map((coupling, c) => {
    if (c === 0)
      return {
        ...coupling,
        aim: { 'full-load': { offset: { z: -0.05 }, slope: { y: 0.1, z: -0.2 } } },
        axial: { found: 5.2, want: 5, tolerance: 0.5, u: 0.05 },
        strain: {
          limit: 0.06,
          basis: 'site standard 12',
          flanges: [
            { name: 'inlet', z: 0.02, y: -0.01, when: 'Monday', by: 'A. B.' },
            { name: 'outlet', z: 0 },
          ],
        },
        found: coupling.found.map((set) =>
          set.kind === 'rim' ? { ...set, bracket: 'long bar', uSag: 0.004, uAt: 2 } : set,
        ),
      }
    if (c !== 3) return coupling
    return {
      ...coupling,
      setting: {
        offset: { y: 0.1, z: 0.2 },
        slope: { z: 0.3 },
        from: 'drawing 7',
        use: true,
        why: 'asked for',
      },
      found: coupling.found.map((set) => ({ ...set, use: false })),
    }
  }),
}
const skid = load('skid-as-one.json')

/** A table as it leaves the sheet, put into another document; every row has to be taken. */
function pasted(target: PasteTarget, from: TrainDocument, into: TrainDocument): TrainDocument {
  const units = { ...from.units, temperature: from.units.temperature ?? ('C' as const) }
  const cells = exported(target, from, units).map((row) =>
    row.map((cell) => (cell === true ? 'yes' : cell === false ? 'no' : String(cell ?? ''))),
  )
  const match = readingOf(cells, target.columns)
  expect(match.keys).toEqual(target.columns.map(({ key }) => key))
  const rows = readRows(cells, match, target.columns, units)
  expect(rows.length).toBeGreaterThan(0)
  const { document, placed } = placeRows(into, rows, target.put)
  expect(placed.flatMap(({ why }) => (why === undefined ? [] : [why]))).toEqual([])
  return document
}
const without = (fields: readonly string[], train: TrainDocument): TrainDocument => ({
  ...train,
  couplings: train.couplings.map(
    (coupling) =>
      Object.fromEntries(
        Object.entries(coupling).filter(([key]) => !fields.includes(key)),
      ) as typeof coupling,
  ),
})

describe('what is wanted and found of couplings, saved as a table and pasted again', () => {
  it('has a train to be tried on that a plan takes', () => {
    const used = {
      ...full,
      couplings: full.couplings.map((one, c) => ({
        ...one,
        found: five.couplings[c]?.found ?? [],
      })),
    }
    expect(readTrain(used)).toMatchObject({ ok: true })
  })

  it.each<[PasteTarget, string]>([
    [aimsTable, 'aim'],
    [gapsTable, 'axial'],
    [strainTable, 'strain'],
    [settingsTable, 'setting'],
  ])('$what come back', (target, field) => {
    expect(pasted(target, full, without([field], full))).toEqual(full)
  })

  it('readings come back with their brackets, how unsure they are, and what is not used', () => {
    const bare = { ...full, couplings: full.couplings.map((one) => ({ ...one, found: [] })) }
    const back = pasted(readingsTarget, full, bare)
    const unsure = ({ couplings }: TrainDocument) =>
      couplings.map(({ found }) => found.map((set) => ({ ...set, readings: undefined })))
    expect(unsure(back)).toEqual(unsure(full))
  })

  it('a set that is used again loses the mark that it is not', () => {
    const placed = readingsTarget.put(full, { coupling: '4', set: 1, use: true })
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.document.couplings[3]?.found[0]).not.toHaveProperty('use')
  })

  it('skids come back with what they carry', () => {
    const { skids, ...bare } = skid
    const back = pasted(skidsTable, skid, bare)
    expect(back.skids?.map(({ name, carries, held }) => [name, carries, held ?? false])).toEqual(
      skids?.map(({ name, carries, held }) => [name, carries, held ?? false]),
    )
  })
})

const why = (target: PasteTarget, train: TrainDocument, values: PastedValues): string => {
  const placed = target.put(train, values)
  return 'why' in placed ? placed.why : `taken: ${placed.does}`
}

describe('a row that cannot be taken says where and why', () => {
  it.each<[PasteTarget, PastedValues, string]>([
    [aimsTable, { oz: 1 }, 'the coupling is not named'],
    [aimsTable, { coupling: 'x', state: 'full load', oz: 1 }, 'no coupling is called “x”'],
    [aimsTable, { coupling: '1', oz: 1 }, 'the state is not named'],
    [aimsTable, { coupling: '1', state: 'storm', oz: 1 }, 'no state is called “storm”'],
    [aimsTable, { coupling: '1', state: 'full load' }, 'nothing but names'],
    [aimsTable, { coupling: '4', state: 'full load', oz: 1 }, 'one or the other, never both'],
    [settingsTable, { coupling: '2', use: true, oz: 1 }, 'no reason is given'],
    [settingsTable, { coupling: '1', use: true, oz: 1, why: 'a' }, 'where an aim is given too'],
    [gapsTable, { coupling: '2', found: 5 }, 'has no gap wanted yet'],
    [gapsTable, { coupling: '1', tolerance: 0 }, 'either way up to: 0 is not above 0'],
    [gapsTable, { coupling: '1', u: -1 }, 'gap unsure by: -1 is below 0'],
    [strainTable, { coupling: '1', z: 0.01 }, 'the flange is not named'],
    [strainTable, { coupling: '1', flange: 'inlet' }, 'nothing but names'],
    [strainTable, { coupling: '1', flange: 'inlet', limit: 0 }, 'most allowed: 0 is not above 0'],
    [skidsTable, { carries: 'Motor' }, 'the skid is not named'],
    [skidsTable, { skid: 'base', carries: 'Motor; Kettle' }, 'no machine is called “Kettle”'],
    [skidsTable, { skid: 'base', mass: -1 }, 'mass: -1 is below 0'],
  ])('$0.what %#', (target, values, words) => {
    expect(why(target, full, values)).toContain(words)
  })

  it('a flange that is there is changed, another one added', () => {
    const of = (flange: string) => why(strainTable, full, { coupling: '1', flange, z: 0.01 })
    expect(of('INLET')).toMatch(/^taken: changes flange/)
    expect(of('drain')).toMatch(/^taken: adds flange drain at motor to fluid drive: moved up$/)
  })

  it('machines are set on a skid and off another, parted by commas too', () => {
    const placed = skidsTable.put(full, { skid: 'base', carries: 'Motor, Fluid drive' })
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.document.skids).toMatchObject([
      { name: 'base', carries: ['motor', 'fluid-drive'] },
    ])
    const again = skidsTable.put(placed.document, { skid: 'other', carries: 'Fluid drive' })
    if ('why' in again) throw new Error(again.why)
    expect(again.document.skids?.map(({ carries }) => carries)).toEqual([
      ['motor'],
      ['fluid-drive'],
    ])
  })
})
