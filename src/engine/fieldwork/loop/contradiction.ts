import type { AsFound } from '../../../mechanics/readings/asFound'
import { equationsOf } from '../../../mechanics/readings/equation'
import { meanPlaneOf } from '../../../mechanics/meanPlane'
import { outward } from '../../../mechanics/readings/clock'
import type { Coupling, ReadingSet, Train } from '../../../mechanics/train'
import { chiSquareLimit } from './chiSquare'

/**
 * Couplings whose readings cannot all be true: the line that fits them best, or the sine that fits one sweep best,
 * leaves more over than their uncertainties do once in a thousand (chi-square of the weighted residuals, textbook).
 * @returns indices in `couplings`
 */
export const contradicting = (train: Train, found: readonly AsFound[]): number[] =>
  train.couplings.flatMap((coupling, c) => {
    const line = found[c]
    if (!line) return []
    const parts = [
      leftOver(coupling, line),
      ...coupling.found.filter(({ used }) => used).flatMap(sineLeft),
    ]
    return parts.some(({ squares, freedom }) => freedom > 0 && squares > chiSquareLimit(freedom))
      ? [c]
      : []
  })

/** Sum of squares of what is left over, in standard uncertainties, and how many readings stand against each other. */
interface Left {
  readonly squares: number
  readonly freedom: number
}

/** What one sweep leaves over by itself: whatever its dial sees goes as a + b sin + c cos of where it stands. */
function sineLeft(set: ReadingSet): Left[] {
  if (set.kind === 'line' || set.readings.length < 4) return []
  const points = set.readings.map(({ hour, value }) => {
    const { y, z } = outward(hour)
    return { x: y, y: z, value }
  })
  const [a = 0, b = 0, c = 0] = meanPlaneOf(points)
  const squares = points.reduce(
    (sum, { x, y, value }) => sum + ((value - a - b * x - c * y) / set.u) ** 2,
    0,
  )
  return [{ squares, freedom: points.length - 3 }]
}

/** What the line of all sets together leaves over. */
function leftOver(coupling: Coupling, { residual, aloneResidual = residual }: AsFound): Left {
  const used = coupling.found.filter((set) => set.used)
  const equations = used.flatMap((set) => equationsOf(set, coupling)).length
  const zeros = used.filter(({ kind }) => kind !== 'line').length
  return { squares: aloneResidual * aloneResidual * equations, freedom: equations - zeros - 4 }
}
