import type { AxialGap, AxialRange, AxialWhat, EndwiseRotor } from '../../mechanics/axial'

/**
 * The two ends between which the gap found, with what moves and growth open it, less the gap wanted must lie, each as what
 * adds up to it (mm), so that either arithmetic can. Taken from the rotors one by one.
 * @returns undefined where the coupling has no such limit
 */
export function axialEnds(
  { tolerance, stretch, rotors: { left = {}, right = {} } }: AxialGap,
  what: AxialWhat,
): { readonly low: readonly number[]; readonly high: readonly number[] } | undefined {
  // both rotors drawn to their magnetic centres open the gap by right less left
  const centres = [left.centre ?? 0, -(right.centre ?? 0)]
  const [thrustLeft, thrustRight] = [held(left), held(right)]
  switch (what) {
    case 'gap':
      return { low: [-tolerance, ...centres], high: [tolerance, ...centres] }
    case 'stretch':
      return (
        stretch && {
          low: [stretch[0], ...centres, thrustLeft[1], -thrustRight[0]],
          high: [stretch[1], ...centres, thrustLeft[0], -thrustRight[1]],
        }
      )
    case 'float':
      if (left.centre !== undefined && left.float)
        return {
          low: [left.float[0], -thrustRight[0]],
          high: [left.float[1], -thrustRight[1]],
        }
      if (right.centre !== undefined && right.float)
        return {
          low: [-right.float[1], thrustLeft[1]],
          high: [-right.float[0], thrustLeft[0]],
        }
      return undefined
  }
}

/** Where a rotor may lie that its thrust bearing holds; one that the coupling carries lies where the coupling puts it. */
const held = ({ centre, float }: EndwiseRotor): AxialRange =>
  centre === undefined && float ? float : [0, 0]

const whats = ['gap', 'stretch', 'float'] as const

/**
 * Share of each limit along the train.
 * @param off how far the gap is off what is wanted (mm)
 * @param room kept free of every limit (mm)
 */
export function axialShares(axial: AxialGap, off: number, factor: number, room = 0): number[] {
  return whats.flatMap((what) => {
    const ends = axialEnds(axial, what)
    if (!ends) return []
    const [low, high] = [ends.low, ends.high].map((parts) => parts.reduce((a, b) => a + b, 0)) as [
      number,
      number,
    ]
    const half = ((high - low) / 2) * (what === 'gap' ? factor : 1)
    return [(Math.abs(off - (low + high) / 2) + room) / half]
  })
}
