import type { CouplingDocument } from '../schema'
import { valueAt } from '../place'
import { quarterHours, type DraftReading } from './hours'

/** A reading set as it is begun: what only the machine can tell is missing and asked for. */
export type DraftSet = Readonly<Record<string, unknown>>

/** A way to read a coupling, and what it is for. */
export interface ReadingPreset {
  readonly id: string
  readonly name: string
  readonly words: string
  readonly sets: (coupling: CouplingDocument) => readonly DraftSet[]
}

/** Every hour of a full turn, none of them read yet. */
const fullTurn = (): DraftReading[] => quarterHours.map((hour) => [hour, undefined])
/** The upper half of a turn, where a pipe or the floor keeps the bracket from going round. */
const upperHalf = (): DraftReading[] =>
  [12, 1.5, 3, 9, 10.5].map((hour) => [hour, undefined] as const)

const planeOf = (coupling: CouplingDocument, end: 'left' | 'right'): number | undefined => {
  const plane = valueAt(coupling, [end, 'plane'])
  return typeof plane === 'number' ? plane : undefined
}

function middle(coupling: CouplingDocument): number | undefined {
  const [p, q] = [planeOf(coupling, 'left'), planeOf(coupling, 'right')]
  return p === undefined || q === undefined ? undefined : (p + q) / 2
}

const rim = (coupling: CouplingDocument, rides: 'left' | 'right', readings = fullTurn()) => ({
  kind: 'rim',
  rides,
  at: planeOf(coupling, rides),
  readings,
})

const spool = (end: 'left' | 'right') => ({
  kind: 'spool',
  end,
  diameter: undefined,
  readings: fullTurn(),
})

/** The usual ways to read a coupling; stems are put at the flex planes until the engineer says where. */
export const readingPresets: readonly ReadingPreset[] = [
  {
    id: 'rims',
    name: 'reverse rim pair',
    words: 'a dial on each rim, each bracket on the other shaft; axial float does no harm',
    sets: (coupling) => [rim(coupling, 'right'), rim(coupling, 'left')],
  },
  {
    id: 'rim-face',
    name: 'rim and face',
    words: 'one dial on the rim, one on the face of the right shaft',
    sets: (coupling) => [
      rim(coupling, 'right'),
      { kind: 'face', rides: 'right', diameter: undefined, readings: fullTurn() },
    ],
  },
  {
    id: 'faces',
    name: 'face and face across the spacer',
    words: 'a dial on the face at each end of the spacer; good for long spacers',
    sets: () => [spool('left'), spool('right')],
  },
  {
    id: 'gap',
    name: 'gap by feelers',
    words: 'between the faces; tells the slope alone, so a rim is read besides',
    sets: () => [{ kind: 'gap', diameter: undefined, readings: fullTurn() }],
  },
  {
    id: 'line',
    name: 'a line from any instrument',
    words: 'offsets and slopes as the instrument gives them, right shaft against left',
    sets: (coupling) => [{ kind: 'line', at: middle(coupling) }],
  },
  {
    id: 'part',
    name: 'part of a turn on a rim',
    words: 'where the bracket cannot go all the way round; any hours will do',
    sets: (coupling) => [rim(coupling, 'right', upperHalf())],
  },
]
