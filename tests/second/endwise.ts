import type { LeftOut } from './terms'
import type { Coupling, Rotor } from './train'

export type EndwiseFamily = 'coupling stretch' | 'rotor float'

/** Between which the gap found and opened, less the gap wanted, must lie (in the unit of the file). */
interface EndwiseLimit {
  what: 'stretch' | 'float'
  family: EndwiseFamily
  middle: number
  half: number
}

type Axial = NonNullable<Coupling['axial']>

/** What that difference is where both rotors, drawn to their magnetic centres, leave the gap wanted. */
export const centred = ({ rotors }: Axial, leaveOut?: LeftOut): number =>
  leaveOut === 'magnetic centre' ? 0 : (rotors?.left?.centre ?? 0) - (rotors?.right?.centre ?? 0)

/** Every place at which a thrust bearing may hold a rotor, as its two ends; one that a coupling carries has none. */
const thrustEnds = (rotor: Rotor | undefined): readonly number[] =>
  rotor?.float && rotor.centre === undefined ? rotor.float : [0]

/** The limits beside the tolerance: each must hold with every rotor at either end of its thrust float. */
export function endwiseLimits(axial: Axial, leaveOut?: LeftOut): EndwiseLimit[] {
  const { stretch, rotors } = axial
  const [left, right] = [rotors?.left, rotors?.right]
  const out: EndwiseLimit[] = []
  const add = (
    what: EndwiseLimit['what'],
    family: EndwiseFamily,
    bounds: { low: number; high: number }[],
  ) => {
    const low = Math.max(...bounds.map((one) => one.low))
    const high = Math.min(...bounds.map((one) => one.high))
    out.push({ what, family, middle: (low + high) / 2, half: (high - low) / 2 })
  }
  const thrust = (rotor: Rotor | undefined) =>
    leaveOut === 'thrust float' ? [0] : thrustEnds(rotor)
  const corners = thrust(left).flatMap((l) => thrust(right).map((r) => ({ l, r })))
  if (stretch)
    // the coupling is drawn out by the difference, and by how much the rotors stand apart of where they lay
    add(
      'stretch',
      'coupling stretch',
      corners.map(({ l, r }) => {
        const apart = r - l - centred(axial, leaveOut)
        return { low: stretch[0] - apart, high: stretch[1] - apart }
      }),
    )
  for (const [carried, others, sign] of [
    [left, thrust(right), 1],
    [right, thrust(left), -1],
  ] as const) {
    if (carried?.centre === undefined || !carried.float) continue
    const [from, to] = carried.float
    add(
      'float',
      'rotor float',
      // it goes along with the other rotor, and by the difference toward it
      others.map((other) => {
        const [a, b] = [sign * (from - other), sign * (to - other)]
        return { low: Math.min(a, b), high: Math.max(a, b) }
      }),
    )
  }
  return out
}
