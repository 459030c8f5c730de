import { fineSign, slopeSign, toFine, toLength } from '../../../mechanics/units'
import { tol } from '../../../mechanics/tolerances'
import { judgedStates } from '../../../mechanics/engaged'
import type { Coupling, Train } from '../../../mechanics/train'
import { listed } from '../../../language/names'

/** Up to three digits: a number to agree on, and still enough. */
export const upTo = (value: number): number => {
  if (!(value > 0)) return value
  const size = 10 ** (Math.floor(Math.log10(value)) - 2)
  return Number((Math.ceil(value / size - tol.dust) * size).toPrecision(12))
}

/** The limits of a coupling times a factor: "0.35 mrad", "60 µm of offset and 0.3 mrad of angle". */
function limitsText(train: Train, { tolerance }: Coupling, factor: number): string {
  const { flex, offset, angle } = tolerance
  const slope = (value: number) => `${upTo(value * factor)} ${slopeSign(train.units)}`
  const size = (value: number) =>
    `${upTo(toFine(value * factor, train.units))} ${fineSign[train.units.fine]}`
  const parts = [
    ...(flex === undefined
      ? []
      : [(offset ?? angle) ? `${slope(flex)} at each plane` : slope(flex)]),
    ...(offset === undefined ? [] : [`${size(offset)} of offset`]),
    ...(angle === undefined ? [] : [`${slope(angle)} of angle`]),
  ]
  return listed(parts)
}

const gapText = (train: Train, { axial }: Coupling, factor: number): string =>
  `an axial gap within ${upTo(toLength((axial?.tolerance ?? 0) * factor, train.units))} ${train.units.length}`

/** What a coupling then accepts in a state instead of what it does now, as the changed file has both. */
export function stateLimits(now: Train, then: Train, c: number, s: number): string {
  const [was, is] = [now.couplings[c], then.couplings[c]]
  if (!was || !is) return ''
  const [before, after] = [now.states[s]?.factor ?? 1, then.states[s]?.factor ?? 1]
  return `${limitsText(then, is, after)} instead of ${limitsText(now, was, before)}`
}

/**
 * The same of a coupling in every state: "1 mrad instead of 0.5 mrad at A to B, in every state", or state by state where
 * their factors differ.
 * @param what its limits at planes and mid-span, or its axial gap
 */
export function everyState(now: Train, then: Train, c: number, what: 'limits' | 'gap'): string {
  const [was, is] = [now.couplings[c], then.couplings[c]]
  if (!was || !is) return ''
  const text = what === 'gap' ? gapText : limitsText
  const statesOf = new Map<string, string[]>()
  const judged = judgedStates(now, was)
  for (const {
    state: { name, factor },
    s,
  } of judged) {
    const said = `${text(then, is, then.states[s]?.factor ?? 1)} instead of ${text(now, was, factor)}`
    statesOf.set(said, [...(statesOf.get(said) ?? []), name])
  }
  const all = [...statesOf]
  return all.length === 1
    ? `${all[0]?.[0] ?? ''} at ${was.name}, in every state${judged.length < now.states.length ? ' in which it is engaged' : ''}`
    : `at ${was.name} ${listed(all.map(([said, states]) => `${said} in ${listed(states)}`))}`
}
