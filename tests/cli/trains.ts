import { readFileSync } from 'node:fs'
import { glpkSolver } from '../../src/solvers/glpk'
import { planRead } from '../planned'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'

export const examples = [
  'base-bound-motor',
  'bolt-bound-gearbox',
  'five-in-a-line',
  'hot-check',
  'leave-it-alone',
  'piped-compressor',
  'pump-and-motor',
  'skid-as-one',
] as const

export const exampleFile = (name: (typeof examples)[number]): string => `examples/${name}.json`

/** An example as its document, changed as a test likes. */
export function example(
  name: (typeof examples)[number],
  change: (document: TrainDocument) => void = () => undefined,
): TrainDocument {
  const document = JSON.parse(readFileSync(exampleFile(name), 'utf8')) as TrainDocument
  change(document)
  return document
}

/** Asks for a share that no move of the train reaches. */
export const askTooMuch = (document: TrainDocument): void => {
  document.plan = { ...document.plan, share: 0.05 }
}

export function trainOf(document: unknown): Train {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train
}

export async function planned(document: unknown): Promise<{ train: Train; answer: PlanAnswer }> {
  const train = trainOf(document)
  return { train, answer: planRead(train, await glpkSolver()) }
}

/**
 * Two machines with dials on both rims (common practice, no source): the right machine's feet come
 * out 16 and 30 mil up, 28 and 36 mil toward 9 o'clock.
 */
export const reverseDial = {
  format: 'holdfast-train',
  version: 1,
  name: 'Two machines',
  units: { length: 'in', fine: 'mil' },
  clock: { seenFrom: 'left' },
  machines: [
    {
      id: 'still',
      name: 'Driver',
      held: true,
      axis: { z: 10 },
      feet: [
        { id: 'outer', x: -20 },
        { id: 'inner', x: -8 },
      ],
    },
    {
      id: 'moved',
      name: 'Pump',
      axis: { z: 10 },
      feet: [
        { id: 'inner', x: 12 },
        { id: 'outer', x: 24 },
      ],
    },
  ],
  couplings: [
    {
      id: 'joint',
      left: { machine: 'still', plane: 3 },
      right: { machine: 'moved', plane: 3 },
      tolerance: { offset: 0.0001, angle: 0.0001 },
      found: [
        {
          kind: 'rim',
          rides: 'left',
          at: 0,
          sag: 1,
          readings: [
            [12, 0],
            [6, -6],
          ],
        },
        {
          kind: 'rim',
          rides: 'left',
          at: 0,
          sag: 1,
          readings: [
            [3, 0],
            [9, 40],
          ],
        },
        {
          kind: 'rim',
          rides: 'right',
          at: 6,
          sag: 1,
          readings: [
            [6, 0],
            [12, -16],
          ],
        },
        {
          kind: 'rim',
          rides: 'right',
          at: 6,
          sag: 1,
          readings: [
            [9, 0],
            [3, 48],
          ],
        },
      ],
    },
  ],
}
