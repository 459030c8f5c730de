import { growthAt } from '../second/growth'
import { metric } from '../second/metric'
import { statesOf, type GrowthPoint, type Machine, type State, type Train } from '../second/train'

/** A straight line that a whole train may lie on in a state, without any coupling feeling it. */
export interface CommonLine {
  /** At x = 0 (um). */
  readonly rise: number
  readonly side: number
  /** mrad. */
  readonly riseSlope: number
  readonly sideSlope: number
  /** Along the train, the same everywhere (um). */
  readonly axial: number
}

/**
 * The train in mm and um, with both axes of every machine grown by one more line in the states that
 * have one. Each axis is given by two points, which fix a line whatever gave it before.
 */
export function grownOnLine(train: Train, lines: Readonly<Record<string, CommonLine>>): Train {
  const inMetric = metric(train)
  return {
    ...inMetric,
    machines: inMetric.machines.map((machine) => ({
      ...machine,
      growth: {
        ...machine.growth,
        ...Object.fromEntries(
          Object.entries(lines).map(([state, line]) => [
            state,
            pointsOf(statesOf(train), machine, state, line),
          ]),
        ),
      },
    })),
  }
}

function pointsOf(
  states: readonly State[],
  machine: Machine,
  state: string,
  line: CommonLine,
): GrowthPoint[] {
  return (['left', 'right'] as const).flatMap((axis) =>
    [-500, 2500].map((at) => {
      const own = growthAt(states, machine, axis, state, at)
      return {
        at,
        axis,
        rise: own.z + line.rise + line.riseSlope * at,
        side: own.y + line.side + line.sideSlope * at,
        axial: own.x + line.axial,
      }
    }),
  )
}
