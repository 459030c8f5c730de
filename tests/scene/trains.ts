import { readFileSync, readdirSync } from 'node:fs'
import { planRead } from '../planned'
import { figuresOf, type Figures } from '../../src/scene/figures'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { readTrain } from '../../src/document/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'

export interface Drawn {
  readonly train: Train
  readonly answer: PlanAnswer
  readonly figures: Figures
}

const solver = glpkSolver()

/** Reads, plans and draws a document that must be sound. */
export async function draw(document: unknown): Promise<Drawn> {
  const read = readTrain(document)
  if (!read.ok) throw new Error(read.refused.map(({ at, why }) => `${at}: ${why}`).join('\n'))
  const answer = planRead(read.train, await solver)
  return { train: read.train, answer, figures: figuresOf(read.train, answer) }
}

const folder = new URL('../../examples/', import.meta.url)
export const exampleFiles = readdirSync(folder).filter((file) => file.endsWith('.json'))
export const example = (file: string): TrainDocument =>
  JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as TrainDocument

const drawn = new Map<string, Promise<Drawn>>()

/** An example as drawn; planned once a test file. */
export function drawExample(file: string): Promise<Drawn> {
  const known = drawn.get(file) ?? draw(example(file))
  drawn.set(file, known)
  return known
}

type Machine = TrainDocument['machines'][number]
type Coupling = TrainDocument['couplings'][number]

const feet = (from: number, to: number): Machine['feet'] =>
  [from, to].flatMap((x, row) => [
    { id: `${row + 1} far`, x, y: 300, pack: { now: 1000, min: 100 }, hole: { clearance: 2000 } },
    { id: `${row + 1} near`, x, y: -300, pack: { now: 1000, min: 100 }, hole: { clearance: 2000 } },
  ])

/**
 * Two machines with feet at 0 and 1000, 1600 and 2600 mm, flex planes at 1200 and 1400 mm, axes 500 mm
 * high; the right machine's line is given at mid-span. All in mm, um and mrad.
 */
export function pair(
  line: { y?: number; z?: number; sy?: number; sz?: number },
  change: {
    left?: Partial<Machine>
    right?: Partial<Machine>
    coupling?: Partial<Coupling>
    top?: Partial<TrainDocument>
  } = {},
): TrainDocument {
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'pair',
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'right' },
    sides: { three: 'toward the lake', nine: 'toward the yard' },
    machines: [
      {
        id: 'a',
        name: 'Motor',
        role: 'motor',
        axis: { z: 500 },
        held: true,
        feet: feet(0, 1000),
        ...change.left,
      },
      {
        id: 'b',
        name: 'Pump',
        role: 'pump',
        axis: { z: 500 },
        feet: feet(1600, 2600),
        ...change.right,
      },
    ],
    couplings: [
      {
        id: 'c',
        name: 'motor to pump',
        left: { machine: 'a', plane: 1200 },
        right: { machine: 'b', plane: 1400 },
        tolerance: { flex: 0.5, shape: 'box' },
        found: [
          {
            kind: 'line',
            at: 1300,
            offset: { y: line.y ?? 0, z: line.z ?? 0 },
            slope: { y: line.sy ?? 0, z: line.sz ?? 0 },
          },
        ],
        ...change.coupling,
      },
    ],
    plan: { share: 0.7 },
    ...change.top,
  }
}
