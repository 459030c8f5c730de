import { footBands, type BandFact } from '../../../mechanics/footLimits'
import { type Frame, rowOf } from '../frame'
import { programUnit, type Row } from '../program'

const ways = { shim: 'dz', side: 'dy' } as const

/** Where the rows of a fact stand in the program: facts of one rank foot by foot. */
const rank: Record<BandFact, number> = { pack: 0, lift: 1, 'shim key': 2, 'side key': 2 }

/**
 * The bands of every foot as rows: its pack between minimum and maximum, what its bolts let it rise, and
 * its keys. One that cannot be shimmed keeps its height, one that cannot slide its side.
 */
export function bandRows(frame: Frame): Row[] {
  const ranked = frame.train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) =>
      footBands(foot).flatMap(({ fact, move, low, high }) => {
        const point = { x: foot.x, y: foot.y, z: 0 }
        const moved = frame.displacement(b, point, ways[move], 'own')
        const meaning = { fact, body: b, foot: f }
        const name = `${fact} ${body.id} ${foot.id}`
        const row = rowOf(name, moved, low / programUnit, high / programUnit, meaning)
        return row ? [{ row, rank: rank[fact] }] : []
      }),
    ),
  )
  return ranked.sort((a, c) => a.rank - c.rank).map(({ row }) => row)
}
