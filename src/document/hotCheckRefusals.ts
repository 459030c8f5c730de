import { notListed } from './betweenStates'
import { shown, type Refusal } from './refusal'
import type { HotCheckDocument, TrainDocument } from './schema'
import { spoolRefusals } from './spoolRefusals'

/** What a well-shaped hot check may still get wrong: its state, its couplings and machines, times that stand twice. */
export const hotCheckRefusals = (document: TrainDocument): Refusal[] =>
  (document.hotChecks ?? []).flatMap((check, i) => {
    const place = `hotChecks[${i}]`
    return [
      ...ofState(check, place, document),
      ...ofDatum(check, place, document),
      ...(check.couplings ?? []).flatMap((_, c) => ofCoupling(check, place, c, document)),
      ...(check.moved ?? []).flatMap((_, m) => ofMoved(check, place, m, document)),
      ...ofNothing(check, place),
    ]
  })

const ofState = ({ state }: HotCheckDocument, place: string, { states }: TrainDocument) =>
  (states ?? []).some(({ id }) => id === state)
    ? []
    : [{ at: `${place}.state`, why: notListed(state, states) }]

function ofDatum({ datum }: HotCheckDocument, place: string, document: TrainDocument): Refusal[] {
  return datum === undefined || isMachine(document, datum)
    ? []
    : [{ at: `${place}.datum`, why: noMachine(datum) }]
}

const isMachine = ({ machines }: TrainDocument, wanted: string) =>
  machines.some(({ id }) => id === wanted)

const noMachine = (given: string) =>
  `${shown(given)} is no machine of this train: give a machine's id`

/** One that counts for nothing may be under way. */
const ofNothing = ({ couplings, moved, use }: HotCheckDocument, place: string): Refusal[] =>
  use === false || (couplings ?? []).length + (moved ?? []).length > 0
    ? []
    : [
        {
          at: place,
          why: 'nothing was measured: give couplings read after the stop, or machines measured as moved, or do not use it',
        },
      ]

function ofCoupling(
  { couplings = [] }: HotCheckDocument,
  check: string,
  c: number,
  document: TrainDocument,
): Refusal[] {
  const one = couplings[c]
  if (!one) return []
  const place = `${check}.couplings[${c}]`
  const at = `${place}.coupling`
  const coupling = document.couplings.find(({ id }) => id === one.coupling)
  if (!coupling)
    return [
      { at, why: `${shown(one.coupling)} is no coupling of this train: give a coupling's id` },
    ]
  if (couplings.findIndex((other) => other.coupling === one.coupling) < c)
    return [
      {
        at,
        why: `${shown(one.coupling)} is given already: put all its times into one entry`,
      },
    ]
  return one.times.flatMap(({ after, found }, t): Refusal[] => {
    const time = `${place}.times[${t}]`
    const twice = one.times.findIndex((other) => other.after === after) < t
    return [
      ...(twice
        ? [
            {
              at: `${time}.after`,
              why: `${after} min is given already: put all its sets into one entry, or give the time at which these were read`,
            },
          ]
        : []),
      ...spoolRefusals(found, coupling, time),
    ]
  })
}

function ofMoved(
  { moved = [], use }: HotCheckDocument,
  check: string,
  m: number,
  document: TrainDocument,
): Refusal[] {
  const one = moved[m]
  if (!one) return []
  const place = `${check}.moved[${m}]`
  const at = `${place}.machine`
  if (!isMachine(document, one.machine)) return [{ at, why: noMachine(one.machine) }]
  if (moved.findIndex((other) => other.machine === one.machine) < m)
    return [
      {
        at,
        why: `${shown(one.machine)} is given already: put all its points into one entry`,
      },
    ]
  if (use === false) return []
  return one.points.flatMap(({ rise, side }, p) =>
    rise === undefined && side === undefined
      ? [
          {
            at: `${place}.points[${p}]`,
            why: 'the point has no rise and no side: give one of them',
          },
        ]
      : [],
  )
}
