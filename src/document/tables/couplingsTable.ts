import type { TrainDocument } from '../schema'
import { valueAt, withValue, type Path } from '../place'
import { couplingNamed, couplingTitleOf, machineNamed } from '../titles'
import { onlyNames } from './couplingRows'
import { same } from './bodyNamed'
import type { CsvCell } from './csv'
import type { PasteColumn, PastedValues, PasteOutcome, PasteTarget } from './pasted'
import { belowNought, numberColumns } from './pathColumns'

/** A column of the table of couplings; without a path it only says which coupling is meant. */
interface CouplingColumn extends PasteColumn {
  readonly path?: Path
}

const number = numberColumns('couplings')
const text = (heading: string, names: readonly string[], ...path: string[]): CouplingColumn => ({
  key: path.join('.'),
  heading,
  names,
  kind: 'text',
  path,
})

const columns: readonly CouplingColumn[] = [
  { key: 'after', heading: 'left machine', names: ['after', 'machine'], kind: 'text' },
  text('coupling', ['name'], 'name'),
  number('left plane at x', ['left plane', 'plane'], 'left', 'plane'),
  number('right plane at x', ['right plane'], 'right', 'plane'),
  number('speed', [], 'speed'),
  number('angle at each plane', ['each plane', 'flex'], 'tolerance', 'flex'),
  number('offset, mid-span', ['offset'], 'tolerance', 'offset'),
  number('angle, over all', ['angle'], 'tolerance', 'angle'),
  text('shape', [], 'tolerance', 'shape'),
  text('basis', ['whose limit'], 'tolerance', 'basis'),
  text('disengaged in', ['disengaged', 'open in'], 'disengaged'),
]
/** What is no number below 0. */
const amounts = ['speed', 'tolerance.flex', 'tolerance.offset', 'tolerance.angle']

/** Couplings as a table: a row a coupling, named by itself or by the machine at its left. */
export const couplingsTable: PasteTarget = {
  what: 'couplings',
  columns,
  put,
  rows: (document) =>
    document.couplings.map((coupling) =>
      Object.fromEntries(
        columns.map(({ key, path }): [string, CsvCell] => [
          key,
          key === 'disengaged'
            ? saidStates(document, coupling.disengaged)
            : path
              ? (valueAt(coupling, path) as CsvCell)
              : document.machines.find(({ id }) => id === coupling.left.machine)?.name,
        ]),
      ),
    ),
}

function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingOf(document, values)
  if (typeof c === 'string') return { why: c }
  const said = values['tolerance.shape']
  const shape = said === undefined ? undefined : String(said).trim().toLowerCase()
  if (shape !== undefined && shape !== 'box' && shape !== 'round')
    return { why: `shape “${shape}” is neither box nor round` }
  const low = belowNought(columns, amounts, values)
  if (low !== undefined) return { why: low }
  const opens = statesOf(document, values['disengaged'])
  if (typeof opens === 'string') return { why: opens }
  // a name that only says which coupling is meant changes nothing
  const finds = values['after'] === undefined
  const given = columns.filter(
    ({ key, path }) => path && values[key] !== undefined && !(key === 'name' && finds),
  )
  if (given.length === 0) return { why: onlyNames }
  const next = given.reduce((now, { key, path = [] }) => {
    const value = key === 'tolerance.shape' ? shape : key === 'disengaged' ? opens : values[key]
    // what a file takes anyway is not written
    return withValue(now, ['couplings', c, ...path], value === 'box' ? undefined : value)
  }, document)
  const what = given.map(({ heading }) => heading).join(', ')
  return { document: next, does: `changes ${couplingTitleOf(next, c)}: ${what}` }
}

/** States by their names in one cell, a semicolon between. */
const saidStates = (
  { states }: TrainDocument,
  ids: readonly string[] | undefined,
): string | undefined =>
  ids?.map((id) => states?.find((state) => state.id === id)?.name ?? id).join('; ')

/** Ids of the states that a cell names; undefined where it names none; else why one is none. */
function statesOf(
  { states }: TrainDocument,
  said: PastedValues[string] | undefined,
): readonly string[] | string | undefined {
  if (said === undefined) return undefined
  const names = String(said)
    .split(';')
    .map((name) => name.trim())
    .filter((name) => name !== '')
  const ids = names.map(
    (name) => states?.find((state) => same(state.name, name) || state.id === name)?.id,
  )
  const unknown = names.find((_, i) => ids[i] === undefined)
  if (unknown !== undefined)
    return `disengaged in: no state is called “${unknown}”; write states with a semicolon between`
  return [...new Set(ids.flatMap((id) => id ?? []))]
}

/** The coupling right of the machine a row names, or of the name it gives; else why there is none. */
function couplingOf(document: TrainDocument, values: PastedValues): number | string {
  const after = values['after'] === undefined ? undefined : String(values['after'])
  if (after === undefined) {
    const name = String(values['name'] ?? '')
    return (
      couplingNamed(document, name) ??
      `no coupling is called “${name}”: name the machine at its left`
    )
  }
  const m = machineNamed(document, after)
  const machine = m === undefined ? undefined : document.machines[m]
  if (!machine) return `no machine is called “${after}”`
  const c = document.couplings.findIndex(({ left }) => left.machine === machine.id)
  return c < 0 ? `no coupling stands right of ${machine.name}` : c
}
