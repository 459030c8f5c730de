import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { newTrain } from '../../src/document/edits/newTrain'
import { airGapsTable } from '../../src/document/tables/airGapsTable'
import { couplingsTable } from '../../src/document/tables/couplingsTable'
import { machinesTable } from '../../src/document/tables/machinesTable'
import {
  exported,
  placeRows,
  readingOf,
  readRows,
  type PastedValues,
  type PasteTarget,
} from '../../src/document/tables/pasted'
import { pinsTable } from '../../src/document/tables/pinsTable'
import { pointsTable } from '../../src/document/tables/pointsTable'
import type { TrainDocument } from '../../src/document/schema'

const folder = new URL('../../examples/', import.meta.url)
const examples = readdirSync(folder).filter((file) => file.endsWith('.json'))
const load = (file: string) =>
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as TrainDocument

/** A table as it leaves the sheet, put into another document; every row has to be taken. */
function pasted(target: PasteTarget, from: TrainDocument, into: TrainDocument): TrainDocument {
  const units = { ...from.units, temperature: from.units.temperature ?? ('C' as const) }
  const cells = exported(target, from, units).map((row) =>
    row.map((cell) => (cell === true ? 'yes' : cell === false ? 'no' : String(cell ?? ''))),
  )
  const reading = readingOf(cells, target.columns)
  expect(reading.keys).toEqual(target.columns.map(({ key }) => key))
  const { document, placed } = placeRows(
    into,
    readRows(cells, reading, target.columns, units),
    target.put,
  )
  expect(placed.flatMap(({ why }) => (why === undefined ? [] : [why]))).toEqual([])
  return document
}

/** What the tables of machines and couplings hold of a train, with no more than a file needs to say. */
const machinesOf = ({ machines }: TrainDocument) =>
  machines.map((machine) => ({
    ...machine,
    // ids are the sheet's own, and what follows stands in other tables
    id: undefined,
    feet: undefined,
    restraints: undefined,
    growth: undefined,
    pins: undefined,
    stator: undefined,
    held: machine.held ?? false,
    free: { shim: true, side: true, axial: false, roll: false, ...machine.free },
  }))
const couplingsOf = ({ couplings }: TrainDocument) =>
  couplings.map(({ name, left, right, speed, tolerance, disengaged }) => ({
    ...{ name, disengaged },
    planes: [left.plane, right.plane],
    speed,
    tolerance: { ...tolerance, shape: tolerance.shape ?? 'box' },
  }))

describe('machines, couplings and nozzles of a train, saved as tables and pasted into an empty job', () => {
  it.each(examples)('%s gets its machines and couplings back', (file) => {
    const train = load(file)
    const bare = pasted(machinesTable, train, { ...newTrain(), units: train.units })
    expect(machinesOf(bare)).toEqual(machinesOf(train))
    expect(bare.couplings).toHaveLength(train.couplings.length)
    expect(couplingsOf(pasted(couplingsTable, train, { ...bare, states: train.states }))).toEqual(
      couplingsOf(train),
    )
  })

  it.each(examples)('%s gets its nozzles back', (file) => {
    const train = load(file)
    const without = <T extends object>(body: T): T => ({ ...body, restraints: undefined })
    const bare: TrainDocument = {
      ...train,
      machines: train.machines.map(without),
      ...(train.skids && { skids: train.skids.map(without) }),
    }
    expect(pasted(pointsTable, train, bare)).toEqual(train)
  })

  it.each(examples)('%s gets its dowels, key blocks and air gaps back', (file) => {
    const train = load(file)
    const unpinned = <T extends object>(body: T): T => ({ ...body, pins: undefined })
    const bare: TrainDocument = {
      ...train,
      machines: train.machines.map(({ stator, ...machine }) =>
        unpinned(
          stator === undefined
            ? machine
            : { ...machine, stator: { ...stator, airGaps: undefined } },
        ),
      ),
      ...(train.skids && { skids: train.skids.map(unpinned) }),
    }
    expect(pasted(airGapsTable, train, pasted(pinsTable, train, bare))).toEqual(train)
  })
})

const why = (target: PasteTarget, train: TrainDocument, values: PastedValues): string => {
  const placed = target.put(train, values)
  return 'why' in placed ? placed.why : `taken: ${placed.does}`
}

describe('a row', () => {
  const train = load('bolt-bound-gearbox.json')

  it('of a machine that is there changes it, and one axis takes the place of two', () => {
    const placed = machinesTable.put(train, { name: 'STEP-UP GEAR', 'axis.z': 910, held: false })
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.does).toBe('changes Step-up gear: axis above feet, fixed')
    expect(placed.document.machines[2]?.axis).toEqual({ z: 910 })
    expect(placed.document.machines[2]?.name).toBe('Step-up gear')
  })

  it('of a machine that is not there says where it is added', () => {
    expect(why(machinesTable, train, { name: 'Spare' })).toBe('taken: adds Spare at the right end')
  })

  it.each<[PastedValues, string]>([
    [{ role: 'pump' }, 'the machine is not named'],
    [{ name: 'Step-up gear' }, 'nothing but the name'],
    [{ name: 'A', role: 'kettle' }, '“kettle” is no role: write motor, turbine'],
    [{ name: 'A', mass: -1 }, 'mass: -1 is below 0'],
    [{ name: 'A', 'axis.z': 900, 'axis.left.z': 900 }, 'one axis is given and an axis at each end'],
  ])('of machines, %o: %s', (values, words) => {
    expect(why(machinesTable, train, values)).toContain(words)
  })

  it('of a coupling is found by the machine at its left, and takes a name', () => {
    const placed = couplingsTable.put(train, { after: 'step-up gear', name: 'fast end', speed: 9 })
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.document.couplings[2]).toMatchObject({ name: 'fast end', speed: 9 })
  })

  it.each<[PastedValues, string]>([
    [{ name: 'nobody', speed: 1 }, 'no coupling is called “nobody”: name the machine at its left'],
    [{ after: 'nobody', speed: 1 }, 'no machine is called “nobody”'],
    [{ after: 'High-stage compressor', speed: 1 }, 'no coupling stands right of High-stage'],
    [{ name: 'low stage to gear' }, 'nothing but names'],
    [{ name: '1', 'tolerance.shape': 'oval' }, 'neither box nor round'],
    [{ name: '1', 'tolerance.flex': -0.5 }, 'angle at each plane: -0.5 is below 0'],
  ])('of couplings, %o: %s', (values, words) => {
    expect(why(couplingsTable, train, values)).toContain(words)
  })

  it.each<[PastedValues, string]>([
    [{ on: 'nobody', x: 1, z: 1 }, 'no machine or skid is called “nobody”'],
    [
      { on: 'Step-up gear', point: 'drain', x: 1 },
      'has no point drain, and a new one needs its height',
    ],
    [{ on: 'Step-up gear', x: 1, z: 1, 'side to': 5 }, 'side: one end of the range is given'],
    [{ on: 'Step-up gear', x: 1, z: 1, 'side from': 2, 'side to': 5 }, 'side from: 2 is above 0'],
    [{ on: 'Step-up gear', x: 1, z: 1, 'rise from': -9, 'rise to': -5 }, 'rise to: -5 is below 0'],
    [{ on: 'High-stage compressor', point: 'outlet flange' }, 'nothing but names'],
  ])('of nozzles, %o: %s', (values, words) => {
    expect(why(pointsTable, train, values)).toContain(words)
  })

  it.each<[PastedValues, string]>([
    [{ on: 'nobody', pin: '1' }, 'no machine or skid is called “nobody”'],
    [{ on: 'Step-up gear', pin: '1', kind: 'rivet' }, 'kind: “rivet” is none: write dowel'],
    [{ on: 'Step-up gear', pin: '1', now: 'gone' }, 'now: “gone” is none: write in, out'],
    [{ on: 'Step-up gear', pin: '1', effort: -2 }, 'effort: -2 is below 0'],
    [
      { on: 'Step-up gear', pin: '7', kind: 'Key block' },
      'taken: adds key block 7 of Step-up gear',
    ],
    [{ on: 'Step-up gear' }, 'taken: adds dowel or key block 1 of Step-up gear'],
  ])('of dowels and key blocks, %o: %s', (values, words) => {
    expect(why(pinsTable, train, values)).toContain(words)
  })

  const gaps = { at: 0, top: 1500, three: 1500, bottom: 1400, nine: 1500 }
  it.each<[PastedValues, string]>([
    [{ on: 'Step-up gear', gap: 'left', at: 0, top: 1500 }, 'a new one needs its air gap at 3'],
    [{ on: 'Step-up gear', gap: 'left', ...gaps, nine: 0 }, 'air gap at 9: 0 is not above 0'],
    [{ on: 'Step-up gear', gap: 'left', ...gaps }, 'taken: adds air gap left of Step-up gear'],
  ])('of air gaps, %o: %s', (values, words) => {
    expect(why(airGapsTable, train, values)).toContain(words)
  })

  it('of a coupling names the states in which its clutch is open, and none that is not there', () => {
    const clutch = load('clutch.json')
    const [first, second] = clutch.states ?? []
    const said = `${first?.name ?? ''}; ${second?.id ?? ''}`
    const placed = couplingsTable.put(clutch, { name: '1', disengaged: said })
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.document.couplings[0]?.disengaged).toEqual([first?.id, second?.id])
    expect(why(couplingsTable, clutch, { name: '1', disengaged: 'Sunday' })).toContain(
      'disengaged in: no state is called “Sunday”',
    )
  })

  it('of a nozzle that is there keeps the end of a range it does not give', () => {
    const values = { on: 'High-stage compressor', point: 'Outlet flange', 'rise to': 400 }
    const placed = pointsTable.put(train, values)
    if ('why' in placed) throw new Error(placed.why)
    expect(placed.document.machines[3]?.restraints).toEqual([
      { id: 'outlet flange', x: 9900, z: 900, side: [-2000, 2000], rise: [-600, 400] },
    ])
  })
})
