import { fineText, lengthText, toldNought, underDigits } from '../../language/amounts'
import type { Micrometres, Millimetres } from '../../mechanics/units'
import type { Coupling, Train } from '../../mechanics/train'
import { towardSide } from '../../language/sides'
import { setName } from '../../language/readingSets'
import { counted, inSentence, listed } from '../../language/names'
import type { ClosureCheck } from './closures'

/** How one full sweep closes. */
export interface ClosureAnswer {
  coupling: string
  set: number
  value: Micrometres
  limit: Micrometres
  source: string
  within: boolean
  /** What half of it would do at the far feet of either machine, either way. */
  doubt: { machine: string; x: Millimetres; rise: Micrometres; side: Micrometres }[]
  words: string
}

/** A closure with its words. */
export function closureAnswer(
  train: Train,
  coupling: Coupling,
  check: ClosureCheck,
): ClosureAnswer {
  return {
    coupling: coupling.id,
    set: check.set,
    value: check.value,
    limit: check.limit.value,
    source: check.limit.source,
    within: check.within,
    doubt: check.doubt.map(({ machine, x, rise, side }) => ({
      machine: train.machines[machine]?.id ?? '',
      x,
      rise,
      side,
    })),
    words: closureWords(train, coupling, check),
  }
}

/** "set 1, ...: top + bottom and the two sides differ by 0.06 mm ...". */
function closureWords(train: Train, coupling: Coupling, check: ClosureCheck): string {
  const text = (value: number) => fineText(Math.abs(value), train.units)
  const set = coupling.found[check.set]
  const name = set ? setName(train, set, check.set) : ''
  const closes = `${name}: top + bottom and the two sides differ by ${text(check.value)} (${text(check.limit.value)} is allowed: ${check.limit.source})`
  return check.within ? closes : `${closes}; ${doubtWords(train, check)}`
}

/** What half of a closure would do at the far feet, both ways of both machines. */
export function doubtWords(train: Train, { value, doubt }: ClosureCheck): string {
  const text = (size: number) => fineText(Math.abs(size), train.units)
  const places = doubt.map(({ machine, x, rise, side }) => {
    const name = inSentence(train.machines[machine]?.name ?? '')
    return `the far feet of ${name} (x ${lengthText(x, train.units)}) ${text(rise)} up or down, or ${text(side)} ${towardSide(train, 1)} or ${towardSide(train, -1)}`
  })
  return `half of it, ${text(value / 2)}, in one reading would put ${listed(places)}`
}

/** What closures say of a coupling's readiness; undefined where no sweep of it is used. */
export function closureItem(
  train: Train,
  coupling: Coupling,
  checks: readonly ClosureCheck[],
  open: readonly number[],
): { readonly state: 'in' | 'missing' | 'bad'; readonly words: string } | undefined {
  const off = checks.filter(({ within }) => !within)
  if (off.length > 0)
    return {
      state: 'bad',
      words: `${coupling.name}: ${off.map((check) => closureWords(train, coupling, check)).join('; ')}`,
    }
  if (open.length > 0)
    return {
      state: 'missing',
      words: `${coupling.name}: no dial sum check of set ${listed(open.map((i) => String(i + 1)))} can be made; read 12, 3, 6 and 9 in one turn`,
    }
  if (checks.length === 0) return undefined
  const { units } = train
  const worst = Math.max(...checks.map(({ value }) => Math.abs(value)))
  const agree = toldNought(worst, units)
    ? `to ${underDigits(units)}`
    : `within ${fineText(worst, units)}`
  return {
    state: 'in',
    words: `${coupling.name}: dial sums of ${counted(checks.length, 'full turn', 'full turns')} agree ${agree}`,
  }
}
