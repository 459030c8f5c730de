import { fineText, slopeText } from './amounts'
import { towardSide } from './sides'
import type { Train } from '../mechanics/train'
import type { Method, MethodsCompared } from '../mechanics/uncertainty/methods'

/** "the rims (sets 1 and 2)", "the line of set 3". */
export function methodName({ kind, sets }: Method): string {
  const numbers = sets.map((set) => set + 1)
  if (kind === 'line') return `the line of set ${numbers.join(', ')}`
  return `the ${kind} (${numbers.length === 1 ? 'set' : 'sets'} ${numbers.join(' and ')})`
}

/** Whether two methods on one coupling agree, and by how much they do not, in one sentence without its stop. */
export function methodsSaid(
  train: Train,
  { a, b, difference, agree, squares, limit }: MethodsCompared,
): string {
  const { units } = train
  const { y, z, sy, sz } = difference
  const slope = a.slopeAlone || b.slopeAlone
  const up = (value: number) => (value < 0 ? 'down' : 'up')
  const offsets = slope
    ? []
    : [
        `${fineText(Math.abs(z), units)} ${up(z)}`,
        `${fineText(Math.abs(y), units)} ${towardSide(train, y < 0 ? -1 : 1)} at mid-span`,
      ]
  const parts = [
    ...offsets,
    `${slopeText(Math.abs(sz), units)} ${up(sz)} and ${slopeText(Math.abs(sy), units)} ${towardSide(train, sy < 0 ? -1 : 1)} per length`,
  ]
  const times = Math.sqrt(squares / limit)
  const verdict = agree
    ? 'which their uncertainties allow'
    : `${times.toFixed(1)} times what their uncertainties allow (sound ones are said to differ once in 20)`
  return `${methodName(b)} against ${methodName(a)}: ${parts.join(', ')}; ${verdict}`
}
