import type { Millimetres } from './units'

/** From where to where, low end first; + to the right along the train, or drawn out of a coupling. */
export type AxialRange = readonly [low: Millimetres, high: Millimetres]

/** How a rotor lies in its bearings endwise, from where it lay when the gap of its coupling was found; + to the right. */
export interface EndwiseRotor {
  /** Magnetic centre: given, no thrust bearing holds the rotor there, and the coupling carries it along. */
  readonly centre?: Millimetres
  /** How far it can go. Of a rotor that a thrust bearing holds, it may lie anywhere in there as it runs. */
  readonly float?: AxialRange
}

/** The gap between the shaft ends of a coupling, and what else bounds it as it runs. */
export interface AxialGap {
  readonly found: Millimetres
  readonly want: Millimetres
  readonly tolerance: Millimetres
  /** Standard uncertainty of the gap found; undefined where the file gives none. */
  readonly u?: Millimetres
  /** How far its maker lets the coupling be pressed together (-) and drawn out (+) from the gap wanted. */
  readonly stretch?: AxialRange
  readonly rotors: { readonly left?: EndwiseRotor; readonly right?: EndwiseRotor }
}

export type AxialWhat = 'gap' | 'stretch' | 'float'

export const isAxial = (what: string): what is AxialWhat =>
  what === 'gap' || what === 'stretch' || what === 'float'

/**
 * One limit on how far the gap is off what is wanted, rotors where they lay when it was found: no farther from `middle`
 * than `limit`.
 */
export interface AxialCheck {
  readonly what: AxialWhat
  readonly middle: Millimetres
  readonly limit: Millimetres
}

const nowhere: AxialRange = [0, 0]

/** How far a rotor may lie from where it was while it runs in its thrust bearing; one that a coupling carries does not. */
export const thrustFloat = ({ centre, float }: EndwiseRotor = {}): AxialRange =>
  centre === undefined ? (float ?? nowhere) : nowhere

/** How much wider the gap is with the rotors on their magnetic centres than as it was found. */
export const centresOpen = ({ rotors }: AxialGap): Millimetres =>
  (rotors.right?.centre ?? 0) - (rotors.left?.centre ?? 0)

/** How far the coupling may be pressed and drawn from the gap wanted, wherever rotors lie in their thrust bearings. */
export function stretchLeft({ stretch, rotors }: AxialGap): AxialRange | undefined {
  if (!stretch) return undefined
  const [left, right] = [thrustFloat(rotors.left), thrustFloat(rotors.right)]
  return [stretch[0] + left[1] - right[0], stretch[1] + left[0] - right[1]]
}

/** The rotor that the coupling carries along, where one is. */
export const carriedRotor = ({ rotors }: Pick<AxialGap, 'rotors'>): 'left' | 'right' | undefined =>
  rotors.left?.centre !== undefined
    ? 'left'
    : rotors.right?.centre !== undefined
      ? 'right'
      : undefined

/** How far that rotor may be carried from where it lay, wherever the other one lies in its thrust bearing; + to the right. */
export function floatLeft({ rotors }: Pick<AxialGap, 'rotors'>): AxialRange | undefined {
  const side = carriedRotor({ rotors })
  const float = side && rotors[side]?.float
  if (!float) return undefined
  const other = thrustFloat(rotors[side === 'left' ? 'right' : 'left'])
  return [float[0] - other[0], float[1] - other[1]]
}

/**
 * Everything that bounds the gap of a coupling in a state. A tolerance is for rotors on their magnetic centres and grows
 * with the state's factor; what the coupling's maker and the bearings allow does not.
 */
export function axialChecks(axial: AxialGap, factor: number): AxialCheck[] {
  const open = centresOpen(axial)
  const within = (what: AxialWhat, [low, high]: AxialRange): AxialCheck => ({
    what,
    middle: (low + high) / 2,
    limit: (high - low) / 2,
  })
  const stretch = stretchLeft(axial)
  const float = floatLeft(axial)
  return [
    { what: 'gap', middle: 0 - open, limit: axial.tolerance * factor },
    ...(stretch ? [within('stretch', [stretch[0] - open, stretch[1] - open])] : []),
    // the left rotor goes to the right by what the gap is too wide, the right one to the left
    ...(float
      ? [within('float', carriedRotor(axial) === 'left' ? float : [-float[1], -float[0]])]
      : []),
  ]
}
