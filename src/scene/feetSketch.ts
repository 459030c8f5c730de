/** A foot as it lies for who looks at it: `across` to the right, `up` away (mm). */
interface SketchFoot {
  readonly id: string
  readonly across: number
  readonly up: number
}

interface FeetSketch {
  /** Middles of the feet (px, down the picture). */
  readonly places: readonly { readonly id: string; readonly x: number; readonly y: number }[]
  /** Side of the square that a foot is drawn as (px). */
  readonly size: number
}

/** Feet are drawn as squares no larger and no smaller than this, and no two nearer than `apart` (px). */
const [largest, smallest, apart] = [18, 6, 6]
/** Room beside the outermost middles for what is drawn of a slide (px). */
const [besides, over] = [34, 24]

/**
 * Feet of one machine from above, to say which is which: to scale where they stand clear of each other, else drawn
 * out to the room there is, and smaller where that is not enough.
 */
export function feetSketch(
  feet: readonly SketchFoot[],
  room: { readonly width: number; readonly height: number },
): FeetSketch {
  const across = middled(feet.map((foot) => foot.across))
  const up = middled(feet.map((foot) => foot.up))
  const fitAcross = (room.width / 2 - besides) / across.half
  const fitUp = (room.height / 2 - over) / up.half
  const common = Math.min(fitAcross, fitUp)
  /** The smallest room between two feet, along whichever of the two ways keeps them apart. */
  const nearest = (a: number, b: number): number => {
    let least = Infinity
    across.values.forEach((x, i) => {
      for (let j = 0; j < i; j++)
        least = Math.min(
          least,
          Math.max(
            Math.abs(x - (across.values[j] ?? 0)) * a,
            Math.abs((up.values[i] ?? 0) - (up.values[j] ?? 0)) * b,
          ),
        )
    })
    return least
  }
  const clear = nearest(common, common) >= largest + apart
  const [a, b] = clear ? [common, common] : [fitAcross, fitUp]
  return {
    places: feet.map(({ id }, i) => ({
      id,
      x: room.width / 2 + (across.values[i] ?? 0) * a,
      y: room.height / 2 - (up.values[i] ?? 0) * b,
    })),
    size: Math.min(largest, Math.max(smallest, nearest(a, b) - apart)),
  }
}

/** Values from the middle between the outermost two, and how far these are from it; at least 1, which is divided by. */
function middled(values: readonly number[]): {
  readonly values: readonly number[]
  readonly half: number
} {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return {
    values: values.map((value) => value - (low + high) / 2),
    half: Math.max(1, (high - low) / 2),
  }
}
