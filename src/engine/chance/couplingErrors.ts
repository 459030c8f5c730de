import type { Train } from '../../mechanics/train'
import type { ErrorGroup, ErrorSource } from '../../mechanics/uncertainty/errorSource'
import { judgedValues } from './judgedValues'

/** One independent error at a coupling: its draw by name, its group, and what it does to each number judged. */
export interface CouplingError {
  readonly key: string
  readonly group: ErrorGroup
  readonly gains: readonly number[]
}

/** Errors that bear on a coupling: in every state alike, and those of each state. */
export interface CouplingErrors {
  /** How many numbers are judged. */
  readonly numbers: number
  readonly alike: readonly CouplingError[]
  readonly byState: readonly (readonly CouplingError[])[]
}

/** The errors by the couplings on which they bear, in the order of `couplings`. */
export function errorsByCoupling(train: Train, sources: readonly ErrorSource[]): CouplingErrors[] {
  const out = train.couplings.map((coupling) => ({
    values: judgedValues(coupling),
    alike: [] as CouplingError[],
    byState: train.states.map((): CouplingError[] => []),
  }))
  for (const { key, group, effects } of sources)
    for (const { coupling, state, by } of effects) {
      const here = out[coupling]
      const list = state === undefined ? here?.alike : here?.byState[state]
      if (!here || !list) continue
      list.push({ key, group, gains: here.values.map(({ of }) => of(by)) })
    }
  return out.map(({ values, alike, byState }) => ({ numbers: values.length, alike, byState }))
}

/** The same text for the same group. */
export const groupName = (group: ErrorGroup): string => {
  switch (group.kind) {
    case 'readings':
    case 'brackets':
    case 'gap':
      return `${group.kind} ${group.coupling}`
    case 'growth':
      return `growth ${group.machine}`
    case 'survey':
      return `survey ${group.survey}`
    case 'work':
    case 'places':
      return group.kind
  }
}
