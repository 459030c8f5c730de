import type { GrowthSource, Train } from '../mechanics/train'
import type { GrowthBeside, SourceCompared } from '../mechanics/uncertainty/growthSources'
import { fineText, lengthText } from './amounts'
import { towardSide } from './sides'

const kinds = {
  given: 'growth as given',
  heat: 'growth from temperatures',
  measured: 'growth measured off line to running',
} as const

/** "growth measured off line to running (3 May, B. Hill)". */
function sourceName({ kind, when, by }: GrowthSource): string {
  const said = [when, by].filter((part) => part !== undefined && part.trim() !== '')
  return `${kinds[kind]}${said.length === 0 ? '' : ` (${said.join(', ')})`}`
}

/** The same in a few words beside a value: "measured, 3 May, B. Hill"; "" of what is given without more. */
export const sourceMark = ({ kind, when = '', by = '' }: GrowthSource): string =>
  [kind === 'given' ? '' : kind === 'heat' ? 'by heat' : kind, when, by]
    .filter((part) => part.trim() !== '')
    .join(', ')

/** A difference in standard uncertainties: "2.3 u", "over 99 u". */
const sigmasText = (sigmas: number): string =>
  sigmas > 99 ? 'over 99 u' : `${sigmas.toFixed(1)} u`

/** "rise at 1200 mm 60 µm against 95 µm in use, 35 µm lower (2.3 u)". */
function besideText(train: Train, row: GrowthBeside): string {
  const { units } = train
  const { quantity, axis, x, inUse, beside, sigmas } = row
  const place = `at ${lengthText(x, units)}${axis === 'both' ? '' : `, ${axis} axis`}`
  const by = beside - inUse
  const what = { rise: 'rise', side: towardSide(train, 1), axial: 'to the right' }[quantity]
  const more = fineText(Math.abs(by), units)
  const way = quantity === 'rise' ? (by < 0 ? 'lower' : 'higher') : by < 0 ? 'less' : 'more'
  return `${what} ${place} ${fineText(beside, units)} against ${fineText(inUse, units)} in use, ${more} ${way} (${sigmasText(sigmas)})`
}

/** Whether a source agrees with the growth in use, and by how much it does not, in one sentence without its stop. */
export function sourceSaid(train: Train, compared: SourceCompared): string {
  const { machine, state, source, rows, limit, agree } = compared
  const verdict = agree
    ? 'which their uncertainties allow'
    : `more than their uncertainties allow, ${limit.toFixed(1)} u (sound ones are said to differ at most once in 20)`
  return `${train.machines[machine]?.name ?? ''} in "${train.states[state]?.name ?? ''}", ${sourceName(source)}: ${rows.map((row) => besideText(train, row)).join('; ')}; ${verdict}`
}
