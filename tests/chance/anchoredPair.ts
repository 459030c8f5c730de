import type { CouplingDocument, TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import type { Coupling, Train } from '../../src/mechanics/train'

/** Two machines that stay, one on feet from x = 0 and one from `right`, with one coupling between them; mm and um. */
export function anchoredPair(
  coupling: Omit<CouplingDocument, 'id' | 'left' | 'right'>,
  planes: readonly [left: number, right: number],
  right: number,
): TrainDocument {
  const machine = (id: string, x: number) => ({
    id,
    name: id,
    axis: { z: 500 },
    anchored: 'grouted',
    feet: [
      { id: '1', x },
      { id: '2', x: x + 800 },
    ],
  })
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'pair',
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'left' },
    machines: [machine('a', 0), machine('b', right)],
    couplings: [
      {
        id: 'c',
        left: { machine: 'a', plane: planes[0] },
        right: { machine: 'b', plane: planes[1] },
        ...coupling,
      },
    ],
  }
}

/** The same as the engine has it, with its coupling. */
export function readPair(document: TrainDocument): { train: Train; coupling: Coupling } {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const [coupling] = read.train.couplings
  if (!coupling) throw new Error('no coupling')
  return { train: read.train, coupling }
}
