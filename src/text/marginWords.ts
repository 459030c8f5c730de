import { bestShareText } from '../language/roundedAmounts'
import { tol } from '../mechanics/tolerances'
import { shareText, toldText } from '../language/amounts'
import type { Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { Tradeoff } from '../engine/studies/tradeoff/tradeoff'
import { costWord } from '../language/costWord'
import { noRoomAt } from '../engine/plan/sentence'

/**
 * Least cost at a share; corners are exact, between them it is a line.
 * @returns undefined under the floor; that of the last corner beyond it, most often 0
 */
export function costAt({ points, floor }: Tradeoff, share: number): Micrometres | undefined {
  if (share < floor - tol.share) return undefined
  for (const [i, b] of points.entries()) {
    if (share > b.share) continue
    const a = points[i - 1]
    if (!a) return b.cost
    return a.cost + ((share - a.share) / (b.share - a.share)) * (b.cost - a.cost)
  }
  return points.at(-1)?.cost
}

/** What costs nothing may move all the same, where moves weigh nothing. */
const nothingMoves = (tradeoff: Tradeoff, share: number): boolean =>
  share >= tradeoff.standing - tol.share && costAt(tradeoff, share) === 0

/** A point of the trade-off as it is read out: "70 %, 1.87 mm of moves", "90 %, ...; no room for error". */
export function pointInWords(train: Train, tradeoff: Tradeoff, share: number): string {
  const cost = costAt(tradeoff, share)
  const lead = `${shareText(share)}, `
  if (cost === undefined)
    return `${lead}no plan: the best reachable is ${bestShareText(tradeoff.floor, share)}`
  const moves = nothingMoves(tradeoff, share)
    ? 'nothing moves'
    : `${toldText(cost, train.units)} of ${costWord(train)}`
  return `${lead}${moves}${noRoomAt(share) ? '; no room for error' : ''}`
}

/** What a little more of the tolerance would save, or a little less would cost; "" where nothing is known. */
export function stepsInWords(train: Train, tradeoff: Tradeoff, share: number, step = 0.05): string {
  const now = costAt(tradeoff, share)
  if (now === undefined) return ''
  const part = (by: number): string => {
    const other = costAt(tradeoff, share + by)
    const at = shareText(share + by)
    if (other === undefined) return `${at} cannot be reached`
    return nothingMoves(tradeoff, share + by)
      ? `at ${at} nothing moves`
      : `${toldText(other, train.units)} at ${at}`
  }
  const more = share + step <= 1 + tol.share ? [part(step)] : []
  return [part(-step), ...more].join(', ')
}

/** A corner of the trade-off as it is read: its share, rounded up so that it can be had, and the least moves at that. */
export function cornerWords(
  { units }: Train,
  tradeoff: Tradeoff,
  { share, cost }: Tradeoff['points'][number],
): readonly [share: string, moves: string] {
  const told = Math.ceil(share * 1000 - tol.digit)
  return [`${(told / 10).toFixed(1)} %`, toldText(costAt(tradeoff, told / 1000) ?? cost, units)]
}
