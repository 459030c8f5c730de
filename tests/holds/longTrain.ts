import type { TrainDocument } from '../../src/document/schema'
import { exampleFile } from './choice'

/** Distance between one copy of the five machines and the next (mm). */
const pitch = 11_600

/**
 * A train of any number of machines: the five of an example over and over, coupled end to end
 * (constructed). Each copy leans a little less than the one before, so that no two are alike.
 */
export function longTrain(count: number): TrainDocument {
  const five = exampleFile('five-in-a-line') as TrainDocument
  const copies = Math.ceil(count / 5)
  const machines = Array.from({ length: copies }, (_, k) => five.machines.map((m) => moved(m, k)))
  const couplings = Array.from({ length: copies }, (_, k) => [
    ...five.couplings.map((coupling) => moved(coupling, k)),
    joint(k),
  ])
  return {
    ...five,
    name: `${count} machines in a line`,
    machines: machines.flat().slice(0, count),
    couplings: couplings.flat().slice(0, count - 1),
  }
}

type Machine = TrainDocument['machines'][number]
type Coupling = TrainDocument['couplings'][number]

/** The k-th copy of a part: ids with its number, and every x along the train further on. */
function moved<Part extends Machine | Coupling>(part: Part, k: number): Part {
  if (k === 0) return part
  const shift = (value: unknown, key: string): unknown => {
    const along = key === 'x' || key === 'at' || key === 'plane'
    if (typeof value === 'number' && along) return value + k * pitch
    if (typeof value === 'string' && (key === 'machine' || key === 'top'))
      return `${value}-${k + 1}`
    return value
  }
  const walk = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((entry) => walk(entry, ''))
    if (typeof value !== 'object' || value === null) return shift(value, key)
    return Object.fromEntries(
      Object.entries(value).map(([name, entry]) => {
        // a hole's x is its offset from the bolt, not a place along the train
        if (name === 'hole' || name === 'aim') return [name, entry as unknown]
        return [name, walk(entry, name)]
      }),
    )
  }
  const copy = walk(part, '') as Part
  return {
    ...copy,
    id: `${part.id}-${k + 1}`,
    ...('name' in part && { name: `${part.name} ${k + 1}` }),
  }
}

/** High stage of one copy to motor of the next, read as a line. */
function joint(k: number): Coupling {
  const suffix = (at: number) => (at === 0 ? '' : `-${at + 1}`)
  const from = 10_950 + k * pitch
  const to = 11_600 + 50 + k * pitch
  return {
    id: `joint-${k + 1}`,
    left: { machine: `high-stage${suffix(k)}`, plane: from },
    right: { machine: `motor${suffix(k + 1)}`, plane: to },
    tolerance: { flex: 0.5, shape: 'round' },
    found: [
      {
        kind: 'line',
        at: (from + to) / 2,
        offset: { y: -0.15 + 0.05 * k, z: 0.22 - 0.04 * k },
        slope: { y: 0.1, z: -0.15 },
      },
    ],
  }
}
