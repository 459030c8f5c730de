import { fineSign, slopeSign, toFine, toLength } from '../../../mechanics/units'
import type { Coupling, Train } from '../../../mechanics/train'
import { listed } from '../../../language/names'

/** The limits of a coupling times a factor: "0.35 mrad", "60 µm of offset and 0.3 mrad of angle". */
export function limitsText(train: Train, { tolerance }: Coupling, factor: number): string {
  const { flex, offset, angle } = tolerance
  const number = (value: number) => Number((value * factor).toPrecision(3))
  const slope = (value: number) => `${number(value)} ${slopeSign(train.units)}`
  const size = (value: number) =>
    `${number(toFine(value, train.units))} ${fineSign[train.units.fine]}`
  const parts = [
    ...(flex === undefined
      ? []
      : [(offset ?? angle) ? `${slope(flex)} at each plane` : slope(flex)]),
    ...(offset === undefined ? [] : [`${size(offset)} of offset`]),
    ...(angle === undefined ? [] : [`${slope(angle)} of angle`]),
  ]
  return listed(parts)
}

/**
 * What a coupling is to accept instead of what it has: its limits, or its axial gap.
 * @param amount how many times as large they are to be
 */
export function widerText(
  train: Train,
  coupling: Coupling,
  amount: { where: string; value: number },
) {
  if (!amount.where.endsWith(', gap'))
    return `${limitsText(train, coupling, amount.value)} instead of ${limitsText(train, coupling, 1)} at ${coupling.name}`
  const now = toLength(coupling.axial?.tolerance ?? 0, train.units)
  const then = Number((now * amount.value).toPrecision(3))
  return `an axial gap within ${then} ${train.units.length} instead of ${now} at ${coupling.name}`
}
