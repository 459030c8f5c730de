import { growthOf, lineValueAt, type Line } from '../mechanics/growth'
import { noMotion } from '../mechanics/motion'
import { answerMotions, movedAxis, type Axis } from '../scene/axisLines'
import { capital, inSentence } from '../language/names'
import type { Coupling, State, Train } from '../mechanics/train'
import type { Drawn } from './job'
import type { Pencil } from './pencil'

/** Where the lines that the check adds up come from: moves and growth at two places, and the slope between them. */
export function sourceLines(
  { train, answer }: Drawn,
  coupling: Coupling,
  pencil: Pencil,
  state: State,
): string[] {
  const motions = answerMotions(train, answer) ?? train.bodies.map(() => noMotion)
  return (['right', 'left'] as const).flatMap((side) => {
    const at = coupling[side]
    const machine = train.machines[at]
    if (!machine) return []
    const end = side === 'right' ? 'left' : 'right'
    const name = capital(inSentence(machine.name))
    const places = placesOf(train, at)
    return [
      ...told(pencil, `${name} is moved`, places, movedAxis(train, at, end, motions)),
      ...(coupling.setting?.used === true
        ? []
        : told(pencil, `${name} grows`, places, growthOf(machine, state.id, end))),
    ]
  })
}

/** The outermost feet of a machine, or what stands for them where it has one row or none. */
function placesOf(train: Train, machine: number): number[] {
  const { rows = [], x0 = 0 } = train.machines[machine] ?? {}
  const xs = rows.map(({ x }) => x)
  return xs.length === 0 ? [x0] : [...new Set([Math.min(...xs), Math.max(...xs)])]
}

function told(
  pencil: Pencil,
  what: string,
  places: readonly number[],
  { rise, side }: Pick<Axis, 'rise' | 'side'>,
): string[] {
  const words = (line: Line): string => {
    const values = places.map(
      (x) => `${pencil.fine(lineValueAt(line, x))} at x ${pencil.length(x)}`,
    )
    return `${values.join(' and ')}, slope ${pencil.slope(line.slope)} ${pencil.slopeUnit}`
  }
  const still = ({ value, slope }: Line) => value === 0 && slope === 0
  const ways = [
    ...(still(rise) ? [] : [`up ${words(rise)}`]),
    ...(still(side) ? [] : [`to the side ${words(side)}`]),
  ]
  return ways.length === 0 ? [] : [`${what}: ${ways.join('; ')}; carried on to the coupling.`]
}
