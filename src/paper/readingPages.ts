import { gapDigits } from '../language/amounts'
import { capital } from '../language/names'
import { sidesInWords } from '../language/sides'
import { hasMoves } from '../engine/plan/moves'
import { gapReading } from '../engine/fieldwork/steps/stopReadings'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { Coupling, Train } from '../mechanics/train'
import { dialSets } from './dialSets'
import type { Drawn } from './job'
import { lineTable } from './lineTable'
import type { Block, Chapter } from './page'
import { setHeading } from './setHeading'
import { signInWords } from './words'

/** For each coupling, two to a page where they fit: as found, what is expected, and a box to write in what is read when all is done. */
export function readingPages({ train, answer, instructions }: Drawn): Chapter[] {
  return train.couplings.map((coupling, c) => ({
    section: 'readings',
    title: `${capital(coupling.name)}: readings`,
    whole: true,
    blocks: [
      {
        kind: 'text',
        look: 'plain',
        text: `Isolated, locked, tried to start. One person calls the turn; no hand in the coupling.${c === 0 ? ` ${signInWords} ${sidesInWords(train, 'drawing')} What a full turn may miss is common practice, no source.` : ''}`,
      },
      // one given as a line has words in its cells and takes the whole width
      ...coupling.found.flatMap((set, index) =>
        set.kind === 'line'
          ? [
              setHeading(train, set, index),
              lineTable(train, set, expectedOf(answer, coupling, index)),
            ]
          : [],
      ),
      ...dialSets(
        train,
        coupling,
        coupling.found.flatMap((set, index) => (set.kind === 'line' ? [] : [{ set, index }])),
        (index) => expectedOf(answer, coupling, index),
      ),
      ...gapTable(train, coupling, instructions),
      {
        kind: 'blanks',
        columns: 3,
        labels: ['read by, and read back by', 'date and time', 'casing temperatures'],
      },
    ],
  }))
}

/** The gap between the shaft ends, where it was entered: as found, as the last stop point there has it, and a box for it. */
function gapTable(
  train: Train,
  { id, axial }: Coupling,
  instructions: Drawn['instructions'],
): Block[] {
  if (!axial) return []
  const gap = instructions
    .flatMap(({ step }) => step.gaps ?? [])
    .findLast(({ coupling }) => coupling === id)
  const told = gap && gapReading(train, gap)
  const { length } = train.units
  return [
    {
      kind: 'table',
      tall: true,
      columns: [
        { head: `gap between the shaft ends, ${length}`, width: 3 },
        { head: 'as found', width: 2, align: 'right', strong: true },
        ...(told
          ? ([
              { head: 'expected, cold', width: 2, align: 'right', strong: true },
              { head: 'good from, to', width: 2, align: 'right' },
            ] as const)
          : []),
        { head: told ? 'as left' : 'measured now', width: 2.4 },
      ],
      rows: [
        [
          axial.rotors.left || axial.rotors.right
            ? 'cold, rotors where they lay when the gap was found'
            : 'cold, both rotors where they belong',
          gapDigits(axial.found, train.units),
          ...(told ? [told.should, told.good] : []),
          '',
        ],
      ],
    },
  ]
}

const expectedOf = (answer: PlanAnswer, { id }: Coupling, index: number) =>
  hasMoves(answer)
    ? answer.expected.find((entry) => entry.coupling === id && entry.set === index)
    : undefined
