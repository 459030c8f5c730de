import type { CouplingDocument, MachineDocument, TrainDocument } from '../schema'
import type { Train } from '../../mechanics/train'
import { readTrain } from '../readTrain'
import { valueAt } from '../place'

/**
 * An unfinished document as far as it can be drawn: machines that have feet, and what is missing filled
 * in for the eye alone. Nothing is planned from it.
 * @returns undefined while there are not two machines with feet
 */
export function sketchTrain(document: TrainDocument): Train | undefined {
  const { machines } = document
  if (machines.length < 2) return undefined
  const drawn = machines.map(drawable)
  if (drawn.some((machine) => machine === undefined)) return undefined
  const whole = drawn as MachineDocument[]
  const read = readTrain({
    ...document,
    name: document.name,
    machines: whole,
    skids: [],
    couplings: machines.slice(0, -1).map((_, i) => joint(document, whole, i)),
    states: [],
    plan: {},
    record: undefined,
  })
  return read.ok ? read.train : undefined
}

const finite = (value: unknown): value is number => typeof value === 'number' && isFinite(value)

function drawable(machine: MachineDocument, i: number): MachineDocument | undefined {
  const feet = machine.feet
    .filter((foot) => finite(foot.x))
    .map((foot, f) => ({ id: `${f}`, x: foot.x, ...(finite(foot.y) && { y: foot.y }) }))
  if (feet.length === 0) return undefined
  const height = (...path: string[]): number => {
    const z = valueAt(machine, ['axis', ...path, 'z'])
    return finite(z) ? z : usualHeight(feet)
  }
  const two = valueAt(machine, ['axis', 'left']) !== undefined
  return {
    id: `machine ${i}`,
    name: machine.name,
    ...(machine.role && { role: machine.role }),
    ...(finite(machine.speed) && { speed: machine.speed }),
    axis: two ? { left: { z: height('left') }, right: { z: height('right') } } : { z: height() },
    feet,
  }
}

/** A height for the eye: a third of the length over the feet. */
const usualHeight = (feet: readonly { readonly x: number }[]): number =>
  Math.max(10, (Math.max(...feet.map(({ x }) => x)) - Math.min(...feet.map(({ x }) => x))) / 3)

/** The planes as entered, else a quarter in from each side of the space between the machines' feet. */
function joint(
  document: TrainDocument,
  machines: readonly MachineDocument[],
  i: number,
): CouplingDocument {
  const edge = (m: number, pick: (...x: number[]) => number) =>
    pick(...(machines[m]?.feet ?? []).map(({ x }) => x))
  const from = edge(i, Math.max)
  const to = Math.max(edge(i + 1, Math.min), from)
  const given = (end: 'left' | 'right', otherwise: number): number => {
    const plane = valueAt(document, ['couplings', i, end, 'plane'])
    return finite(plane) ? plane : otherwise
  }
  const p = given('left', from + (to - from) / 4)
  const q = Math.max(p, given('right', to - (to - from) / 4))
  return {
    id: `coupling ${i}`,
    left: { machine: `machine ${i}`, plane: p },
    right: { machine: `machine ${i + 1}`, plane: q },
    tolerance: { angle: 1 },
    found: [{ kind: 'line', at: p, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }],
  }
}
