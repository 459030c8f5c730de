import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { newTrain } from '../../src/document/edits/newTrain'
import { feetTable } from '../../src/document/tables/feetTable'
import type { PasteTarget } from '../../src/document/tables/pasted'
import {
  allExported,
  blocksOf,
  placeTables,
  retargeted,
  pastedTablesOf,
} from '../../src/document/tables/pastedTables'
import { statesTable } from '../../src/document/tables/statesTable'
import { growthTarget } from '../../src/document/tables/growthTable'
import type { TrainDocument } from '../../src/document/schema'

const folder = new URL('../../examples/', import.meta.url)
const load = (file: string) =>
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as TrainDocument
const unitsOf = ({ units }: TrainDocument) => ({
  ...units,
  temperature: units.temperature ?? ('C' as const),
})
/** Cells with no quotes in them, which is all that is pasted here. */
const cellsOf = (text: string) =>
  text.split(/\r?\n/).map((line) => line.split(text.includes('\t') ? '\t' : ','))
const tables = (text: string, own?: PasteTarget) =>
  pastedTablesOf(
    blocksOf(text).map(({ line, text: block }) => ({ line, cells: cellsOf(block) })),
    own,
  )
const exportedText = (train: TrainDocument) =>
  allExported(train, unitsOf(train))
    .map((row) => row.map((cell) => (typeof cell === 'boolean' ? (cell ? 'yes' : 'no') : cell)))
    .map((row) => row.join('\t'))
    .join('\n')
const whats = (text: string, own?: PasteTarget) =>
  tables(text, own).map(({ target, line }) => [line, target?.what])
const pasted = (text: string, into: TrainDocument) => {
  const { document, placed } = placeTables(into, tables(text), unitsOf(into))
  return { document, whys: placed.flat().flatMap(({ why }) => (why === undefined ? [] : [why])) }
}

/** What tables hold of a train, with the ids that the sheet makes and what a file takes anyway left out. */
function held(train: TrainDocument): unknown {
  const state = new Map((train.states ?? []).map(({ id, name }) => [id, name]))
  return {
    machines: train.machines.map(({ name, role, axis, held: fixed, effort, speed, ...of }) => ({
      ...{ name, role, axis, speed, effort, held: fixed ?? false },
      feet: of.feet,
      restraints: of.restraints ?? [],
      growth: Object.entries(of.growth ?? {})
        .filter(([, points]) => points.length > 0)
        .map(([id, points]) => [state.get(id), points] as const)
        .sort(([a = ''], [b = '']) => (a < b ? -1 : 1)),
    })),
    skids: (train.skids ?? []).map(({ name, carries, held: fixed, feet, restraints, free }) => ({
      ...{ name, feet, free, restraints: restraints ?? [], held: fixed ?? false },
      carries: carries.map((id) => train.machines.find((machine) => machine.id === id)?.name),
    })),
    couplings: train.couplings.map(({ name, left, right, speed, tolerance, found, ...of }) => ({
      ...{ name, speed, planes: [left.plane, right.plane] },
      ...{ axial: of.axial, strain: of.strain, setting: of.setting },
      aim: Object.entries(of.aim ?? {}).map(([id, aim]) => [state.get(id), aim]),
      tolerance: { ...tolerance, shape: tolerance.shape ?? 'box' },
      found: found.map((set) =>
        set.kind === 'line'
          ? set
          : { ...set, readings: [...set.readings].sort(([a], [b]) => (a % 12) - (b % 12)) },
      ),
    })),
    states: (train.states ?? []).map(({ name, tolerance, load: percent, temperature }) => ({
      ...{ name, tolerance, percent, temperature },
    })),
  }
}

describe('all tables of a train, saved as one text and pasted into an empty job', () => {
  const files = readdirSync(folder).filter((file) => file.endsWith('.json'))
  it.each(files)('%s comes back', (file) => {
    const train = load(file)
    const text = exportedText(train)
    const { document, whys } = pasted(text, { ...newTrain(), units: train.units })
    expect(whys).toEqual([])
    expect(held(document)).toEqual(held(train))
  })

  it('in an order that has machines last', () => {
    const text = 'machine,foot,x\nPump,1,100\n\nmachine,role,axis z\nPump,pump,300'
    const { document, whys } = pasted(text, newTrain())
    expect(whys).toEqual([])
    expect(document.machines[0]).toMatchObject({ role: 'pump', feet: [{ id: '1', x: 100 }] })
  })
})

describe('a pasted text', () => {
  const feet = 'machine,foot,x\nPump,1,100'
  const states = 'state\ttolerances times\nhot\t1'

  it('is parted at blank lines, and at rows of empty cells', () => {
    expect(blocksOf('a\nb\n \nc\r\n,,;\t\n\nd').map(({ line }) => line)).toEqual([1, 4, 7])
  })

  it.each<[string, string, (readonly [number, string | undefined])[]]>([
    [
      'by headings',
      `${feet}\n\n${states}`,
      [
        [1, 'feet'],
        [4, 'states'],
      ],
    ],
    [
      'readings for readings, and after a stop only where the minutes are told',
      'coupling,set,kind,shaft,x,12,3,6,9\n1,1,rim,left,100,0,1,2,1\n\ncoupling,after the stop,set,kind,12\n1,5,1,rim,0',
      [
        [1, 'readings'],
        [4, 'readings after a stop'],
      ],
    ],
    [
      'a line for readings, and aims and cold settings by what only they have',
      'coupling,kind,x,offset up\n1,line,100,1\n\ncoupling,state,offset up\n1,hot,1\n\ncoupling,offset up,from\n1,1,page 3',
      [
        [1, 'readings'],
        [4, 'aims'],
        [7, 'cold settings'],
      ],
    ],
    ['by a line above that names it', 'feet\nmachine,x\nPump,100', [[2, 'feet']]],
    [
      'as more of the one above',
      `${feet}\n\nMotor,1,900`,
      [
        [1, 'feet'],
        [4, 'feet'],
      ],
    ],
    [
      'a name among figures is no heading',
      `${feet}\n\nhot machine,1,900`,
      [
        [1, 'feet'],
        [4, 'feet'],
      ],
    ],
    [
      'as nothing where words stand for figures',
      `${states}\n\nfoo\tbar\n1\t2`,
      [
        [1, 'states'],
        [4, undefined],
      ],
    ],
    [
      'as nothing where it is narrower',
      `${feet}\n\n1,2`,
      [
        [1, 'feet'],
        [4, undefined],
      ],
    ],
    ['as nothing where headings fit two', 'machine,x\nPump,100', [[1, undefined]]],
    ['as nothing without headings', 'Pump,100', [[1, undefined]]],
    [
      'as nothing below a line of text',
      'figures of Monday\n\nPump,100,3',
      [
        [1, undefined],
        [3, undefined],
      ],
    ],
  ])('is told %s', (_, text, expected) => {
    expect(whats(text)).toEqual(expected)
  })

  it('is the table in whose place it was pasted where no other fits better', () => {
    expect(whats('machine,x\nPump,100', feetTable)).toEqual([[1, 'feet']])
    expect(whats('Pump,100', feetTable)).toEqual([[1, 'feet']])
    expect(whats(states, feetTable)).toEqual([[1, 'states']])
  })

  it('can be said to be another table', () => {
    const [table] = tables('Pump,100')
    if (!table) throw new Error('no table')
    expect(retargeted(table, feetTable).match.keys).toEqual(['machine', 'foot'])
  })
})

const why = (
  target: PasteTarget,
  train: TrainDocument,
  values: Record<string, string | number>,
) => {
  const placed = target.put(train, values)
  return 'why' in placed ? placed.why : `taken: ${placed.does}`
}

describe('states as a table', () => {
  const train = load('bolt-bound-gearbox.json')

  it('take load, temperature and the states between which growth lies, and give them back', () => {
    const text = [
      'state,tolerances times,load [%],temperature [F],growth between,and,by',
      'idle,1,20,68,,,',
      'full,1,100 %,212,,,',
      'half,2,60,,idle,full,Load',
    ].join('\n')
    const { document, whys } = pasted(text, newTrain())
    expect(whys).toEqual([])
    expect(document.states).toEqual([
      { id: 'idle', name: 'idle', tolerance: 1, load: 20, temperature: 20 },
      { id: 'full', name: 'full', tolerance: 1, load: 100, temperature: 100 },
      {
        ...{ id: 'half', name: 'half', tolerance: 2, load: 60 },
        between: { from: 'idle', to: 'full', by: 'load' },
      },
    ])
    const again = pasted(exportedText(document), newTrain())
    expect(again.document.states).toEqual(document.states)
  })

  it.each<[Record<string, string | number>, string]>([
    [{ load: 50 }, 'the state is not named'],
    [{ name: 'turndown' }, 'nothing but the name'],
    [{ name: 'a', tolerance: 0 }, 'tolerances times: 0 is not above 0'],
    [{ name: 'a', load: -1 }, 'load: -1 is below 0'],
    [
      { name: 'a', from: 'turndown', to: 'nowhere', by: 'load' },
      'no state is called “nowhere”: give its row above',
    ],
    [{ name: 'a', from: 'turndown', to: 'a', by: 'load' }, 'a is the state itself'],
    [{ name: 'a', from: 'turndown' }, 'needs both states and by what: load or temperature'],
    [
      { name: 'a', from: 'turndown', to: 'hot summer', by: 'speed' },
      'by “speed” is neither load nor temperature',
    ],
    [{ name: 'Turndown', load: 50 }, 'taken: changes turndown: load'],
    [{ name: 'standby' }, 'taken: adds standby'],
    [{ name: '2', load: 50 }, 'taken: adds 2: load'],
  ])('a row of %o: %s', (values, words) => {
    expect(why(statesTable, train, values)).toContain(words)
  })
})

describe('growth as intervals', () => {
  const train = load('bolt-bound-gearbox.json')
  const row = { machine: 'Steam turbine', state: 'hot summer' }

  it('is pasted, changed at one end, and given back', () => {
    const added = growthTarget.put(train, { ...row, at: 1000, 'rise low': 80, 'rise high': 120 })
    if ('why' in added) throw new Error(added.why)
    const changed = growthTarget.put(added.document, { ...row, point: 3, 'rise high': 140 })
    if ('why' in changed) throw new Error(changed.why)
    expect(changed.document.machines[0]?.growth?.['hot-summer']?.[2]).toEqual({
      at: 1000,
      range: { rise: [80, 140] },
    })
    const rows = growthTarget.rows(changed.document)
    expect(rows[2]).toMatchObject({ 'rise low': 80, 'rise high': 140, rise: undefined })
  })

  it.each<[Record<string, string | number>, string]>([
    [{ 'rise low': 80 }, 'rise: one end of the range is given'],
    [{ 'rise low': 80, 'rise high': 70 }, 'rise: 80 to 70 is the wrong way round'],
    [{ 'side low': 1, 'side high': 2, side: 1 }, 'side: 1 to 2 is given beside a value'],
    [{ 'side low': 1, 'side high': 2, u: 1 }, 'side: 1 to 2 is given beside u'],
    [{ 'rise low': 1, 'rise high': 2, height: 900 }, 'rise: 1 to 2 is given beside temperatures'],
    [{ point: 1, 'rise low': 1, 'rise high': 2 }, 'rise: 1 to 2 is given beside a value'],
  ])('a row of %o: %s', (values, words) => {
    expect(why(growthTarget, train, { ...row, ...values })).toContain(words)
  })
})
