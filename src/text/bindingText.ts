import { fineSign } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { BindingAnswer } from '../engine/plan/answer'
import { limitJson } from '../json/planJson'
import { heading, paragraph } from './layout'

/** Most limits listed; further ones are worth less and stand in the answer for programs. */
const most = 8

/** The limits that the least move leans on, dearest first, with what room in each would save. */
export function bindingText(train: Train, binding: readonly BindingAnswer[]): string[] {
  if (binding.length === 0) return []
  const rest = binding.length - most
  return [
    ...heading('WHAT BINDS', 'what one more unit of room in each limit alone would save'),
    ...binding.slice(0, most).flatMap((limit) => paragraph(limitInWords(train, limit), '  - ')),
    ...(rest > 0 ? paragraph(`and ${rest} more that save less`, '  - ') : []),
  ]
}

function limitInWords(train: Train, binding: BindingAnswer): string {
  const { limit, where, price, unit, upTo } = limitJson(train, binding)
  const fine = fineSign[train.units.fine]
  const saved = Number(price.toPrecision(2))
  const far = upTo === null ? '' : `, up to ${Number(upTo.toPrecision(2))} ${unit}`
  return `${where}, ${limit}: saves ${saved} ${fine} per ${unit}${far}`
}
