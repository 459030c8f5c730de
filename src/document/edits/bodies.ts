import type { CouplingDocument, FootDocument, TrainDocument } from '../schema'
import { inSentence } from '../../language/names'
import { valueAt, type Path } from '../place'

/** A machine or skid of a document that may be unfinished: where it stands and what it is called. */
export interface BodyAt {
  readonly kind: 'machine' | 'skid'
  readonly index: number
  readonly path: Path
  readonly id: string
  /** Its name, or "machine 2" while it has none. */
  readonly name: string
  readonly feet: readonly FootDocument[]
}

/** Machines in train order, then skids. */
export function bodiesAt(document: TrainDocument): BodyAt[] {
  const of = (kind: BodyAt['kind'], list: 'machines' | 'skids') =>
    (document[list] ?? []).map(({ id, name, feet }, index): BodyAt => ({
      kind,
      index,
      path: [list, index],
      id,
      name: name.trim() === '' ? `${kind} ${index + 1}` : name.trim(),
      feet,
    }))
  return [...of('machine', 'machines'), ...of('skid', 'skids')]
}

/** The name of a machine by its index, "machine 2" where it has none. */
export const machineName = (document: TrainDocument, index: number): string => {
  const name = document.machines[index]?.name.trim() ?? ''
  return name === '' ? `machine ${index + 1}` : name
}

/** A body in the name of an edit: "the gearbox", "machine 2". */
export const saidBody = (name: string): string =>
  /^(machine|skid) \d+$/.test(name) ? name : inSentence(name)

/** A coupling's name, or the names of the two machines it joins. */
export function draftCouplingName(document: TrainDocument, coupling: CouplingDocument): string {
  const of = (id: string): string => {
    const index = document.machines.findIndex((machine) => machine.id === id)
    return index < 0 ? id : machineName(document, index)
  }
  const name = coupling.name?.trim() ?? ''
  return name === '' ? `${of(coupling.left.machine)} to ${of(coupling.right.machine)}` : name
}

/** The coupling that joins two machines; undefined while there is none. */
export const couplingBetween = (
  document: TrainDocument,
  left: string | undefined,
  right: string | undefined,
): CouplingDocument | undefined =>
  document.couplings.find(
    (coupling) => coupling.left.machine === left && coupling.right.machine === right,
  )

/** The first of stem, stem-2, stem-3 ... that is not taken. */
export function freeId(taken: readonly string[], stem: string): string {
  let id = stem
  for (let n = 2; taken.includes(id); n++) id = `${stem}-${n}`
  return id
}

/** The id after the last one: "F4" after "F3", "3" after "2"; "1" is the first. */
export function nextId(taken: readonly string[], first = '1'): string {
  const last = taken.at(-1) ?? ''
  const match = /^(.*?)(\d+)(\D*)$/.exec(last)
  if (!match) return freeId(taken, taken.length === 0 ? first : `${taken.length + 1}`)
  const [, before = '', digits = '', behind = ''] = match
  let number = Number(digits) + 1
  while (taken.includes(`${before}${number}${behind}`)) number++
  return `${before}${number}${behind}`
}

/**
 * A number of a document that may be unfinished.
 * @returns in the unit of its place in the document
 */
export const numberAt = (document: unknown, path: Path): number | undefined => {
  const value = valueAt(document, path)
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined
}
