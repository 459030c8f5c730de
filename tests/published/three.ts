import { caseOf } from './cases'

type Json = Record<string, unknown>
const ids = ['motor', 'gear', 'compressor'] as const
type Id = (typeof ids)[number]

interface Lines {
  feet: Record<Id, [number, number]>
  couplings: [number, number]
  lines: Record<Id, { y?: [number, number]; z?: [number, number] }>
}

interface Sweep {
  coupling: number
  rides: 'left' | 'right'
  at: number
  sagTotal: number
  readings: [number, number][]
}

const shape = caseOf<{ input: Lines; expected: unknown }>('trains', 'T1').input

/** The lines of a case as one line set a coupling: value and slope of right less left at its plane. */
export function foundFrom({ lines, couplings }: Lines): Json[][] {
  return couplings.map((at, i) => {
    const [left, right] = [lines[ids[i] ?? 'motor'], lines[ids[i + 1] ?? 'motor']]
    const value = (way: 'y' | 'z') => {
      const [zero, slope] = left[way] ?? [0, 0]
      const [rightZero, rightSlope] = right[way] ?? [0, 0]
      return { offset: rightZero + rightSlope * at - zero - slope * at, slope: rightSlope - slope }
    }
    const [y, z] = [value('y'), value('z')]
    return [
      {
        kind: 'line',
        at,
        offset: { y: y.offset, z: z.offset },
        slope: { y: y.slope, z: z.slope },
      },
    ]
  })
}

/** The raw sweeps of T3; the total sag is the reading of a stiff bar, the file keeps half, as a plus. */
export function rawSweeps(): Json[][] {
  const { sweeps } = caseOf<{ input: { sweeps: Sweep[] }; expected: unknown }>('trains', 'T3').input
  return shape.couplings.map((_, coupling) =>
    sweeps
      .filter((sweep) => sweep.coupling === coupling)
      .map(({ rides, at, sagTotal, readings }) => ({
        kind: 'rim',
        rides,
        at,
        sag: -sagTotal / 2,
        readings,
      })),
  )
}

export interface Three {
  readonly found: readonly (readonly Json[])[]
  readonly seenFrom?: 'left' | 'right'
  readonly held?: readonly Id[]
  /** Fields for every foot, such as a pack or a hole. */
  readonly foot?: Json
  /** How far every foot of the named machines may be carried, as restraints at the feet. */
  readonly within?: {
    readonly way: 'rise' | 'side'
    readonly most: number
    readonly of?: readonly Id[]
  }
}

/** Motor, gear and compressor of T1, T3 and T4, one foot at each place; only the line itself is right. */
export function train({ found, seenFrom = 'right', held = [], foot = {}, within }: Three) {
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'Three machines',
    units: { length: 'in', fine: 'mil' },
    clock: { seenFrom },
    machines: ids.map((id) => ({
      id,
      name: id,
      axis: { z: 10 },
      held: held.includes(id),
      feet: shape.feet[id].map((x, i) => ({ id: `${i + 1}`, x, ...foot })),
      ...(within &&
        (within.of ?? ids).includes(id) && {
          restraints: shape.feet[id].map((x, i) => ({
            id: `at foot ${i + 1}`,
            x,
            z: 0,
            [within.way]: [-within.most, within.most],
          })),
        }),
    })),
    couplings: shape.couplings.map((plane, i) => ({
      id: `coupling ${i + 1}`,
      left: { machine: ids[i], plane },
      right: { machine: ids[i + 1], plane },
      tolerance: { offset: 0.0001, angle: 0.0001 },
      found: found[i],
    })),
  }
}
