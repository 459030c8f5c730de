import { growthAt } from '../second/growth'
import { metric } from '../second/metric'
import { misalignment } from '../second/reading'
import { Random } from '../second/random'
import { fineFactor, statesOf, type GrowthPoint, type Train } from '../second/train'

/** A coupling read running, as the train file has it: a line at mid-span, in the document's fine unit and mrad. */
interface Ran {
  readonly coupling: string
  readonly line: { y: number; z: number; sy: number; sz: number }
}

/** A hot check of a random train: every coupling read running, with machines that moved as nobody had entered. */
export interface RandomCheck {
  readonly state: string
  readonly ran: readonly Ran[]
}

/** A state whose growth is that of no other, and that is not between two; none where there is none. */
const stateOf = (train: Train): string | undefined =>
  train.states?.find(
    ({ id, between }) =>
      !between &&
      !train.states?.some((other) => other.between?.from === id || other.between?.to === id) &&
      train.couplings.every(({ setting }) => setting?.use !== true),
  )?.id

/** Every machine moves up to `far` um (and a tenth of that in mrad a metre) beyond its growth. */
export function randomCheck(file: Train, seed: number, far: number): RandomCheck | undefined {
  const state = stateOf(file)
  if (state === undefined) return undefined
  const random = new Random(seed)
  const train = metric(file)
  const fine = fineFactor(file)
  const moved = new Map(
    train.machines.map(({ id }) => [
      id,
      {
        y: random.between(-far, far),
        z: random.between(-far, far),
        sy: random.between(-far, far) / 1000,
        sz: random.between(-far, far) / 1000,
        x: random.between(0, 3000),
      },
    ]),
  )
  const machineOf = (id: string) => {
    const machine = train.machines.find((one) => one.id === id)
    if (!machine) throw new Error(`no machine ${id}`)
    return machine
  }
  const digits = (value: number) => Number(value.toFixed(6))
  return {
    state,
    ran: train.couplings.map((coupling) => {
      const { offset, slope } = misalignment(coupling)
      const [from, to] = [coupling.left.plane, coupling.right.plane]
      const mid = (from + to) / 2
      /** Where an axis runs at x: what was entered, and what nobody had entered. */
      const at = (side: 'left' | 'right', x: number) => {
        const machine = machineOf(coupling[side].machine)
        const axis = side === 'left' ? 'right' : 'left'
        const grown = growthAt(statesOf(train), machine, axis, state, x)
        const by = moved.get(machine.id) ?? { y: 0, z: 0, sy: 0, sz: 0, x: 0 }
        return { y: grown.y + by.y + by.sy * (x - by.x), z: grown.z + by.z + by.sz * (x - by.x) }
      }
      const [l0, l1] = [at('left', mid), at('left', mid + 1000)]
      const [r0, r1] = [at('right', mid), at('right', mid + 1000)]
      return {
        coupling: coupling.id,
        line: {
          y: digits((offset.y + r0.y - l0.y) / fine),
          z: digits((offset.z + r0.z - l0.z) / fine),
          sy: digits(slope.y + (r1.y - r0.y - l1.y + l0.y) / 1000),
          sz: digits(slope.z + (r1.z - r0.z - l1.z + l0.z) / 1000),
        },
      }
    }),
  }
}

/** The file with the check in it, as somebody would enter it. */
export function withCheck(file: Train, { state, ran }: RandomCheck): unknown {
  const planes = new Map(file.couplings.map((c) => [c.id, (c.left.plane + c.right.plane) / 2]))
  return {
    ...structuredClone(file),
    hotChecks: [
      {
        id: 'run',
        state,
        couplings: ran.map(({ coupling, line: { y, z, sy, sz } }) => ({
          coupling,
          times: [
            {
              after: 0,
              found: [
                {
                  kind: 'line',
                  at: planes.get(coupling),
                  offset: { y, z },
                  slope: { y: sy, z: sz },
                },
              ],
            },
          ],
        })),
      },
    ],
  }
}

/** The file with growth put in the place of what was entered for a state, as somebody would type it; along the shaft stays. */
export function withGrowth(
  file: Train,
  state: string,
  found: readonly { machine: string; points: readonly GrowthPoint[] }[],
): Train {
  const changed = structuredClone(file)
  for (const machine of changed.machines) {
    const points = found.find((one) => one.machine === machine.id)?.points
    if (!points) continue
    const before = machine.growth?.[state] ?? []
    const along = before.flatMap(({ at, axis, axial, range, use }): GrowthPoint[] =>
      use === false || (axial === undefined && range?.axial === undefined)
        ? []
        : [
            {
              at,
              ...(axis && { axis }),
              ...(axial !== undefined && { axial }),
              ...(range?.axial && { range: { axial: range.axial } }),
            },
          ],
    )
    const across = points.map(({ at, axis, rise, side }) => ({
      at,
      ...(axis && { axis }),
      rise,
      side,
    }))
    machine.growth = { ...machine.growth, [state]: [...across, ...along] }
  }
  return changed
}
