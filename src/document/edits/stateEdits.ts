import type { CouplingDocument, MachineDocument, StateDocument, TrainDocument } from '../schema'
import { listed } from '../../language/names'
import { moved, removed, withValue } from '../place'

/** An id from a name: small letters, digits and hyphens, and a number behind it where it is taken. */
export function idFrom(name: string, taken: readonly string[], otherwise: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
  const base = plain === '' ? otherwise : plain
  let id = base
  for (let n = 2; taken.includes(id); n++) id = `${base}-${n}`
  return id
}

const idsBeside = (states: readonly StateDocument[], index: number): string[] =>
  states.flatMap(({ id }, i) => (i === index ? [] : [id]))

/** A state more, named and empty: nothing grows in it until figures are entered. */
export function withState(document: TrainDocument, name: string): TrainDocument {
  const states = document.states ?? []
  const id = idFrom(name, idsBeside(states, -1), 'state')
  return { ...document, states: [...states, { id, name }] }
}

/**
 * A state under another name. An id that was made from the old name follows it, and with it the growth
 * and the aims kept under that id; one that somebody chose stays.
 */
export function renamedState(document: TrainDocument, index: number, name: string): TrainDocument {
  const states = document.states ?? []
  const state = states[index]
  if (!state) return document
  const beside = idsBeside(states, index)
  const follows = state.id === idFrom(state.name, beside, 'state')
  const id = follows ? idFrom(name, beside, 'state') : state.id
  return {
    ...withNamedStates(
      withRecords(document, (records) => renamedKey(records, state.id, id)),
      (names) => names.map((name) => (name === state.id ? id : name)),
    ),
    states: states.map((other, i) =>
      i === index ? { ...other, id, name } : withEnd(other, state.id, id),
    ),
    ...(document.hotChecks && {
      hotChecks: document.hotChecks.map((check) =>
        check.state === state.id ? { ...check, state: id } : check,
      ),
    }),
  }
}

/** A state whose growth is taken from the one of that id to or from another: by its new id, or no more where there is none. */
function withEnd(state: StateDocument, from: string, id: string | undefined): StateDocument {
  const { between } = state
  if (!between || (between.from !== from && between.to !== from)) return state
  if (id === undefined) return withValue(state, ['between'], undefined)
  const end = (own: string) => (own === from ? id : own)
  return { ...state, between: { ...between, from: end(between.from), to: end(between.to) } }
}

/** The document without a state, its growth and its aims; what was taken between it and another is no more. */
export function withoutState(document: TrainDocument, index: number): TrainDocument {
  const states = document.states ?? []
  const state = states[index]
  if (!state) return document
  const left = removed(states, index).map((other) => withEnd(other, state.id, undefined))
  const hotChecks = document.hotChecks?.filter((check) => check.state !== state.id)
  return withValue(
    withValue(
      withNamedStates(
        withRecords(document, (records) => withoutKey(records, state.id)),
        (names) => names.filter((name) => name !== state.id),
      ),
      ['states'],
      left.length === 0 ? undefined : left,
    ),
    ['hotChecks'],
    hotChecks?.length === 0 ? undefined : hotChecks,
  )
}

/** A state at another place of the list. */
export const movedState = (document: TrainDocument, from: number, to: number): TrainDocument => ({
  ...document,
  states: moved(document.states ?? [], from, to),
})

/** What goes with a state when it is removed, in words. */
export function goesWith(document: TrainDocument, state: string): string {
  const grown = document.machines.filter(
    (machine) => (machine.growth?.[state] ?? []).length > 0,
  ).length
  const between = (document.states ?? []).filter(
    (other) => other.between?.from === state || other.between?.to === state,
  )
  const aims = document.couplings.filter(({ aim }) => aim?.[state] !== undefined).length
  const checks = (document.hotChecks ?? []).filter((check) => check.state === state).length
  const parts = [
    ...(grown > 0 ? [`the growth of ${grown} machine${grown === 1 ? '' : 's'} in it`] : []),
    ...(aims > 0 ? [`the aim of ${aims} coupling${aims === 1 ? '' : 's'}`] : []),
    ...(checks > 0 ? [`${checks} hot check${checks === 1 ? '' : 's'} of it`] : []),
    ...between.map(({ name }) => `what is taken between it and another for ${name}`),
  ]
  return listed(parts)
}

/** A gear coupling that runs in a state, or not; one that runs in all of them names none. */
export function withGearState(
  document: TrainDocument,
  index: number,
  state: string,
  runs: boolean,
): TrainDocument {
  const all = (document.states ?? []).map(({ id }) => id)
  const now = document.couplings[index]?.gear?.states ?? all
  const next = all.filter((id) => (id === state ? runs : now.includes(id)))
  // one that runs nowhere would ask for nothing: the last state stays
  if (next.length === 0) return document
  return withValue(
    document,
    ['couplings', index, 'gear', 'states'],
    next.length === all.length ? undefined : next,
  )
}

const withNamedStates = (
  document: TrainDocument,
  change: (states: readonly string[]) => string[],
): TrainDocument => ({
  ...document,
  couplings: document.couplings.map((coupling) => namedStates(coupling, change)),
})

/** A clutch that is engaged in a state, or open; one that is engaged in all of them names none. */
export function withEngaged(
  document: TrainDocument,
  index: number,
  state: string,
  engaged: boolean,
): TrainDocument {
  const all = (document.states ?? []).map(({ id }) => id)
  const now = document.couplings[index]?.disengaged ?? []
  const next = all.filter((id) => (id === state ? !engaged : now.includes(id)))
  // one that is engaged nowhere would be judged nowhere: the last state stays
  if (next.length === all.length) return document
  return withValue(
    document,
    ['couplings', index, 'disengaged'],
    next.length === 0 ? undefined : next,
  )
}

/** The lists of states that a coupling names, changed: where a gear coupling runs, where a clutch is open; left out where they name none any more. */
function namedStates(
  given: CouplingDocument,
  change: (states: readonly string[]) => string[],
): CouplingDocument {
  const { disengaged, ...whole } = given
  const open = disengaged && change(disengaged)
  const coupling =
    open && open.length > 0 ? { ...given, disengaged: open } : disengaged ? whole : given
  const { gear } = coupling
  if (!gear?.states) return coupling
  const { states, ...rest } = gear
  const next = change(states)
  return { ...coupling, gear: next.length === 0 ? rest : { ...rest, states: next } }
}

type Records = Readonly<Record<string, unknown>>

const renamedKey = (records: Records, from: string, to: string): Records =>
  Object.fromEntries(Object.entries(records).map(([key, v]) => [key === from ? to : key, v]))

const withoutKey = (records: Records, key: string): Records =>
  Object.fromEntries(Object.entries(records).filter(([name]) => name !== key))

/** Everything that a document keeps by state, changed alike; what ends empty is left out. */
function withRecords(
  document: TrainDocument,
  change: (records: Records) => Records,
): TrainDocument {
  const changed = <T extends object>(owner: T, field: 'growth' | 'aim'): T => {
    const records = (owner as Record<string, unknown>)[field]
    if (records === undefined) return owner
    const next = change(records as Records)
    if (Object.keys(next).length > 0) return { ...owner, [field]: next }
    return Object.fromEntries(Object.entries(owner).filter(([key]) => key !== field)) as T
  }
  return {
    ...document,
    machines: document.machines.map((machine): MachineDocument => changed(machine, 'growth')),
    couplings: document.couplings.map((coupling) => changed(coupling, 'aim')),
  }
}
