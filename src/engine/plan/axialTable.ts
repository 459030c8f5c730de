import { tol } from '../../mechanics/tolerances'
import { fineDigits, gapDigits, toldDigits, toldNought } from '../../language/amounts'
import { inSentence } from '../../language/names'
import { notEngaged } from '../../language/engagedWords'
import { signed } from '../../language/signed'
import { tidy } from '../../language/tidy'
import { fineSign, type Micrometres, type Millimetres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { AxialAnswer, AxialRoom, AxialStateAnswer } from './axialAnswer'

/** What people read of the train along its shafts: a column a machine and a coupling, from left to right. */
export interface AxialTable {
  readonly members: readonly { readonly name: string; readonly kind: 'machine' | 'coupling' }[]
  readonly rows: readonly AxialTableRow[]
}

interface AxialTableRow {
  /** No two are alike, as heads may be where two states have one name. */
  readonly key: string
  readonly head: string
  /** Rows of one state stand together; what this one is called among them, empty for the first. */
  readonly group: string
  readonly among: string
  /** By member; empty where it says nothing of one. */
  readonly cells: readonly string[]
  /** Members that are over what is allowed there. */
  readonly over: readonly boolean[]
}

interface Cell {
  readonly key: string
  readonly said: string
  readonly over?: boolean
}

/** The table of an answer; rows that say nothing of anybody are left out. */
export function axialTable(train: Train, axial: AxialAnswer): AxialTable {
  const columns = train.machines.flatMap((machine, m) => {
    const coupling = train.couplings.find(({ left }) => left === m)
    return [
      { name: machine.name, kind: 'machine' as const, cells: machineCells(train, axial, m) },
      ...(coupling
        ? [
            {
              name: coupling.name,
              kind: 'coupling' as const,
              cells: couplingCells(train, axial, coupling.id),
            },
          ]
        : []),
    ]
  })
  const rows = headsOf(train).map(({ key, group, among }): AxialTableRow => {
    const at = columns.map(({ cells }) => cells.find((cell) => cell.key === key))
    return {
      ...{ key, group, among },
      head: among === '' ? group : `${group}: ${among}`,
      cells: at.map((cell) => cell?.said ?? ''),
      over: at.map((cell) => cell?.over === true),
    }
  })
  return {
    members: columns.map(({ name, kind }) => ({ name, kind })),
    rows: rows.filter(({ cells }) => cells.some((cell) => cell !== '')),
  }
}

const kinds = [
  ['gap', ''],
  ['left', 'left of the tolerance'],
  ['stretch', 'stretch'],
  ['rotor', 'rotor'],
] as const

const headsOf = ({ states }: Train): Pick<AxialTableRow, 'key' | 'group' | 'among'>[] => [
  ...[
    ['moves', 'moves endwise'],
    ['shaft', 'its shaft, with pitch and yaw'],
    ['found', 'gap found, cold'],
    ['planned', 'gap planned, cold'],
    ['want', 'gap wanted'],
  ].map(([key = '', group = '']) => ({ key, group, among: '' })),
  ...states.flatMap(({ id, name }) =>
    kinds.map(([kind, among]) => ({ key: `${id} ${kind}`, group: name, among })),
  ),
]

/** "0.35 mm to the right, toward the gearbox", "stays". */
function endwiseSaid(train: Train, m: number, by: Micrometres): string {
  if (toldNought(by, train.units)) return 'stays'
  const neighbour = train.machines[by > 0 ? m + 1 : m - 1]
  const toward = neighbour ? `, toward ${inSentence(neighbour.name)}` : ''
  return `${toldDigits(Math.abs(by), train.units)} ${fineSign[train.units.fine]} ${way(by)}${toward}`
}

const way = (by: number): string => `to the ${by > 0 ? 'right' : 'left'}`

function machineCells(train: Train, { machines }: AxialAnswer, m: number): Cell[] {
  const own = machines[m]
  if (!own) return []
  const fine = (by: Micrometres) =>
    `${toldDigits(Math.abs(by), train.units)} ${fineSign[train.units.fine]} ${way(by)}`
  const grown = own.grows.flatMap(({ state, left, right }) => {
    const ends = [...new Set([left, right].flatMap((by) => (by === undefined ? [] : [tidy(by)])))]
    const shown = ends.filter((by) => !toldNought(by, train.units))
    if (shown.length === 0) return []
    const same = new Set(ends.map((by) => fineDigits(by, train.units))).size === 1
    const said = same
      ? fine(shown[0] ?? 0)
      : `${fine(left ?? 0)} at its left, ${fine(right ?? 0)} at its right`
    return [{ key: `${state} gap`, said: `grows ${said}` }]
  })
  if (!own.moves) return grown
  const { feet, left, right } = own.moves
  const shafts = [left, right].map((by) => toldDigits(by, train.units))
  const carried = new Set([...shafts, toldDigits(feet, train.units)]).size > 1
  const said =
    shafts[0] === shafts[1]
      ? endwiseSaid(train, m, left)
      : `left one ${endwiseSaid(train, m, left)}; right one ${endwiseSaid(train, m, right)}`
  return [
    { key: 'moves', said: endwiseSaid(train, m, feet) },
    ...(carried ? [{ key: 'shaft', said }] : []),
    ...grown,
  ]
}

function couplingCells(train: Train, { couplings }: AxialAnswer, id: string): Cell[] {
  const own = couplings.find(({ coupling }) => coupling === id)
  if (!own) return [{ key: 'found', said: 'not entered' }]
  const mm = (value: Millimetres) => `${gapDigits(tidy(value), train.units)} ${train.units.length}`
  return [
    { key: 'found', said: mm(own.found) },
    ...(own.planned === undefined ? [] : [{ key: 'planned', said: mm(own.planned) }]),
    { key: 'want', said: `${mm(own.want)} ± ${mm(own.tolerance)}` },
    ...own.states.flatMap((entry) => stateCells(train, entry)),
    ...apartIn(train, id).map((state) => ({ key: `${state} gap`, said: notEngaged })),
  ]
}

function stateCells(train: Train, { state, gap, left, stretch, rotor }: AxialStateAnswer): Cell[] {
  const { length } = train.units
  const digits = (value: Millimetres) => gapDigits(tidy(value), train.units)
  const shift = (value: Millimetres) => signed(digits(value))
  const leftSaid = (room: Millimetres) =>
    isOver(room) ? `over by ${digits(-room)} ${length}` : `${digits(room)} ${length} left`
  const between = ({ from, to, low, high, left: room }: AxialRoom): string => {
    const at = digits(from) === digits(to) ? shift(from) : `${shift(from)} to ${shift(to)}`
    return `${at} ${length}, allowed ${shift(low)} to ${shift(high)} ${length}, ${leftSaid(room)}`
  }
  return [
    { key: `${state} gap`, said: `gap ${digits(gap)} ${length}` },
    {
      key: `${state} left`,
      said: isOver(left) ? leftSaid(left) : `${digits(left)} ${length}`,
      over: isOver(left),
    },
    ...(stretch
      ? [{ key: `${state} stretch`, said: between(stretch), over: isOver(stretch.left) }]
      : []),
    ...(rotor
      ? [
          {
            key: `${state} rotor`,
            said: `of the ${rotor.side} machine ${between(rotor)}; magnetic centre ${shift(rotor.centre)} ${length}`,
            over: isOver(rotor.left),
          },
        ]
      : []),
  ]
}

/** Ids of the states in which the clutch of a coupling is open. */
const apartIn = ({ couplings }: Train, id: string): readonly string[] =>
  couplings.find((coupling) => coupling.id === id)?.disengaged ?? []

/** By more than the last digits of a solver. */
const isOver = (room: Millimetres): boolean => tidy(room) < -tol.axialOver

/** What the table leaves to be known, in one line. */
export const axialSigns =
  'Moves and growth: to the right or left along the train. Gaps in a state: as it runs, rotors on their magnetic centres. Stretch: + drawn out, − pressed together, wherever thrust bearings let rotors lie. Rotor: from where it lay when the gap was found, + to the right.'
