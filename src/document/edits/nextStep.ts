import type { TrainDocument } from '../schema'
import { placeOf } from '../refusal'
import { valueAt, type Path } from '../place'

/** What an unfinished train needs next: one sentence, the band it is entered in, the place to begin at. */
export interface NextStep {
  readonly words: string
  readonly band: 'train' | 'feet' | 'couplings' | 'readings' | 'states'
  readonly at: string
  /** What a plan needs, in the order in which it is asked for, and which of it is whole. */
  readonly parts: readonly { readonly name: Part; readonly whole: boolean }[]
}

/** What a plan needs; the same four of every train, so that nothing entered makes the rest look longer. */
const parts = ['machines', 'feet', 'couplings', 'readings'] as const
type Part = (typeof parts)[number]
const partOf: Record<NextStep['band'], Part | undefined> = {
  train: 'machines',
  feet: 'feet',
  couplings: 'couplings',
  readings: 'readings',
  states: undefined,
}

/** All machines with their heights first, then their feet, then couplings with a tolerance, then readings. */
export function nextStep(document: TrainDocument): NextStep | undefined {
  const { machines, couplings } = document
  const asks: { missing: boolean; words: string; band: NextStep['band']; path: Path }[] = [
    {
      missing: machines.length < 2,
      words:
        machines.length === 0
          ? 'Add the machines, from the left end of the train to the right.'
          : 'Add the next machine to the right; a train has two or more.',
      band: 'train',
      path: ['machines'],
    },
    ...machines.flatMap((machine, m) => {
      const name = machine.name === '' ? `machine ${m + 1}` : machine.name
      const two = valueAt(machine, ['axis', 'left']) !== undefined
      const axis: Path = ['machines', m, 'axis', ...(two ? ['left'] : []), 'z']
      return [
        {
          missing: machine.name === '',
          words: `Name machine ${m + 1}, counted from the left.`,
          band: 'train' as const,
          path: ['machines', m, 'name'],
        },
        {
          missing: valueAt(document, axis) === undefined,
          words: `How high does the shaft of ${name} stand above the plane of its feet?`,
          band: 'train' as const,
          path: axis,
        },
        {
          missing: machine.feet.length === 0 && machine.anchored === undefined,
          words: `Where do the feet of ${name} stand along the train?`,
          band: 'feet' as const,
          path: ['machines', m, 'feet'],
        },
      ]
    }),
    ...couplings.flatMap((coupling, c) => {
      const between = `${machines[c]?.name ?? ''} and ${machines[c + 1]?.name ?? ''}`
      const at = (...rest: (string | number)[]): Path => ['couplings', c, ...rest]
      const { flex, offset, angle } = coupling.tolerance
      return [
        {
          missing:
            valueAt(coupling, ['left', 'plane']) === undefined ||
            valueAt(coupling, ['right', 'plane']) === undefined,
          words: `Where does the coupling between ${between} bend? Enter its one or two planes.`,
          band: 'couplings' as const,
          path: at('left', 'plane'),
        },
        {
          missing: flex === undefined && offset === undefined && angle === undefined,
          words: `What tolerance holds for the coupling between ${between}, and on what basis?`,
          band: 'couplings' as const,
          path: at('tolerance', 'flex'),
        },
        {
          missing: coupling.found.length === 0,
          words: `What was read at the coupling between ${between}?`,
          band: 'readings' as const,
          path: at('found'),
        },
      ]
    }),
  ]
  const missing = asks.filter((ask) => ask.missing)
  // the sheet from its top down: all machines, then all feet, and what was read once every coupling is there
  const open = parts.flatMap((name) => missing.filter(({ band }) => partOf[band] === name))
  const [first] = open
  return (
    first && {
      words: first.words,
      band: first.band,
      at: placeOf(first.path),
      parts: parts.map((name) => ({
        name,
        whole:
          asks.some(({ band }) => partOf[band] === name) &&
          !open.some(({ band }) => partOf[band] === name),
      })),
    }
  )
}
