import type { TrainDocument } from './schema'

/** A coupling's name, or the names of its machines: "Motor to Gearbox". */
export function couplingTitleOf(document: TrainDocument, index: number): string {
  const coupling = document.couplings[index]
  if (!coupling) return ''
  if (coupling.name !== undefined && coupling.name.trim() !== '') return coupling.name
  const name = (end: 'left' | 'right') => {
    const found = document.machines.findIndex(({ id }) => id === coupling[end].machine)
    const given = document.machines[found]?.name ?? ''
    return given.trim() === '' ? `machine ${found + 1}` : given
  }
  return `${name('left')} to ${name('right')}`
}

const alike = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ')

const named = (text: string, candidates: readonly (readonly string[])[]): number | undefined => {
  const wanted = alike(text)
  if (wanted === '') return candidates.length === 1 ? 0 : undefined
  const found = candidates.findIndex((names) => names.some((name) => alike(name) === wanted))
  return found < 0 ? undefined : found
}

/** The coupling that a table means: by its name, its id, or its number from the left; the only one without. */
export const couplingNamed = (document: TrainDocument, text: string): number | undefined =>
  named(
    text,
    document.couplings.map(({ id }, c) => [couplingTitleOf(document, c), id, String(c + 1)]),
  )

/** The machine that a table means: by its name, its id, or its number from the left. */
export const machineNamed = (document: TrainDocument, text: string): number | undefined =>
  named(
    text,
    document.machines.map(({ id, name }, m) => [name, id, String(m + 1)]),
  )

/** The state that a table means: by its name, its id, or its number in the list. */
export const stateNamed = (document: TrainDocument, text: string): number | undefined =>
  named(
    text,
    (document.states ?? []).map(({ id, name }, s) => [name, id, String(s + 1)]),
  )
