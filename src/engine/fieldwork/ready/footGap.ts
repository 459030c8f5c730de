import type { Micrometres } from '../../../mechanics/units'
import type { Foot } from '../../../mechanics/train'

/**
 * What is wrong under a foot whose bolt is loosened. "parallel": an even gap, filled by a flat shim;
 * "angled": the gap opens toward a corner; "springing": the foot rises more than the gaps under it show,
 * so that the pack or the frame springs back with it; "uneven": its corners lie on no plane.
 */
type FootKind = 'parallel' | 'angled' | 'springing' | 'uneven'

export interface FootGap {
  readonly foot: string
  /** Most that the foot was seen to rise or stand off: what the limit judges. */
  readonly rise: Micrometres
  /** Air at its middle, which a shim can fill. */
  readonly gap: Micrometres
  readonly kinds: readonly FootKind[]
  /** Where it is angled: the wedge of air from the closest corner or edge to the widest. */
  readonly taper?: Taper
  /** How much more the foot rises than the widest gap under it; 0 unless springing. */
  readonly springs: Micrometres
}

/** How a tapered or stepped shim must lie under a foot. */
export interface Taper {
  readonly least: Micrometres
  readonly most: Micrometres
  /** How much the gap opens over the foot from its left end to its right one, and from 9 toward 3. */
  readonly toRight: Micrometres
  readonly toThree: Micrometres
}

/** Corners within this count as even, and a rise within this of a gap as that gap (um): 1 mil; common practice, no source. */
const even: Micrometres = 25.4

/** A foot as read: by its rise, by four feeler gaps, or both; undefined where it was not read. */
export function footGap({ id, soft, gaps }: Foot): FootGap | undefined {
  if (gaps === undefined)
    return soft === undefined
      ? undefined
      : { foot: id, rise: soft, gap: soft, kinds: [], springs: 0 }
  const [leftThree, leftNine, rightThree, rightNine] = gaps
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)]
  const gap = (leftThree + leftNine + rightThree + rightNine) / 4
  const toRight = (rightThree + rightNine - leftThree - leftNine) / 2
  const toThree = (leftThree + rightThree - leftNine - rightNine) / 2
  const twist = Math.abs(leftThree - leftNine - rightThree + rightNine) / 2
  const springs = soft !== undefined && soft - most > even ? soft - most : 0
  const opens = Math.abs(toRight) + Math.abs(toThree)
  const angled = opens > even
  const kinds: FootKind[] = [
    ...(angled ? ['angled' as const] : most > even ? ['parallel' as const] : []),
    ...(twist > even ? ['uneven' as const] : []),
    ...(springs > 0 ? ['springing' as const] : []),
  ]
  return {
    foot: id,
    rise: Math.max(soft ?? 0, most),
    gap,
    kinds,
    ...(angled && { taper: { least, most, toRight, toThree } }),
    springs,
  }
}
