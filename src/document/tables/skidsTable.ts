import { addSkid, setOnSkid } from '../edits/skids'
import { withValue } from '../place'
import type { SkidDocument, TrainDocument } from '../schema'
import { machineNamed } from '../titles'
import { bodyAmounts, fixedColumns, freeColumns, liftColumns, type BodyColumn } from './bodyColumns'
import { same } from './bodyNamed'
import { cellsOfRow, onlyNames, saidIn } from './couplingRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import { belowNought } from './pathColumns'

const columns: readonly BodyColumn[] = [...fixedColumns, ...liftColumns, ...freeColumns]

/** Skids as a table: a row a skid, and the machines it carries in one cell, parted by semicolons. */
export const skidsTable: PasteTarget = {
  what: 'skids',
  needs: 'skid',
  columns: [
    { key: 'skid', heading: 'skid', names: ['bedplate', 'baseplate'], kind: 'text' },
    { key: 'carries', heading: 'carries', names: ['carries machines'], kind: 'text' },
    ...columns,
  ],
  put,
  rows: (document) =>
    (document.skids ?? []).map((skid) => ({
      skid: skid.name,
      carries: skid.carries
        .map((id) => document.machines.find((machine) => machine.id === id)?.name ?? id)
        .join('; '),
      ...cellsOfRow(columns, skid),
    })),
}

/** Changes the skid that a row names, or adds one of that name; the machines that are named are all that it carries. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const name = saidIn(values, 'skid')
  if (name === '') return { why: 'the skid is not named: add a column with its name' }
  const low = belowNought(columns, bodyAmounts, values)
  if (low !== undefined) return { why: low }
  const skids = document.skids ?? []
  const found = skids.findIndex(
    (skid: SkidDocument) => same(name, skid.name) || same(name, skid.id),
  )
  const s = found < 0 ? skids.length : found
  const start =
    found < 0 ? withValue(addSkid(document).document, ['skids', s, 'name'], name) : document
  const carried = values['carries'] === undefined ? undefined : carriedBy(start, values)
  if (typeof carried === 'string') return { why: carried }
  const loaded = carried === undefined ? start : withLoad(start, s, carried)
  const given = columns.filter(({ key }) => values[key] !== undefined)
  const what = [
    ...(carried === undefined ? [] : ['carries']),
    ...given.map(({ heading }) => heading),
  ].join(', ')
  if (found >= 0 && what === '') return { why: onlyNames }
  return {
    document: given.reduce((now, { key, path, instead }) => {
      const value = values[key]
      // what a file takes anyway is not written
      return withValue(now, ['skids', s, ...path], value === instead ? undefined : value)
    }, loaded),
    does: `${found < 0 ? 'adds' : 'changes'} ${skids[s]?.name ?? name}${what === '' ? '' : `: ${what}`}`,
  }
}

/** Ids of the machines that a cell names; else which of them is none. Commas part them where semicolons do not. */
function carriedBy(document: TrainDocument, values: PastedValues): readonly string[] | string {
  const said = saidIn(values, 'carries')
  const parted = said.includes(';') || machineNamed(document, said) !== undefined ? ';' : ','
  const ids: string[] = []
  for (const name of said.split(parted).map((part) => part.trim())) {
    if (name === '') continue
    const m = machineNamed(document, name)
    const machine = m === undefined ? undefined : document.machines[m]
    if (!machine) return `carries: no machine is called “${name}”`
    ids.push(machine.id)
  }
  return ids
}

const withLoad = (document: TrainDocument, s: number, ids: readonly string[]): TrainDocument =>
  document.machines.reduce(
    (now, { id }) =>
      (now.skids?.[s]?.carries.includes(id) ?? false) === ids.includes(id)
        ? now
        : setOnSkid(now, s, id, ids.includes(id)).document,
    document,
  )
